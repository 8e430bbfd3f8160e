"""Large taps of fine pitch: short threads, and flutes that follow the chips, by hand."""

import math
import sys
from functools import cache
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from listed_jobs import listed_designations
from sweeps import in_part

from tapmodel.designing.limits.turns import large_and_fine, threaded
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.report.words.choices import why
from tapmodel.shape.flute_section import on_ball, section_of
from tapmodel.spec.job_file import job_for
from tapmodel.words import Severity

USUAL = {
    "blank.thread_length": "thread-length-listed",
    "blank.overall_length": "blank-listed-longer",
    "hole.depth": "depth-of-diameter",
    "flutes.core_diameter": "core-of-diameter",
}
"""Rules of a tap that is not large and fine."""


@cache
def designed(designation: str, *sets: str) -> TapDesign:
    return settle(job_for(designation, sets))


def reason(design: TapDesign, field: str) -> str:
    choice = design.choice(field)
    assert choice is not None
    assert choice.rule is not None
    return choice.rule.code


def share(design: TapDesign) -> float:
    count, major = design.tap.flutes.count, design.tap.thread.major
    return design.figures.land_width * count / (math.pi * major)


def test_what_guides_is_a_diameter_30_pitches_or_half_a_diameter() -> None:
    assert threaded(60, 2) == 60  # 30 pitches are the diameter
    assert threaded(64, 2) == 60
    assert threaded(64, 1) == 32  # half the diameter is more than 30 mm
    assert threaded(42, 0.1) == pytest.approx(10)  # 100 pitches
    assert threaded(30, 0.5) == 30  # not large
    assert [large_and_fine(*size) for size in ((60, 2), (60.1, 2), (30, 0.5), (30.1, 0.5))] == [
        *(False, True, False, True)
    ]


@pytest.mark.parametrize(
    ("designation", "thread", "depth"),
    [
        # four pitches of chamfer
        *(("M64x1", 4 + 32, 48), ("M64x2", 8 + 60, 90), ("M80x0.75", 3 + 40, 60)),
        *(("M100x1", 4 + 50, 75), ("M48x0.5", 2 + 24, 36)),
        # 6.35 and 30 pitches of 1.5875
        ("2.5-16 UN", 54.0, 1.5 * 47.625),
    ],
)
def test_the_thread_is_as_short_as_guiding_lets_it(
    designation: str, thread: float, depth: float
) -> None:
    design = designed(designation)
    assert design.tap.blank.thread_length == pytest.approx(thread)
    assert design.work.depth == pytest.approx(depth)


def test_a_blank_that_is_printed_for_the_diameter_stands_whatever_the_pitch() -> None:
    for designation, shank, overall in (
        ("M48x0.5", 31.5, 187 - (67 - 26)),
        ("M60x1", 40, 221 - (76 - 34)),
        ("M52x1.5", 35.5, 200 - (70 - 51)),
    ):
        blank = designed(designation).tap.blank
        assert (blank.shank_diameter, blank.overall_length) == (shank, overall)
        assert reason(designed(designation), "blank.shank_diameter") == "blank-listed"


@pytest.mark.parametrize(
    ("designation", "necks", "held"),
    [
        # the next shank of ISO 237 from a third of the diameter up, and its square
        ("M64x1", (45.5, 62.6), (22.4, 18, 22)),
        ("M64x2", (79.0, 61.3), (22.4, 18, 22)),
        ("M80x0.75", (52.5, 78.9), (28, 22.4, 26)),
        ("M100x1", (63.5, 98.6), (35.5, 28, 31)),
        ("2.5-16 UN", (64.5, 61.3), (22.4, 18, 22)),
    ],
)
def test_a_blank_that_no_list_has_is_what_the_tap_needs(
    designation: str, necks: tuple[float, float], held: tuple[float, float, float]
) -> None:
    (neck_end, neck), (shank, across, square) = necks, held
    design = designed(designation)
    blank = design.tap.blank
    assert (blank.shank_diameter, blank.square_across_flats) == (shank, across)
    assert blank.thread_length + blank.neck_length == pytest.approx(neck_end)
    assert blank.neck_diameter == pytest.approx(neck)
    cone = (neck - shank) / 2 * math.sqrt(3)
    length = neck_end + cone + 1.5 * shank + square
    assert blank.overall_length == math.ceil(length - 1e-9)
    # right through its hole the square stands clear
    assert blank.overall_length >= design.work.depth + design.tap.chamfer_length + 10 + square
    assert design.prediction is not None
    assert design.prediction.margin >= 2
    assert not design.errors


def test_a_hole_that_is_deep_asks_for_a_longer_blank() -> None:
    sets = ("hole.depth=150", "blank.thread_length=36")
    # 150 and the chamfer of 4, 10 clear and the square of 22
    assert designed("M64x1", *sets).tap.blank.overall_length == 150 + 4 + 10 + 22


def test_a_slender_shank_grows_until_the_tap_bears_twice_what_it_takes() -> None:
    assert designed("Tr240x7").tap.blank.shank_diameter == 80
    tough = designed("Tr240x7", "hole.material=42CrMo4 40 HRC")
    shank = tough.tap.blank.shank_diameter
    assert reason(tough, "blank.shank_diameter") == "shank-against-torque"
    assert "thicker than the 80 mm" in why_of(tough, "blank.shank_diameter")
    assert tough.prediction is not None
    assert tough.prediction.margin >= 2
    thinner = designed(
        "Tr240x7", "hole.material=42CrMo4 40 HRC", f"blank.shank_diameter={shank - 5}"
    )
    assert thinner.prediction is not None
    assert thinner.prediction.margin < 2


def test_a_deeper_hole_that_the_job_names_is_served() -> None:
    lengths = {
        depth: designed("M64x1", f"hole.depth={depth}").tap.blank.thread_length
        for depth in (10, 32, 60, 200)
    }
    assert lengths == {10: 36, 32: 36, 60: 64, 200: 82}
    assert reason(designed("M64x1", "hole.depth=60"), "blank.thread_length") == (
        "thread-length-of-hole"
    )
    assert designed("M60x2", "hole.depth=10").tap == designed("M60x2").tap


@pytest.mark.parametrize("designation", ["M60x2", "M64x3", "M30x1", "Tr240x8", "2-12 UN"])
def test_any_other_tap_keeps_the_rules_of_its_diameter(designation: str) -> None:
    design = designed(designation)
    assert {field: reason(design, field) for field in USUAL} == USUAL


@pytest.mark.parametrize(
    ("designation", "count"),
    [
        *(("M33x0.75", 4), ("M48x0.5", 6), ("M52x1.5", 8), ("M64x1", 8), ("M80x0.75", 10)),
        *(("M100x1", 12), ("M100x3", 12), ("2.5-16 UN", 8), ("G 3", 12)),
    ],
)
def test_up_to_a_hundred_millimetres_a_cutter_of_16_does(designation: str, count: int) -> None:
    design = designed(designation)
    assert design.tap.flutes.count == count
    assert design.tap.flutes.cutter_diameter <= 16
    assert 0.28 < share(design) <= 0.4
    told = {found.code for found in design.findings if found.severity is not Severity.NOTE}
    assert told <= {"drill-between"}


def test_the_core_of_m64x1_by_hand() -> None:
    # Over the crests 64.06, the hole 63. The edge stands 32.03 sin 8 deg = 4.4577 beside the axis,
    # the ball's centre 8 mm less, and as high as the edge's foot at the wall of the hole.
    high = math.sqrt(31.5**2 - 4.4577**2)
    core = 2 * (math.hypot(high, 8 - 4.4577) - 8)
    assert 46.5 < core < 47
    design = designed("M64x1")
    assert design.tap.flutes.core_diameter == pytest.approx(46.5, abs=1e-9)
    assert not on_ball(section_of(design.tap.flutes), design.drill / 2)
    assert "1.5 times the chips" in why_of(design, "flutes.core_diameter")


def why_of(design: TapDesign, field: str) -> str:
    choice = design.choice(field)
    assert choice is not None
    return why(choice)


def test_where_small_cutters_leave_shallow_flutes_the_chips_ask_for_depth() -> None:
    sets = ("flutes.cutter_diameter=6", "flutes.count=8")
    design = designed("M64x2", *sets)
    thread, core = design.tap.thread, design.tap.flutes.core_diameter
    # A tooth is as wide as its crest and what both flanks add down to the wall of the hole.
    wall, crest, lean = design.drill / 2, thread.major / 2, 2 * math.tan(math.radians(30))
    tooth = (thread.crest_flat + lean * crest) * (crest**2 - wall**2) / 2
    tooth -= lean * (crest**3 - wall**3) / 3
    needed = 1.5 * 4 * 2 * math.pi * tooth / 2.0
    thicker = designed("M64x2", *sets, f"flutes.core_diameter={core + 0.5}").prediction
    assert design.prediction is not None
    assert thicker is not None
    assert thicker.room.flute_area < needed <= design.prediction.room.flute_area
    assert thicker.room.flute_area > 0.96 * needed
    # The chips foreseen, tooth by tooth, are within some per cent of it.
    assert design.prediction.room.ratio == pytest.approx(1.5, rel=0.03)
    # as far as the usual core, which the strength of coarse threads asks for
    usual = designed("M64x2", "flutes.cutter_diameter=6", "flutes.count=6")
    assert usual.tap.flutes.core_diameter == pytest.approx(32, abs=1e-9)


def test_cutters_on_hand_ask_for_more_flutes_before_larger_ones() -> None:
    design = designed("M64x1", "shop.cutters=[6, 8, 10, 12]")
    flutes = design.tap.flutes
    assert (flutes.cutter_diameter, flutes.count) == (12, 10)
    assert share(design) <= 0.4


def test_a_core_and_a_depth_that_are_given_stand() -> None:
    assert designed("M64x1", "flutes.core_diameter=40").tap.flutes.core_diameter == (
        pytest.approx(40)
    )
    deep = designed("M64x1", "flutes.depth_from_top=12")
    assert deep.figures.depth_from_top == pytest.approx(12)


def test_a_neck_carries_the_flutes_where_the_shank_is_thinner_than_the_web() -> None:
    # 22.4 mm of shank against a web of 46.5; the root of M64x1 lies at 62.76
    blank = designed("M64x1").tap.blank
    assert (blank.shank_diameter, blank.neck_diameter) == (22.4, 62.6)
    # from 1 mm behind the thread the ball of 8 mm leaves the neck, 31.3 mm
    section = section_of(designed("M64x1").tap.flutes)
    leaving = math.sqrt(8**2 - max(0.0, section.centre_distance - 31.3) ** 2)
    assert blank.neck_length == math.ceil(2 * (1 + leaving + 0.5)) / 2
    assert reason(designed("M64x1"), "blank.neck_diameter") == "neck-behind-web"
    assert designed("M48x1.5").tap.blank.neck_length == 0


def test_the_front_centre_is_no_larger_than_that_of_a_coarse_thread() -> None:
    for designation, rim in (("M64x1", 16.0), ("M100x1", 25.0)):
        assert designed(designation).tap.blank.front_centre == rim


def test_so_fine_a_thread_has_no_more_flutes_than_chips() -> None:
    # At ten flutes two pitches of chamfer would leave chips below a thirtieth of 0.25 mm.
    design = designed("M90x0.25")
    assert design.tap.flutes.count == 8
    assert "chip-thin" not in {found.code for found in design.findings}


def test_a_sample_of_the_listed_sizes_that_is_large_and_fine_obeys() -> None:
    every = in_part([*listed_designations()], 3, 17)
    fine = [
        d for d in map(designed, every) if reason(d, "flutes.core_diameter") == "core-of-shallow"
    ]
    assert len(fine) > 40
    for design in fine:
        thread, flutes, blank = design.tap.thread, design.tap.flutes, design.tap.blank
        assert blank.thread_length - design.tap.chamfer_length >= 0.48 * thread.major, design.name
        assert blank.thread_length < 1.2 * thread.major + design.tap.chamfer_length, design.name
        assert not on_ball(section_of(flutes), design.drill / 2), design.name
        assert design.prediction is not None, design.name
        usual = 0.46 * thread.major > flutes.core_diameter
        assert design.prediction.room.ratio > 1.45 or usual, design.name
        assert flutes.core_diameter > 0.45 * thread.major, design.name


@pytest.mark.parametrize("designation", ["M64x1", "M125x2", "M160x3", "M200x3", "5-12 UN"])
def test_the_file_that_new_writes_gives_the_same_tap(designation: str) -> None:
    design = designed(designation)
    cutters = ", ".join(map(repr, design.numbers("shop.cutters")))
    count = f"flutes.count={design.tap.flutes.count}"
    sets = (count, "flutes.land_share=0.35", "flutes.rake=8", f"shop.cutters=[{cutters}]")
    assert designed(designation, *sets).tap == design.tap
