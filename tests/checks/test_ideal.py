import math
from collections.abc import Callable
from dataclasses import replace

import designs
import numpy as np
import pytest

from tapmodel.checks.ideal.laws import inside, relief_drop
from tapmodel.checks.ideal.walls import crest_edge, half_width, wall_angles
from tapmodel.shape import relief
from tapmodel.tap.tap import Relief, Tap
from tapmodel.words import Hand, ReliefPlace


def polar(radius: float, degrees: float, z: float):
    turn = math.radians(degrees)
    return [radius * math.cos(turn), radius * math.sin(turn), z]


def test_walls_lie_on_ball_or_strip(tap: Tap):
    flutes = tap.flutes
    z = np.full(50, flutes.full_depth_length + 0.3 * flutes.cutter_diameter)
    for half in (half_width(flutes, z * 0), half_width(flutes, z)):
        floor = math.hypot(flutes.centre_radius, flutes.offset) - half[0]
        radius = np.linspace(floor + 1e-6, floor + 4, 50)
        for wall in wall_angles(flutes, radius, half):
            u, t = radius * np.cos(np.radians(wall)), radius * np.sin(np.radians(wall))
            below = np.minimum(u - flutes.centre_radius, 0.0)
            assert np.hypot(below, t - flutes.offset) == pytest.approx(half, rel=1e-9)


def test_half_width_beyond_full_depth_is_the_balls():
    flutes = designs.m18().flutes
    assert half_width(flutes, np.array([0.0, 30.0, 32.1, 33.5, 40.0])) == pytest.approx(
        [3.5, 3.5, 2.8, 0.0, 0.0]
    )


@pytest.mark.parametrize(
    "record",
    [
        relief.con_eccentric(ReliefPlace.THREAD, 12.0, 60.0, 15.0, 0.12),
        relief.eccentric_by_edge(ReliefPlace.THREAD, 12.0, 6.0),
    ],
    ids=["con-eccentric", "eccentric"],
)
def test_relieved_points_lie_on_the_arc_of_the_relief(record: Relief):
    phi, arc = np.linspace(record.margin_angle, 60.0, 9), relief.arc_of(record, 12.0)
    radius = 6.0 - relief_drop(record, 12.0, phi)
    point = radius * np.exp(1j * np.radians(phi))
    centre = arc.offset * np.exp(1j * np.radians(arc.direction))
    assert abs(point - centre) == pytest.approx(np.full(9, arc.radius), rel=1e-12)
    drop = relief.drop(record, 12.0, phi)
    assert relief_drop(record, 12.0, phi) == pytest.approx(drop, abs=1e-12)


def test_the_arc_keeps_its_margin_and_heel_or_its_angle_at_the_edge():
    margin = relief.con_eccentric(ReliefPlace.THREAD, 12.0, 60.0, 15.0, 0.12)
    edge = relief.eccentric_by_edge(ReliefPlace.THREAD, 12.0, 6.0)
    step = 1e-6
    behind = np.array([15.0, 15.0 + math.degrees(step / 6.0), 60.0])
    begin, slope, heel = relief_drop(margin, 12.0, behind)
    assert (begin, heel) == (0.0, pytest.approx(0.12, rel=1e-12))
    assert slope / step < 1e-6
    fall = relief_drop(edge, 12.0, np.array([math.degrees(step / 6.0)]))[0] / step
    assert fall == pytest.approx(math.tan(math.radians(6.0)), rel=1e-6)


def test_no_drop_on_the_margin_nor_when_concentric():
    margin = relief.con_eccentric(ReliefPlace.THREAD, 12.0, 60.0, 15.0, 0.12)
    none = relief.concentric(ReliefPlace.THREAD)
    phi = np.array([-3.0, 0.0, 14.9, 40.0])
    assert list(relief_drop(margin, 12.0, phi)[:3]) == [0.0, 0.0, 0.0]
    assert list(relief_drop(none, 12.0, phi)) == [0.0] * 4


@pytest.mark.parametrize("theta", [40.0, 55.0, 160.0])
def test_crests_follow_a_right_hand_helix(theta: float):
    tap = designs.m10()
    z = 0.4 + 1.5 * theta / 360 + 8 * 1.5
    crest, root = tap.thread.major / 2, tap.thread.minor / 2
    points = [polar(crest - 1e-6, theta, z), polar(crest + 1e-6, theta, z)]
    points += [polar(root - 1e-6, theta, z + 0.75), polar(root + 1e-6, theta, z + 0.75)]
    assert list(inside(tap, np.array(points))) == [True, False, True, False]


def test_left_hand_is_the_mirror_image(random_points: Callable[[Tap, int], np.ndarray]):
    tap = designs.m10()
    left = replace(tap, thread=replace(tap.thread, hand=Hand.LEFT))
    points = random_points(tap, 20_000)
    mirrored = points * [1.0, -1.0, 1.0]
    assert np.array_equal(inside(left, mirrored), inside(tap, points))
    assert not np.array_equal(inside(left, points), inside(tap, points))


def test_ridge_and_groove_are_equal_at_the_pitch_diameter():
    tap = designs.m10()
    z = np.arange(12.0, 18.0, 1e-4)
    turn = math.radians(55.0)
    r = tap.thread.pitch_diameter / 2
    points = np.stack([r * np.cos(turn) + 0 * z, r * np.sin(turn) + 0 * z, z], axis=1)
    assert inside(tap, points).mean() == pytest.approx(0.5, abs=2e-4)


def test_chamfer_cone_starts_at_the_edge_and_drops_behind_it():
    tap = designs.m18()
    edge = crest_edge(tap.flutes, tap.thread.major)
    thread = tap.thread
    for phi in (1.0, 40.0):
        # the first height over the front at which a crest of this angle lies in the cone
        z = (thread.first_z + thread.lead * (edge + phi) / 360) % thread.pitch
        cone = 8.5 + z * math.tan(math.radians(tap.chamfer.angle))
        cone -= relief.heel_drop(tap.relief.chamfer, thread.major, phi)
        points = np.array([polar(cone - 1e-6, edge + phi, z), polar(cone + 1e-6, edge + phi, z)])
        assert list(inside(tap, points)) == [True, False]


@pytest.mark.parametrize("place", list(ReliefPlace))
def test_relief_lowers_what_it_applies_to(place: ReliefPlace):
    tap = designs.no_neck()
    record = replace(tap.relief.thread, applies_to=place)
    tap = replace(tap, relief=replace(tap.relief, thread=record))
    thread, phi = tap.thread, 30.0
    theta = crest_edge(tap.flutes, thread.major) + phi
    drop = relief.heel_drop(record, thread.major, phi)
    z = thread.first_z + thread.lead * theta / 360 + 9 * thread.pitch
    crest = thread.major / 2 - (0.0 if place is ReliefPlace.CHAMFER else drop)
    root = thread.minor / 2 - (drop if place is ReliefPlace.THREAD else 0.0)
    points = [polar(crest - 1e-6, theta, z), polar(crest + 1e-6, theta, z)]
    half = z + thread.pitch / 2
    points += [polar(root - 1e-6, theta, half), polar(root + 1e-6, theta, half)]
    assert drop > 0.03
    assert list(inside(tap, np.array(points))) == [True, False, True, False]


@pytest.mark.parametrize(
    ("point", "solid"),
    [
        (polar(3.79, 55.0, 30.0), True),  # neck
        (polar(3.81, 55.0, 30.0), False),
        (polar(3.85, 55.0, 39.1), True),  # shoulder, 0.058 up at 30 degrees per 0.1
        (polar(3.80, 55.0, 38.9), True),
        (polar(3.90, 55.0, 39.1), False),
        (polar(3.99, 55.0, 60.0), True),  # shank
        (polar(4.01, 55.0, 60.0), False),
        ([3.14, 0.5, 95.0], True),  # square
        ([3.16, 0.5, 95.0], False),
        ([3.16, 0.5, 89.9], True),
        ([0.5, -3.16, 95.0], False),
        (polar(3.79, 45.0, 99.71), True),  # rear chamfer
        (polar(3.81, 45.0, 99.71), False),
        ([0.0, 1.0, 0.8], False),  # front centre: 1.5 - 0.8 tan 30 = 1.038
        ([0.0, 1.05, 0.8], True),
        ([0.0, 0.9, 99.5], False),  # rear centre: 1.25 - 0.5 tan 30 = 0.961
        ([0.0, 0.98, 99.5], True),
        (polar(1.93, 0.0, 20.0), True),  # floor of the flute at 4 - sqrt(4.41 - 0.36)
        (polar(2.05, 0.0, 20.0), False),
        (polar(3.5, 0.0, 42.0), True),  # run-out: the ball has risen
        (polar(3.5, 0.0, 41.0), False),
    ],
)
def test_known_points_of_the_m10_tap(point: list[float], solid: bool):
    assert inside(designs.m10(), np.array([point]))[0] == solid
