"""The flute's exact section against brute force on its definition, and published identities."""

import math

import numpy as np
import pytest
from numpy.typing import NDArray

from tapmodel.designing.limits.neighbours import least_wall
from tapmodel.shape.flute_section import (
    FluteSection,
    chordal_hook,
    face_angle,
    flute_area,
    heel_angle,
    land_angle,
    on_ball,
    rake,
)

# ball radius, offset, centre radius, crest radius: edge and heel on wall or ball in all four ways
SECTIONS = [
    (FluteSection(3.0, -1.7, 6.0), 9.0),
    (FluteSection(1.0, -0.79, 1.39), 1.5),
    (FluteSection(6.0, 0.0, 10.05), 9.0),
    (FluteSection(6.0, 1.5, 9.0), 9.0),
    (FluteSection(3.0, 2.0, 7.0), 9.0),
]
IDS = ["walls", "heel on ball", "centred, both on ball", "face on ball, forward", "walls, forward"]


def inside(section: FluteSection, u: NDArray[np.float64] | float, t: NDArray[np.float64] | float):
    """Membership straight from the definition of the void."""
    b, c, e = section.ball_radius, section.centre_radius, section.offset
    return ((abs(t - e) <= b) & (u >= c)) | ((u - c) ** 2 + (t - e) ** 2 <= b**2)


def wall_by_search(section: FluteSection, radius: float, side: int):
    """Angle where a circle leaves the void, found by halving on membership alone [rad]."""
    start = math.atan2(section.offset, section.centre_radius)
    low, high = start, start + side * 2.5
    for _ in range(60):
        middle = (low + high) / 2
        hit = inside(section, radius * math.cos(middle), radius * math.sin(middle))
        low, high = (middle, high) if hit else (low, middle)
    return low


@pytest.mark.parametrize(("section", "crest"), SECTIONS, ids=IDS)
def test_walls_lie_where_the_void_ends(section: FluteSection, crest: float):
    start = section.core_diameter / 2
    for radius in np.linspace(start + 0.3 * (crest - start), crest, 7):
        found = face_angle(section, radius), heel_angle(section, radius)
        searched = (math.degrees(wall_by_search(section, radius, side)) for side in (1, -1))
        assert found == pytest.approx(tuple(searched), abs=1e-9)


@pytest.mark.parametrize(("section", "crest"), SECTIONS, ids=IDS)
def test_rake_is_the_lean_of_the_face_itself(section: FluteSection, crest: float):
    for radius in (crest, 0.95 * crest):
        step = 1e-5
        points = [
            (r * math.cos(math.radians(a)), r * math.sin(math.radians(a)))
            for r in (radius - step, radius + step)
            for a in [face_angle(section, r)]
        ]
        lean = math.degrees(math.atan2(points[1][1] - points[0][1], points[1][0] - points[0][0]))
        assert rake(section, radius) == pytest.approx(face_angle(section, radius) - lean, abs=1e-5)


def test_rake_on_the_wall_and_on_the_ball_by_their_closed_forms():
    wall, crest = SECTIONS[0]
    assert not on_ball(wall, crest)
    assert math.sin(math.radians(rake(wall, crest))) == pytest.approx(1.3 / 9.0, abs=1e-14)
    ball, crest = SECTIONS[2]
    assert on_ball(ball, crest)
    expected = (81 + 36 - 10.05**2) / (2 * 9 * 6)
    assert math.sin(math.radians(rake(ball, crest))) == pytest.approx(expected, abs=1e-14)


def test_a_shallow_flute_scrapes_and_no_offset_helps_at_the_same_depth():
    rakes = [rake(FluteSection(6.0, e, 12.0), 9.0) for e in (-1.0, 0.0, 1.0)]
    assert rakes[0] == pytest.approx(rakes[2])
    assert rakes[0] < rakes[1] < 0


def test_chordal_hook_on_a_straight_wall_is_the_rake_at_the_crest():
    section, crest = SECTIONS[0]
    assert chordal_hook(section, crest, 8.2) == pytest.approx(rake(section, crest), abs=1e-12)


def test_chordal_hook_on_the_ball_lies_between_the_rakes_of_its_ends():
    section, crest = SECTIONS[2]
    root = 8.0
    u, t = zip(
        *(
            (r * math.cos(a), r * math.sin(a))
            for r in (root, crest)
            for a in [wall_by_search(section, r, 1)]
        ),
        strict=True,
    )
    chord = math.degrees(math.atan2(t[1] - t[0], u[1] - u[0]))
    expected = math.degrees(wall_by_search(section, crest, 1)) - chord
    assert chordal_hook(section, crest, root) == pytest.approx(expected, abs=1e-9)
    assert chordal_hook(section, crest, root) < rake(section, crest)


@pytest.mark.parametrize(("section", "crest"), SECTIONS, ids=IDS)
def test_area_is_what_the_void_takes_from_the_disc(section: FluteSection, crest: float):
    rings, spokes = 1200, 2400
    r = (np.arange(rings) + 0.5) / rings * crest
    a = (np.arange(spokes) + 0.5) / spokes * 2 * math.pi
    rr, aa = np.meshgrid(r, a, indexing="ij")
    hit = inside(section, rr * np.cos(aa), rr * np.sin(aa))
    area = float((hit * rr).sum()) * (crest / rings) * (2 * math.pi / spokes)
    assert flute_area(section, crest) == pytest.approx(area, rel=1e-3)


@pytest.mark.parametrize(("section", "crest"), SECTIONS, ids=IDS)
def test_area_grows_with_the_radius_by_the_flutes_own_arc(section: FluteSection, crest: float):
    step = 1e-4
    growth = (flute_area(section, crest + step) - flute_area(section, crest - step)) / (2 * step)
    arc = crest * math.radians(face_angle(section, crest) - heel_angle(section, crest))
    assert growth == pytest.approx(arc, rel=1e-6)


def test_a_flute_deep_inside_is_strip_and_half_disc():
    section = FluteSection(1.0, 0.0, 3.0)
    far = 1000.0
    circle_cap = 2 * math.sqrt(far**2 - 1) - 2 * 3.0
    sagitta = far**2 * math.asin(1 / far) - math.sqrt(far**2 - 1)
    assert flute_area(section, far) == pytest.approx(circle_cap + math.pi / 2 + sagitta, rel=1e-9)


def test_core_is_what_the_ball_leaves_round_the_axis():
    section = FluteSection(4.0, -3.0, 4.0)
    assert section.core_diameter == pytest.approx(2.0)


@pytest.mark.parametrize(
    ("section", "count", "radius"),
    [
        (FluteSection(3.0, -1.7, 6.0), 4, 9.0),
        (FluteSection(1.0, -0.79, 1.39), 3, 1.5),
        (FluteSection(2.0, 1.0, 5.0), 5, 9.0),
        (FluteSection(3.0, -2.0, 10.0), 5, 9.0),
        (FluteSection(5.0, -4.0, 6.0), 2, 9.0),
        (FluteSection(4.0, -2.0, 8.5), 6, 12.0),
        (FluteSection(3.0, 2.0, 10.0), 5, 9.0),
        (FluteSection(2.0, 3.0, 9.5), 6, 9.0),
        (FluteSection(2.0, -3.0, 9.5), 6, 9.0),
        (FluteSection(1.455, 6.12, 7.169), 8, 9.0),
    ],
)
def test_least_wall_is_the_least_distance_between_points_of_the_two_voids(
    section: FluteSection, count: int, radius: float
):
    reach = (np.arange(0, 1200) + 1e-9) / 1199 * (radius - section.core_diameter / 2)
    radii = section.core_diameter / 2 + reach
    face = np.array([r * np.exp(1j * math.radians(face_angle(section, r))) for r in radii[1:]])
    heel = np.array([r * np.exp(1j * math.radians(heel_angle(section, r))) for r in radii[1:]])
    turned = heel * np.exp(2j * math.pi / count)
    found = np.abs(face[:, None] - turned[None, :]).min()
    assert least_wall(section, count, radius) == pytest.approx(found, rel=2e-3)


def test_flutes_that_meet_leave_no_wall():
    section = FluteSection(4.0, -2.0, 6.0)
    assert least_wall(section, 3, 9.0) > 0
    assert least_wall(section, 6, 9.0) < 0
    assert land_angle(section, 6, 6.5) < 0
