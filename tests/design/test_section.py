"""The outline is closed, of the area that the checks room computes by itself, and the hand's."""

import math
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from asked import settled_of
from hypothesis import given, settings
from hypothesis import strategies as st

from tapmodel.checks.ideal.expected import section_area, solid_volume
from tapmodel.checks.ideal.laws import inside
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError
from tapmodel.shape.figures import figures_of
from tapmodel.shape.outlines.blank_profile import blank_profile
from tapmodel.shape.outlines.outline import Arc, Line, arc_through
from tapmodel.shape.outlines.section import full_thread_height, section_outline
from tapmodel.spec.job_file import read_job
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand, ReliefPlace

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


def _heights(tap: Tap) -> np.ndarray:
    blank, flutes = tap.blank, tap.flutes
    special = [
        0.0,
        0.05,
        tap.chamfer_length,
        full_thread_height(tap),
        blank.thread_length,
        flutes.full_depth_length + 0.4 * flutes.cutter_diameter,
        (figures_of(tap).runout_end + blank.square_start) / 2,
        blank.square_start + 0.1,
        blank.overall_length - blank.rear_chamfer / 2,
        blank.overall_length,
    ]
    spread = np.random.default_rng(3).uniform(0.0, blank.overall_length, 30)
    return np.concatenate([special, spread])


def _same_area(tap: Tap, heights: np.ndarray) -> None:
    expected = section_area(tap, heights)
    found = [section_outline(tap, float(z)).area for z in heights]
    np.testing.assert_allclose(found, expected, rtol=1e-5)


def _closed(tap: Tap, z: float) -> None:
    for loop in section_outline(tap, z).loops:
        for piece, following in zip(loop, (*loop[1:], loop[0]), strict=True):
            assert math.dist(piece.end, following.start) < 1e-8


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_area_and_closure_of_every_example(path: Path):
    tap = settle(read_job(path)).tap
    heights = _heights(tap)
    _same_area(tap, heights)
    for z in heights:
        _closed(tap, float(z))


def test_area_with_neck_centres_and_a_centre_wider_than_the_core(small_tap: Tap):
    _same_area(small_tap, _heights(small_tap))
    wide = replace(small_tap, blank=replace(small_tap.blank, front_centre=5.0))
    assert len(section_outline(wide, 0.2).loops) == wide.flutes.count
    _same_area(wide, np.linspace(0.01, 4.0, 23))
    _closed(wide, 0.2)


@pytest.mark.parametrize("place", [ReliefPlace.THREAD, ReliefPlace.CREST])
def test_area_with_a_back_taper(place: ReliefPlace, small_tap: Tap):
    relief = replace(small_tap.relief.thread, applies_to=place)
    thread = replace(small_tap.thread, back_taper=0.5)
    tap = replace(small_tap, thread=thread, relief=replace(small_tap.relief, thread=relief))
    _same_area(tap, _heights(tap))
    _closed(tap, 3.3)


def test_a_profile_with_a_back_taper_falls_from_the_end_of_the_chamfer(small_tap: Tap):
    tap = replace(small_tap, thread=replace(small_tap.thread, back_taper=0.5))
    profile, plain = blank_profile(tap), blank_profile(small_tap)
    assert (4.025, 2.0) in [pytest.approx(corner) for corner in profile.corners]
    assert (4.025 - 0.0025 * 4.0, 6.0) in [pytest.approx(corner) for corner in profile.corners]
    (start, first), (end, last) = profile.root
    root = small_tap.thread.minor / 2
    assert (end, last) == pytest.approx((root - 0.01, 6.0))
    assert start == pytest.approx(root - 0.0025 * (first - 2.0))
    cone = small_tap.chamfer.point_diameter / 2
    assert first == 0.0 or start == pytest.approx(cone + 0.3 * first)
    assert plain.volume - profile.volume == pytest.approx(math.pi * 4.0 * 0.01 * 4.02, rel=0.01)


def test_flutes_that_end_inside_the_thread(small_tap: Tap):
    short = replace(small_tap, flutes=replace(small_tap.flutes, full_depth_length=4.2))
    _same_area(short, np.linspace(3.0, 5.3, 17))


@given(
    z=st.floats(0.0, 35.9),
    count=st.integers(2, 3),
    offset=st.floats(-0.5, 0.9),
    place=st.sampled_from(list(ReliefPlace)[1:]),
)
@settings(max_examples=60)
def test_area_over_the_family(z: float, count: int, offset: float, place: ReliefPlace):
    base = settled_of("M8x1", ["flutes.count=3"]).tap
    flutes = replace(base.flutes, count=count, offset=offset)
    thread = replace(base.relief.thread, applies_to=place)
    tap = replace(base, flutes=flutes, relief=replace(base.relief, thread=thread))
    _same_area(tap, np.array([z]))


def test_every_corner_lies_on_the_border_of_the_ideal_solid(small_tap: Tap, left_tap: Tap):
    for tap in (small_tap, left_tap):
        for z in (1.3, 4.4, 9.9, 20.0):
            corners = [p.start for loop in section_outline(tap, z).loops for p in loop]
            ring = np.array(corners)[:, None, :] + 2e-3 * np.array(
                [[math.cos(a), math.sin(a)] for a in np.linspace(0, 2 * math.pi, 24)]
            )
            around = np.concatenate([ring, np.full((*ring.shape[:2], 1), z)], axis=2)
            within = inside(tap, around.reshape(-1, 3)).reshape(ring.shape[:2])
            assert within.any(axis=1).all()
            assert not within.all(axis=1).any()
            assert len(corners) >= 2 * tap.flutes.count or z == 20.0


def test_left_hand_is_the_mirror_image(small_tap: Tap, left_tap: Tap):
    right, left = section_outline(small_tap, 4.4), section_outline(left_tap, 4.4)
    assert left.area == pytest.approx(right.area, rel=1e-12)
    assert left_tap.thread.hand is Hand.LEFT
    points = {(round(p.start[0], 9), round(-p.start[1], 9)) for p in right.loops[0]}
    assert points == {(round(p.end[0], 9), round(p.end[1], 9)) for p in left.loops[0]}


def test_a_height_beside_the_tap_is_refused(small_tap: Tap):
    with pytest.raises(InputError, match="0 to 36 mm"):
        section_outline(small_tap, 36.5)


def test_arc_through_three_points():
    arc = arc_through((3.0, 1.0), (1.0, 3.0), (-1.0, 1.0))
    assert isinstance(arc, Arc)
    assert arc.centre == pytest.approx((1.0, 1.0))
    assert (arc.start_angle, arc.end_angle) == pytest.approx((0.0, 180.0))
    back = arc_through((-1.0, 1.0), (1.0, 3.0), (3.0, 1.0))
    assert isinstance(back, Arc)
    assert back.end_angle - back.start_angle == pytest.approx(-180.0)
    assert isinstance(arc_through((0.0, 0.0), (1.0, 1.0), (2.0, 2.0)), Line)


def test_profile_encloses_the_volume_of_the_tap_without_thread_flutes_and_square(
    small_tap: Tap,
):
    thread = small_tap.thread
    # Wide enough for the groove to end a hair below the crests.
    filled = thread.major - 1e-9
    bare = replace(
        small_tap,
        thread=replace(thread, minor=filled),
        relief=replace(
            small_tap.relief,
            thread=replace(small_tap.relief.thread, arc_offset=0.0),
            chamfer=replace(small_tap.relief.chamfer, arc_offset=0.0),
        ),
        flutes=replace(small_tap.flutes, full_depth_length=-10.0),
        blank=replace(small_tap.blank, square_across_flats=20.0),
    )
    assert blank_profile(bare).volume == pytest.approx(solid_volume(bare), rel=1e-6)


def test_corners_of_the_profile(small_tap: Tap):
    profile = blank_profile(small_tap)
    assert (small_tap.thread.major / 2, small_tap.chamfer_length) in profile.corners
    assert (small_tap.blank.neck_diameter / 2, small_tap.blank.thread_length) in profile.corners
    assert profile.corners[0][0] == 0.0
    assert profile.corners[-1][0] == 0.0
    (radius, start), (_, end) = profile.root
    cone = small_tap.chamfer.point_diameter / 2
    cone += start * math.tan(math.radians(small_tap.chamfer.angle))
    assert radius == small_tap.thread.minor / 2
    assert start == 0.0 or cone == pytest.approx(radius)
    assert end == small_tap.blank.thread_length
