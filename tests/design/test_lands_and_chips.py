"""Lands that rub and the chips of the chamfer: what the rules choose, and what they warn of."""

import math
import sys
from functools import cache
from pathlib import Path

import pytest
from cure_trials import judged_cures

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from listed_jobs import sampled
from sweeps import in_part

from tapmodel.designing.choose.cutters import (
    CUTTERS,
    INCH_CUTTERS,
    INCH_LARGE_CUTTERS,
    LARGE_CUTTERS,
    MICRO_CUTTERS,
)
from tapmodel.designing.choose.flutes import COUNTS
from tapmodel.designing.design import cured
from tapmodel.designing.limits.chips import chip_range
from tapmodel.designing.limits.flutes import land_width
from tapmodel.designing.limits.lands import LONGEST, most_rubbing
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.errors import NoTapError
from tapmodel.findings import Finding
from tapmodel.prediction.rubbing.width import rubbing_width
from tapmodel.report.words.choices import why
from tapmodel.shape.flute_section import rake, section_of
from tapmodel.spec.job_file import apply_sets, job_for
from tapmodel.standards.materials.groups import work_groups
from tapmodel.words import Severity

LARGE = 95.0
"""Major diameter [mm] from which lands between six or eight flutes are longer than 16 mm."""

TOO_COARSE = {
    # A core that bears the torque takes the flutes' depth, and leaves wider lands.
    *("0-80 UNF", "2-56 UNC", "3-48 UNC", "0.55 UNM", "1.10 UNM"),
    # So deep a thread leaves no room: larger cutters scrape at the wall of the hole, or they and
    # more flutes leave teeth taller than their feet are thick.
    *("0.30 UNM", "0.35 UNM", "0.40 UNM", "0.45 UNM", "0.50 UNM", "0.60 UNM", "0.70 UNM"),
    *("0.80 UNM", "0.90 UNM", "1.00 UNM", "16 BA", "15 BA", "14 BA", "M1x0.2", "M1x0.25"),
    *("M1.1x0.25", "M1.2x0.25", "M1.4x0.3", "M1.6x0.35", "M1.8x0.35", "M2x0.4", "1/16 BSW"),
    *("3/32 BSW", "3/16 BSW", "4-40 UNC", "6-32 UNC", "10-24 UNC"),
    *("1/4-16 ACME-2G", "5/16-14 ACME-2G", "5/8-8 ACME-2G", "Tr9x2", "Tr11x2", "Tr11x3", "Tr12x3"),
    *("Tr14x3", "Tr16x4", "Tr18x4", "Tr22x8", "Tr24x5", "Tr24x8", "Tr26x8", "Tr28x8"),
    *("Tr30x10", "Tr32x10", "Tr34x10", "Tr36x10", "Tr38x7", "Tr38x10", "Tr40x7", "Tr40x10"),
    *("Tr42x7", "Tr42x10", "Tr44x12", "Tr46x8", "Tr46x12", "Tr48x8", "Tr48x12", "Tr50x12"),
    *("Tr52x12", "Tr55x14", "Tr60x14", "Tr65x10", "Tr65x16", "Tr70x16", "Tr75x16", "Tr80x10"),
    *("Tr80x16", "Tr85x12", "Tr85x18", "Tr90x18"),
}
"""Single starts whose lands rub by default; relief of the flanks is what they need."""

TOO_DEEP = {
    # The longest chamfer of 16 pitches or 5 diameters still cuts thick chips: rough out first.
    *("Tr100x20", "Tr160x28", "Tr165x28", "Tr170x28", "Tr175x28", "Tr180x28", "Tr185x32"),
    *("Tr190x32", "Tr195x32", "Tr200x32", "Tr210x36", "Tr220x36", "Tr230x36", "Tr240x36"),
    *("Tr250x40", "Tr260x40", "Tr270x40", "Tr280x40", "Tr290x44", "Tr300x44"),
}
"""Single starts whose chamfer cuts chips above 0.12 mm by default."""


def designed(designation: str, *sets: str) -> TapDesign:
    return settle(job_for(designation, sets))


@cache
def listed() -> dict[str, TapDesign]:
    """A sample of the lists, in which every size stands that is named here."""
    return {text: designed(text) for text in sampled(TOO_COARSE | TOO_DEEP)}


def found(design: TapDesign, code: str) -> Finding | None:
    return next((finding for finding in design.findings if finding.code == code), None)


def warned(design: TapDesign, code: str) -> bool:
    finding = found(design, code)
    return finding is not None and finding.severity is Severity.WARNING


def share(design: TapDesign) -> float:
    flutes, major = design.tap.flutes, design.tap.thread.major
    return design.figures.land_width * flutes.count / (math.pi * major)


def plain(text: str, design: TapDesign) -> bool:
    return design.tap.thread.starts == 1 and design.tap.thread.hand.value == "right" and bool(text)


def test_lands_of_listed_sizes_rub_only_where_they_must() -> None:
    rubbing = {text: design for text, design in listed().items() if warned(design, "land-rubs")}
    small = {t for t, d in rubbing.items() if plain(t, d) and d.tap.thread.major < LARGE}
    assert small == TOO_COARSE
    large = {t for t, d in rubbing.items() if d.tap.thread.major >= LARGE}
    assert all(rubbing[text].figures.land_width > LONGEST for text in large)
    # Each is designed with every cutter that there is: of a sample, every ninth.
    for text in in_part([text for text in rubbing if text not in large], every=9):
        assert no_cutter_would_do(text, rubbing[text]), text


def no_cutter_would_do(text: str, design: TapDesign) -> bool:
    """Whether every larger cutter, and more flutes, leave an edge that scrapes or break a rule."""
    flutes = design.tap.flutes
    stocked = sorted({*MICRO_CUTTERS, *CUTTERS, *LARGE_CUTTERS})
    if flutes.cutter_diameter >= 2:
        stocked = [d for d in stocked if d in {*CUTTERS, *LARGE_CUTTERS}]
    tools = design.choice("shop.tools")
    if tools is not None and tools.value == "inch":
        stocked += [*INCH_CUTTERS, *INCH_LARGE_CUTTERS]
    larger = [d for d in stocked if flutes.cutter_diameter < d < design.tap.thread.major]
    for cutter in larger:
        if usable(text, f"flutes.cutter_diameter={cutter}", f"flutes.count={flutes.count}"):
            return False
    return not usable(text, f"flutes.count={COUNTS[COUNTS.index(flutes.count) + 1]}")


def usable(text: str, *sets: str) -> bool:
    """Whether such a tap has no lands that rub, and nothing worse in their stead."""
    try:
        design = designed(text, *sets)
    except NoTapError:
        return False
    return cuts_and_holds(design) and not warned(design, "land-rubs")


def cuts_and_holds(design: TapDesign) -> bool:
    """Whether the edge cuts down to the hole's wall, and no tooth is taller than its foot."""
    return design.rake_at_wall >= 0 and foot(design) >= 1 and not design.errors


def foot(design: TapDesign) -> float:
    """Width of the land at the root, in heights of the tooth."""
    thread, flutes = design.tap.thread, design.tap.flutes
    root = thread.minor / 2
    return land_width(section_of(flutes), flutes.count, root) / (thread.major / 2 - root)


def test_chamfers_of_listed_sizes_cut_chips_of_the_right_thickness() -> None:
    assert not any(found(design, "chip-thin") for design in listed().values())
    thick = {text: design for text, design in listed().items() if warned(design, "chip-thick")}
    assert {t for t, d in thick.items() if plain(t, d)} == TOO_DEEP
    for text, design in thick.items():
        thread, figures = design.tap.thread, design.figures
        longer = figures.chamfer_length + thread.lead
        assert longer > 5 * thread.major or figures.chamfer_leads >= 16 - 1e-9, text
        assert thread.flank_angle < 20, text  # trapezoidal and Acme


def test_core_and_rake_of_listed_sizes_are_as_wished() -> None:
    shares = {2: 0.35, 3: 0.40, 4: 0.45}
    for text, design in listed().items():
        core = design.choice("flutes.core_diameter")
        assert core is not None
        assert core.rule is not None
        assert design.tap.flutes.core_diameter == pytest.approx(core.value, abs=1e-9), text
        usual = shares.get(design.tap.flutes.count, 0.5)
        root = 0.75 * design.tap.thread.minor
        if core.rule.code == "core-against-torque":
            assert core.rule.values.number("times") > 1, text
            assert core.rule.values.number("usual") < core.value <= root + 1e-3, text
        elif core.rule.code == "core-of-root":
            assert core.value == pytest.approx(root, abs=1e-3), text
        elif core.rule.code == "core-of-shallow":  # held to its law in test_large_fine.py
            assert usual * 0.92 * design.tap.thread.major < core.value, text
        else:
            assert core.rule.values.number("share") == usual, text
            assert 0.92 * design.tap.thread.major < core.value / usual < design.tap.thread.major
        assert design.figures.rake_crest == pytest.approx(8, abs=1e-9), text
        assert design.rake_at_wall >= 0, text
        assert foot(design) >= 1, text


@pytest.mark.parametrize(
    ("designation", "cutter", "count"),
    [
        *(("M3", 2.0, 3), ("M5", 2.5, 4), ("M6", 4.0, 3), ("M8", 5.0, 3), ("M10", 7.0, 3)),
        ("M18x0.75", 8.0, 4),
    ],
)
def test_the_rake_counts_down_to_the_wall_of_the_drilled_hole(
    designation: str, cutter: float, count: int
) -> None:
    design = designed(designation)
    flutes = design.tap.flutes
    assert (flutes.cutter_diameter, flutes.count) == (cutter, count)
    assert 0.25 < share(design) <= 0.4
    wall = rake(section_of(flutes), design.drill / 2)
    assert design.rake_at_wall == pytest.approx(wall, abs=1e-12)
    assert wall >= 0


@pytest.mark.parametrize(
    ("designation", "cutter", "passed_over"),
    [("M8x1", 5.0, 6.0), ("M4", 1.8, 2.0), ("M11", 7.0, 8.0), ("3/8-24 UNF", 6.35, 7.14375)],
)
def test_of_cutters_with_good_lands_one_that_keeps_half_the_rake_goes_first(
    designation: str, cutter: float, passed_over: float
) -> None:
    design = designed(designation)
    count = f"flutes.count={design.tap.flutes.count}"
    nearer = designed(designation, f"flutes.cutter_diameter={passed_over}", count)
    assert design.tap.flutes.cutter_diameter == cutter
    assert not warned(design, "land-rubs")
    # The usual land is 0.35 of the spacing, the usual rake for mild steel 8 degrees.
    assert abs(share(nearer) - 0.35) < abs(share(design) - 0.35)
    assert nearer.rake_at_wall < 4 <= design.rake_at_wall
    # Where every land is too wide none is made wider.
    assert designed("M2").tap.flutes.cutter_diameter == 1.2


@pytest.mark.parametrize("designation", ["3/8 BSW", "3/8-16 UNC", "5/16-18 UNC", "7/16-14 UNC"])
def test_inch_taps_have_four_flutes_where_three_leave_next_to_no_rake(designation: str) -> None:
    design, three = designed(designation), designed(designation, "flutes.count=3")
    assert design.tap.flutes.count == 4
    # a quarter and a half of the 8 degrees at the crest
    assert three.rake_at_wall < 2
    assert design.rake_at_wall >= 4
    choice = design.choice("flutes.count")
    assert choice is not None
    assert choice.rule is not None
    assert choice.rule.code == "count-against-blunt-edge"
    assert f"only {three.rake_at_wall:.1f} deg" in why(choice)
    assert not any(f.severity is not Severity.NOTE for f in design.findings)
    # Metric ones of that size are usual with three.
    assert designed("M10").tap.flutes.count == 3


def test_the_root_may_lean_back_as_it_cuts_nothing() -> None:
    design = designed("M6")
    # sin(rake) = (r^2 - c^2 - 2 c b) / 2 r b with the core's radius c = 1.2 and the ball's b = 2
    assert math.sin(math.radians(design.rake_at_wall)) == pytest.approx(
        (2.5**2 - 1.2**2 - 2 * 1.2 * 2) / (2 * 2.5 * 2), abs=1e-12
    )
    assert design.figures.rake_root < -3


def land_share_by_hand(major: float, core: float, cutter: float, count: int) -> float:
    """Of flutes with a rake of 8 deg whose heel lies on the ball's arc.

    Seen from the radius parallel to the cutter's axis the edge stands 8 deg to one side, the
    ball's centre to the other, and beyond it the heel: where ball, centre's distance and the tap's
    radius close a triangle.
    """
    ball, radius = cutter / 2, major / 2
    centre = core / 2 + ball
    to_centre = math.asin((ball - radius * math.sin(math.radians(8))) / centre)
    cosine = (centre**2 + radius**2 - ball**2) / (2 * centre * radius)
    return 1 - (8 + math.degrees(to_centre + math.acos(cosine))) * count / 360


def test_three_flutes_of_m8_just_leave_lands_that_may_rub() -> None:
    # 8 + 0.2 x 0.160 of tolerance + 0.02 P, up to 8.06; the core 0.4 x 8. The flute takes
    # 8 + 28.226 + 35.805 of the 120 deg.
    by_hand = land_share_by_hand(8.06, 3.2, 5.0, 3)
    assert by_hand == pytest.approx(1 - 72.031 / 120, abs=1e-5)
    cut = designed("M8")
    assert (cut.tap.thread.major, cut.tap.flutes.count) == (8.06, 3)
    assert share(cut) == pytest.approx(by_hand, abs=1e-9)
    assert by_hand < 0.4
    # The major diameter of class 2 is 8 + 0.4 x 0.125 + 0.02 P, up to 8.08: four flutes.
    assert land_share_by_hand(8.08, 3.2, 5.0, 3) > 0.4
    ground = designed("M8", "thread.tap_class=2").tap
    assert (ground.thread.major, ground.flutes.count, ground.flutes.cutter_diameter) == (8.08, 4, 4)


def test_a_wide_land_asks_for_more_flutes_and_a_given_cutter_for_none() -> None:
    count = designed("M5").choice("flutes.count")
    assert count is not None
    assert count.rule is not None
    assert count.rule.code == "count-against-wide-lands"
    three = designed("M5", "flutes.count=3")
    assert three.tap.flutes.cutter_diameter == 3
    assert share(three) == pytest.approx(land_share_by_hand(5.05, 2.0, 3.0, 3), abs=1e-9)
    assert dict(count.rule.values)["share"] == pytest.approx(share(three), abs=1e-12)
    assert share(three) > 0.4
    assert designed("M5", "flutes.cutter_diameter=3").tap.flutes.count == 3


def test_the_limit_is_two_fifths_of_the_spacing_or_sixteen_millimetres() -> None:
    assert most_rubbing(18.0, 4) == pytest.approx(0.4 * math.pi * 18 / 4)
    assert most_rubbing(150.0, 6) == 16.0
    lands = [designed("M18x0.75", f"flutes.cutter_diameter={d}") for d in (7.9, 8.0)]
    assert [warned(design, "land-rubs") for design in lands] == [share(d) > 0.4 for d in lands]
    assert [warned(design, "land-rubs") for design in lands] == [True, False]


def test_only_the_margin_rubs_where_the_flanks_are_relieved() -> None:
    narrow = ["flutes.cutter_diameter=3", "relief.thread.applies_to=thread"]
    margin = [*narrow, "relief.thread.kind=con-eccentric", "relief.thread.margin_angle=30"]
    design = designed("M18x0.75", *margin)
    width = design.figures.land_width
    major = design.tap.thread.major
    relief = design.tap.relief.thread
    assert rubbing_width(relief, major, width) == pytest.approx(math.pi * major * 30 / 360)
    assert not warned(design, "land-rubs")
    clear = designed("M18x0.75", *narrow, "relief.thread.kind=eccentric")
    assert rubbing_width(clear.tap.relief.thread, major, width) == 0
    for sets in (narrow[:1], [*narrow, "relief.thread.kind=concentric"]):
        bare = designed("M18x0.75", *sets)
        assert rubbing_width(bare.tap.relief.thread, major, width) == width
        finding = found(bare, "land-rubs")
        assert finding is not None
        assert finding.actual == pytest.approx(bare.figures.land_width)


@pytest.mark.parametrize("starts", [2, 3, 4])
def test_the_chamfer_of_several_starts_counts_leads(starts: int) -> None:
    several = f"M20xPh{1.5 * starts:g}P1.5"
    for sets, leads in (([], 4), (["chamfer.form=taper"], 8), (["chamfer.pitches=3"], 3)):
        one, many = designed("M20x1.5", *sets), designed(several, *sets)
        assert many.figures.chamfer_length == pytest.approx(leads * starts * 1.5, abs=1e-9)
        assert many.figures.chamfer_leads == pytest.approx(leads, abs=1e-9)
        assert many.figures.chamfer_pitches == pytest.approx(leads * starts, abs=1e-9)
        # Teeth of its own cut each thread as one start is cut: with as many, and chips as thick.
        assert many.figures.chamfer_teeth == starts * one.figures.chamfer_teeth
        chips = many.figures.chip_thickness, one.figures.chip_thickness
        assert chips[0] == pytest.approx(chips[1], rel=0.02)


@pytest.mark.parametrize(("pitches", "thick"), [(2.9, True), (3.0, False)])
def test_chips_are_too_thick_above_an_eighth_of_a_millimetre(pitches: float, thick: bool) -> None:
    design = designed("M20", f"chamfer.pitches={pitches}")
    depth = (design.tap.thread.major - design.tap.chamfer.point_diameter) / 2
    chip = 2.5 / 4 * math.sin(math.atan(depth / (pitches * 2.5)))
    assert design.figures.chip_thickness == pytest.approx(chip, rel=1e-9)
    assert (chip > 0.12) is thick
    assert warned(design, "chip-thick") is thick


@pytest.mark.parametrize(("pitches", "thin"), [(15.0, True), (14.0, False)])
def test_chips_are_too_thin_below_a_hundredth(pitches: float, thin: bool) -> None:
    design = designed("M10", "flutes.count=6", f"chamfer.pitches={pitches}")
    assert (design.figures.chip_thickness < 0.01) is thin
    assert warned(design, "chip-thin") is thin


def test_a_fine_thread_is_measured_by_its_pitch() -> None:
    steel = work_groups()["low-carbon steel"]
    assert chip_range(steel, 0.6).least == 0.01
    assert chip_range(steel, 0.15).least == pytest.approx(0.005)
    for designation in ("M3x0.05", "M18x0.2", "M8x0.1"):
        design = designed(designation)
        chip = design.figures.chip_thickness
        assert chip < 0.01
        assert not warned(design, "chip-thin")
        assert (found(design, "chip-keen") is not None) is (chip < 0.005)
    keen = found(designed("M8x0.1"), "chip-keen")
    assert keen is not None
    assert keen.severity is Severity.NOTE
    assert keen.values.number("rounding") == pytest.approx(float(keen.actual) / 0.3)
    # Six flutes leave so fine a thread half the chip, so its chamfer is shorter.
    shorter = designed("M42x0.1")
    assert shorter.figures.chamfer_leads == pytest.approx(2)
    assert not warned(shorter, "chip-thin")


def test_a_bottoming_tap_follows_another_and_is_only_noted() -> None:
    finding = found(designed("M10", "chamfer.form=bottoming"), "chip-thick")
    assert finding is not None
    assert finding.severity is Severity.NOTE
    assert float(finding.actual) > work_groups()["low-carbon steel"].chip[1]


def test_thick_chips_ask_for_the_fewest_whole_pitches_more() -> None:
    design = designed("M64x6")
    assert design.figures.chamfer_leads == pytest.approx(5)
    assert warned(designed("M64x6", "chamfer.pitches=4"), "chip-thick")
    pitches = design.choice("chamfer.pitches")
    assert pitches is not None
    assert pitches.rule is not None
    assert pitches.rule.code == "leads-against-thick-chips"
    assert design.choice("chamfer.form") is None


def test_the_cone_of_several_starts_may_be_as_much_flatter() -> None:
    # a rise of 1 deg in a lead: tan 1 deg / 3 on three starts
    least = math.degrees(math.atan(math.tan(math.radians(1)) / 3))
    for angle, broken in ((0.99 * least, True), (1.01 * least, False)):
        sets = [f"chamfer.angle={angle}", "blank.thread_length=400", "blank.overall_length=600"]
        design = designed("M20xPh4.5P1.5", *sets)
        assert (found(design, "chamfer-angle") is not None) is broken


@pytest.mark.parametrize(
    ("designation", "sets", "code"),
    [
        ("M18x0.75", ["flutes.cutter_diameter=3"], "land-rubs"),
        ("M18x0.75", ["flutes.cutter_diameter=3", "relief.thread.kind=concentric"], "land-rubs"),
        ("1/2 BSW", ["flutes.cutter_diameter=4"], "land-rubs"),
        ("Tr16x4", [], "land-rubs"),
        ("Tr300x44", [], "chip-thick"),
        ("M20", ["chamfer.pitches=2.5"], "chip-thick"),
        ("M20", ["chamfer.angle=20", "chamfer.pitches=2.2"], "chip-thick"),
        ("M10", ["chamfer.pitches=25", "flutes.count=6"], "chip-thin"),
        ("M10", ["chamfer.angle=1.2", "flutes.count=6"], "chip-thin"),
    ],
)
def test_what_is_warned_of_is_cured(designation: str, sets: list[str], code: str) -> None:
    (tried,) = judged_cures(apply_sets({"designation": designation}, sets), code)
    assert "cures" in tried.marks
    assert tried.wrong == []


@pytest.mark.parametrize(
    ("designation", "sets", "cutter"),
    [
        ("M60x2", ["shop.cutters=[6, 8, 10, 12]"], 20),
        ("M18", ["shop.cutters=[3, 4]"], 8),
        # a shop in inches is told of inch sizes: 5/16 in
        ("0.7-26 Whit", ['shop.cutters=["1/8in", "3/16in"]'], 7.9375),
    ],
)
def test_a_cutter_that_can_be_bought_is_offered_where_those_on_hand_leave_wide_lands(
    designation: str, sets: list[str], cutter: float
) -> None:
    job = job_for(designation, sets)
    told = cured(settle(job), job, {"land-rubs"}).findings
    (rubs,) = (f for f in told if f.code == "land-rubs")
    offered = [cure.settings for cure in rubs.cures]
    (setting,) = next(each for each in offered if each[0].field == "flutes.cutter_diameter")
    assert float(setting.text) == setting.value == cutter
    mended = settle(job_for(designation, [*sets, f"flutes.cutter_diameter={setting.text}"]))
    assert [f.code for f in mended.findings if f.severity is not Severity.NOTE] == []


def test_an_edge_that_scrapes_at_the_wall_is_told_unless_it_was_asked_for() -> None:
    def told(*sets: str) -> list[Finding]:
        job = job_for("Tr16x8(P4)", sets)
        found = cured(settle(job), job, {"rake-at-wall"}).findings
        return [f for f in found if f.code == "rake-at-wall"]

    (finding,) = told("flutes.cutter_diameter=8")
    assert finding.severity is Severity.WARNING
    assert finding.actual == pytest.approx(-5.35, abs=0.01)
    assert told() == []
    assert told("flutes.cutter_diameter=8", "flutes.rake=-3") == []
    assert len(finding.cures) > 0
    for cure in finding.cures:
        sets = [f"{each.field}={each.text}" for each in cure.settings]
        mended = settle(job_for("Tr16x8(P4)", ["flutes.cutter_diameter=8", *sets]))
        assert mended.rake_at_wall >= 0
        left = {f.code for f in mended.findings if f.severity is not Severity.NOTE}
        assert left <= {"tap-overloaded"}  # so coarse a thread is too much for one tap in steel
