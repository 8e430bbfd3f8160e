"""Shanks that pass, centres in front, and how deep full thread goes: by hand."""

import math

import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length, Rows, hole_depth
from tapmodel.report.chapters.machines import turning
from tapmodel.report.chapters.tap import hole
from tapmodel.report.words.choices import why
from tapmodel.report.words.findings import what
from tapmodel.run.record.compose import design_record


def designed(designation: str, *sets: str) -> TapDesign:
    return settled_of(designation, sets)


def reason(design: TapDesign, field: str) -> str:
    choice = design.choice(field)
    assert choice is not None
    return why(choice)


@pytest.mark.parametrize(
    ("thread", "shank", "square"),
    [
        # preferred shanks of ISO 237 under the least minor diameter less 2 % or 0.2 mm
        ("Tr8x1.5", 6.3, 5.0),  # 6.5 - 0.13
        ("Tr10x2", 7.1, 5.6),  # 8.0 - 0.16; ISO 529 lists 10
        ("Tr12x3", 8.0, 6.3),  # 9.0 - 0.18; ISO 529 lists 9, which jams
        ("Tr20x4", 14.0, 11.2),  # 16.0 - 0.2: the listed one passes
        # listed shanks of ASME B94.9: 0.168 in under 4.763 mm - 0.095
        ("1/4-16 Acme", 4.2672, 3.3274),
        ("1/2-10 Acme", 9.3218, 6.985),
    ],
)
def test_the_shank_of_a_tap_for_nuts_passes_the_nut(
    thread: str, shank: float, square: float
) -> None:
    design = designed(thread)
    blank = design.tap.blank
    assert (blank.shank_diameter, blank.square_across_flats) == (shank, square)
    assert blank.shank_diameter < design.hole.minor_min - 0.09
    assert "shank-hole" not in {finding.code for finding in design.findings}
    assert design.full_thread_depth == blank.square_start - design.tap.chamfer_length


def test_no_shank_is_chosen_weaker_than_the_fluted_part() -> None:
    thick = designed("Tr12x3", "flutes.core_diameter=7")
    # 1.2 x 7 = 8.4 mm: no preferred shank lies between that and 8.82
    assert thick.tap.blank.shank_diameter == 8.8
    thicker = designed("Tr12x3", "flutes.core_diameter=7.5")
    assert thicker.tap.blank.shank_diameter == 9.0  # nothing suits: the listed one


def test_a_shank_that_must_pass_is_chosen_so() -> None:
    assert designed("M6").tap.blank.shank_diameter == 6.3
    passing = designed("M6", "blank.shank_must_pass=true")
    assert passing.tap.blank.shank_diameter == 4.5  # under 4.917 - 0.098
    assert not passing.errors
    assert "runs right through the nut" in reason(passing, "blank.shank_diameter")


@pytest.mark.parametrize(
    ("thread", "shank", "overall", "across"),
    [("1/4-20 UNC", 0.255, 2.5, 0.191), ("1-8 UNC", 0.8, 5.13, 0.6)],
)
def test_unified_taps_have_blanks_in_inch_sizes(
    thread: str, shank: float, overall: float, across: float
) -> None:
    design = designed(thread)
    blank = design.tap.blank
    found = (blank.shank_diameter, blank.overall_length, blank.square_across_flats)
    assert [mm / 25.4 for mm in found] == pytest.approx([shank, overall, across], abs=1e-6)
    chosen = design.choice("blank.shank_diameter")
    assert chosen is not None
    assert "p. 986" in str(chosen.source)


@pytest.mark.parametrize(
    ("thread", "shank", "overall", "across"),
    [
        ("1/4 BSW", 0.255, 2.5, 0.191),
        ("1/2 BSF", 0.367, 3.38, 0.275),
        ("3/16 BSW", 0.194, 2.38, 0.152),  # between No. 8 and No. 10: those of the larger
    ],
)
def test_whitworth_taps_have_the_inch_blanks_of_unified_ones(
    thread: str, shank: float, overall: float, across: float
) -> None:
    design = designed(thread)
    blank = design.tap.blank
    found = (blank.shank_diameter, blank.overall_length, blank.square_across_flats)
    assert [mm / 25.4 for mm in found] == pytest.approx([shank, overall, across], abs=1e-6)
    chosen = design.choice("blank.shank_diameter")
    assert chosen is not None
    assert chosen.source.document == "ASME B94.9"
    assert "blank of a Unified thread" in reason(design, "blank.shank_diameter")


def test_beyond_the_inch_list_and_for_ba_the_blank_is_metric() -> None:
    assert designed("2 BSW").tap.blank.shank_diameter == 31.5  # ISO 529: that of M48
    assert designed("0 BA").tap.blank.shank_diameter == 6.3  # ISO 529: M6


@pytest.mark.parametrize(
    ("thread", "sets", "rim"),
    [
        ("M8", [], 0.0),
        ("M10", [], 2.0),  # core 0.4 x 10
        ("M12", [], 2.7),  # core 0.45 x 12
        ("Tr12x3", [], 2.7),
        ("M64", [], 16.0),  # core 0.5 x 64
        ("M10", ["flutes.core_diameter=1.9"], 0.0),  # half of it is less than 1 mm
        ("M10", ["chamfer.point_diameter=3"], 1.5),
    ],
)
def test_the_front_centre_stays_within_web_and_point(
    thread: str, sets: list[str], rim: float
) -> None:
    design = designed(thread, *sets)
    assert design.tap.blank.front_centre == rim
    assert "front-centre" not in {finding.code for finding in design.findings}
    words = reason(design, "blank.front_centre")
    assert ("male point" in words) == (rim == 0)


def test_full_thread_ends_a_chamfer_before_the_front() -> None:
    # Full depth goes a pitch of 0.5 mm beyond the thread. From there the cutter of 2 mm, 0.6 + 1
    # off the axis, leaves the neck, 1.1, in sqrt(1 - 0.5^2) = 0.866 mm; with half a pitch that is
    # 1.616 mm of neck, up to the next 0.5 mm.
    m3 = designed("M3")
    assert m3.tap.blank.neck_length == 2.0
    # the cone from the neck, 2.2 mm, reaches the least hole, 2.459 mm, at 30 degrees
    cone = (2.459 - 2.2) / 2 * math.sqrt(3)
    assert m3.full_thread_depth == pytest.approx(11 + 2.0 + cone - 2)
    # without a neck the shank stops at the thread's end
    bare = designed("M3", "blank.neck_length=0")
    assert bare.full_thread_depth == 9.0
    # a neck thicker than the hole stops there, too
    assert designed("M3", "blank.neck_diameter=2.6").full_thread_depth == 9.0
    # all of it passes: down to the wrench on the square
    assert designed("M12").full_thread_depth == 89 - 10 - 7
    assert design_record(m3)["blank"]["full_thread_depth"] == m3.full_thread_depth
    rows, *_ = hole.chapter(m3).blocks
    assert isinstance(rows, Rows)
    depths = [row.value for row in rows.rows if row.label.startswith("deepest full")]
    assert depths == [hole_depth(m3.full_thread_depth)]
    (note,) = [finding for finding in m3.findings if finding.code == "shank-hole"]
    assert "full thread ends 11.2 mm deep at most" in what(note)


def test_a_cone_is_told_only_where_there_is_one() -> None:
    def labels(design: TapDesign) -> str:
        rows = turning.chapter(design).blocks[0]
        assert isinstance(rows, Rows)
        return "; ".join(row.label for row in rows.rows)

    necked = designed("M6")
    assert "cone up to the shank, to the axis" in labels(necked)
    assert necked.choice("blank.shoulder_angle") is not None
    down = designed("M18x0.75", "blank.neck_length=4", "blank.neck_diameter=15")
    assert "cone down to the shank, to the axis" in labels(down)
    for without in (designed("M18x0.75"), designed("M18x0.75", "blank.neck_length=5")):
        assert "cone" not in labels(without)
        assert without.choice("blank.shoulder_angle") is None


@pytest.mark.parametrize(
    ("thread", "drill"),
    # stock steps of 0.25 mm above 14 mm and 0.5 above 32
    [("M16x1.5", 14.5), ("M27x0.75", 26.25), ("1-8 UNC", 22.225), ("M36", 32.0), ("M52", 47.0)],
)
def test_thick_drills_come_in_stock_steps(thread: str, drill: float) -> None:
    design = designed(thread)
    assert (design.drill, design.bored) == (drill, False)


def test_where_no_stock_drill_suits_the_hole_is_bored_to_its_limits() -> None:
    design = designed("M33x0.75")
    assert (design.drill, design.bored) == (32.25, True)
    assert reason(design, "hole.drill").startswith("bore to 32.188 to 32.378 mm")
    (rows,) = hole.chapter(design).blocks
    assert isinstance(rows, Rows)
    first = rows.rows[0]
    assert (first.label, first.low, first.high) == (
        "bore or ream to",
        Length(design.hole.minor_min),
        Length(design.hole.minor_max),
    )
    # one inside the limits but 0.16 pitches from the aim is no substitute
    assert designed("G 1 1/2").bored
    # and a given drill is a drill
    assert not designed("M33x0.75", "hole.drill=32.25").bored
    assert reason(designed("M3x0.5", 'shop.drills=["letter"]'), "hole.drill").startswith("ream to")
