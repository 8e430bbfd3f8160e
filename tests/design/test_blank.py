"""Blank by rule, and the run-out of the flutes against brute force."""

import math
from itertools import pairwise

import numpy as np
import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.shape.flute_section import FluteSection, section_of
from tapmodel.shape.turned import (
    Turned,
    cone_length,
    largest_radius_cut,
    runout_end,
    smallest_radius_cut,
    turned_lengths,
)
from tapmodel.tap.tap import Blank


def designed(designation: str, *sets: str) -> TapDesign:
    return settled_of(designation, sets)


# shank, thread length, overall length, across flats, length of the square: ISO 529 and ISO 237,
# from memory
ROWS = {
    "M3": (3.15, 11.0, 48.0, 2.5, 5.0),
    "M6": (6.3, 19.0, 66.0, 5.0, 8.0),
    "M8": (8.0, 22.0, 72.0, 6.3, 9.0),
    "M12": (9.0, 29.0, 89.0, 7.1, 10.0),
    "M24": (18.0, 45.0, 130.0, 14.0, 18.0),
    "M24x1": (18.0, 45.0, 130.0, 14.0, 18.0),
}


@pytest.mark.parametrize("designation", ROWS)
def test_blank_of_the_diameter(designation: str) -> None:
    blank = designed(designation).tap.blank
    assert ROWS[designation] == (
        blank.shank_diameter,
        blank.thread_length,
        blank.overall_length,
        blank.square_across_flats,
        blank.square_length,
    )
    assert blank.square_start == blank.overall_length - blank.square_length


def test_a_neck_only_where_the_shank_is_thicker_than_the_root() -> None:
    for designation in ("M3", "M6", "M8", "M10x1", "M12", "M18x0.75", "M30"):
        design = designed(designation)
        blank, root = design.tap.blank, design.tap.thread.minor
        if blank.shank_diameter > root:
            assert root - 0.2 - 1e-9 <= blank.neck_diameter <= root - 0.1
            assert blank.neck_diameter < design.hole.minor_min
            end = blank.thread_length + blank.neck_length
            assert end - 0.5 - design.tap.thread.pitch / 2 <= design.figures.runout_end
            assert design.figures.runout_end <= end - design.tap.thread.pitch / 2 + 1e-9
        else:
            assert (blank.neck_diameter, blank.neck_length) == (0.0, 0.0)


@pytest.mark.parametrize(
    ("sets", "neck"),
    [
        (["blank.neck_diameter=0"], (0.0, 0.0)),
        (["blank.neck_length=0"], (0.0, 0.0)),
        (["blank.neck_length=6"], (4.6, 6.0)),
        (["blank.neck_diameter=4.2"], (4.2, 3.5)),
    ],
)
def test_a_given_neck_value_decides_whether_there_is_one(
    sets: list[str], neck: tuple[float, float]
) -> None:
    blank = designed("M6", *sets).tap.blank
    assert (blank.neck_diameter, blank.neck_length) == neck


def test_a_neck_can_be_asked_for_on_a_thin_shank() -> None:
    blank = designed("M18x0.75", "blank.neck_length=5").tap.blank
    assert blank.neck_diameter == 14.0
    assert cone_length(blank) == 0


def test_a_long_chamfer_lengthens_thread_and_tap() -> None:
    blank = designed("M18x0.75", "chamfer.pitches=50").tap.blank
    assert blank.thread_length == 43.5  # 50 + 8 pitches
    assert blank.overall_length == 112 + 6.5
    assert designed("M18x0.75", "blank.thread_length=30").tap.blank.overall_length == 112


def test_the_square_may_be_given_by_its_start() -> None:
    blank = designed("M6", "blank.square_start=55").tap.blank
    assert (blank.square_start, blank.square_length) == (55.0, 11.0)


def test_flutes_end_one_pitch_behind_the_thread() -> None:
    assert designed("M30").tap.flutes.full_depth_length == 51.5
    assert designed("M18x0.25").tap.flutes.full_depth_length == 37.5


def test_turned_lengths_follow_each_other() -> None:
    for designation in ("M6", "M18x0.75"):
        design = designed(designation)
        lengths = turned_lengths(design.tap.blank, design.tap.thread.major)
        assert lengths[0].start == 0
        assert lengths[-1].end == design.tap.blank.overall_length
        for before, after in pairwise(lengths):
            assert before.end == after.start
    blank = designed("M6").tap.blank
    assert cone_length(blank) == pytest.approx((6.3 - 4.6) / 2 * math.sqrt(3))


def test_edges_and_centres_by_rule() -> None:
    blank = designed("M18x0.75").tap.blank
    assert (blank.rear_chamfer, blank.rear_centre) == (0.7, 4.2)
    assert blank.front_centre == 4.0  # half of the core, 0.45 x 18 = 8.1 mm, down to 0.1 mm
    assert designed("M6").tap.blank.shoulder_angle == 30.0
    assert designed("M3").tap.blank.rear_centre == 0.0


@pytest.mark.parametrize("slope", [0.1, 0.5, -0.2, -0.8])
def test_on_a_cone_the_run_out_ends_where_ball_and_cone_are_equally_far_out(slope: float) -> None:
    section, full_depth = FluteSection(3.0, -1.0, 5.5), 20.0
    cone = Turned(20.0, 30.0, 3.4 - 0.2 * slope, 3.4 + 9.8 * slope)
    z = runout_end(section, full_depth, (cone,))
    ball = math.sqrt(9.0 - (z - full_depth) ** 2)
    cone_radius = cone.start_radius + slope * (z - cone.start)
    assert 20.1 < z < 22.9
    assert math.hypot(5.5, 1.0) - ball == pytest.approx(cone_radius, abs=1e-12)


def runout_by_search(
    section: FluteSection, full_depth: float, lengths: tuple[Turned, ...]
) -> float:
    """Largest z, on a fine grid, where a point of the cutter lies inside the blank."""
    last = 0.0
    for z in np.arange(full_depth, full_depth + section.ball_radius + 1e-3, 1e-3):
        part = next((p for p in lengths if p.start <= z < p.end), None)
        reach = section.ball_radius**2 - (z - full_depth) ** 2
        if part is None or reach < 0:
            continue
        share = (z - part.start) / (part.end - part.start)
        radius = part.start_radius + share * (part.end_radius - part.start_radius)
        width = math.sqrt(reach)
        bottom = np.linspace(0, 2 * math.pi, 721)
        u = section.centre_radius + width * np.cos(bottom)
        t = section.offset + width * np.sin(bottom)
        if np.hypot(u, t).min() < radius:
            last = float(z)
    return last


@pytest.mark.parametrize(
    ("designation", "sets"),
    [
        ("M18x0.75", []),
        ("M6", []),
        ("M6", ["blank.neck_length=1.5"]),
        ("M6", ["blank.neck_length=1.5", "blank.shoulder_angle=60"]),
        ("M6", ["blank.neck_length=2.2", "blank.shoulder_angle=12"]),
        ("M6", ["blank.neck_length=0"]),
        ("M12", ["blank.neck_diameter=9.7", "blank.neck_length=2", "blank.shoulder_angle=10"]),
        ("M30", ["flutes.cutter_diameter=8", "flutes.core_diameter=9"]),
    ],
)
def test_the_run_out_ends_where_the_cutter_leaves_the_blank(
    designation: str, sets: list[str]
) -> None:
    design = designed(designation, *sets)
    lengths = turned_lengths(design.tap.blank, design.tap.thread.major)
    section, full_depth = section_of(design.tap.flutes), design.tap.flutes.full_depth_length
    found = runout_end(section, full_depth, lengths)
    assert found == design.figures.runout_end
    assert found == pytest.approx(runout_by_search(section, full_depth, lengths), abs=3e-3)


def test_largest_and_smallest_radius_cut_stop_at_the_run_out() -> None:
    blank = Blank(60, 20, 4, 5, 45, 8, 6.3, 9, 0.4, 0, 0)
    lengths = turned_lengths(blank, 6.0)
    assert largest_radius_cut(lengths, 24.0) == 3.0
    assert largest_radius_cut(lengths, 26.5) == pytest.approx(3.5)
    assert largest_radius_cut(lengths, 30.0) == 4.0
    assert smallest_radius_cut(lengths, 24.0) == 2.0
    assert smallest_radius_cut(lengths, 10.0) == 3.0
