"""The drill by wanted percentage and sets on hand: laws, refusals, findings."""

import dataclasses
import math

import pytest
from asked import design_of
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.designing.choose.drill import (
    drill_for,
    drills_inside,
    nearest_drill,
    neighbours,
    percentage_left,
    thread_percentage,
)
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError
from tapmodel.findings import Finding
from tapmodel.report.blocks import Length, Rows, Tool, Words
from tapmodel.report.chapters.tap.hole import chapter
from tapmodel.report.units import shown
from tapmodel.report.words.choices import why
from tapmodel.report.words.findings import what
from tapmodel.spec.job_file import job_for
from tapmodel.standards.drill_sets import DRILL_SETS, INCH_SETS, METRIC, inch_drills
from tapmodel.standards.families import FAMILIES
from tapmodel.standards.limits import HoleLimits
from tapmodel.words import Severity

FORMS = [rules.form for rules in FAMILIES.values()]
SETS = st.lists(st.sampled_from(DRILL_SETS), min_size=1, unique=True)


def hole(low: float, high: float) -> HoleLimits:
    return HoleLimits(high + 2, high + 1, high + 1.1, low, high)


def designed(thread: str, *sets: str) -> TapDesign:
    return design_of(thread, list(sets))


def reason(design: TapDesign) -> str:
    return next(why(choice) for choice in design.choices if choice.field == "hole.drill")


def size_finding(design: TapDesign) -> Finding | None:
    return next((f for f in design.findings if f.code.startswith("drill-")), None)


@given(st.floats(2, 60), st.floats(0.2, 6), st.floats(40, 100), st.sampled_from(FORMS))
def test_the_drill_for_a_percentage_leaves_it(
    diameter: float, pitch: float, engagement: float, form: object
):
    form = next(known for known in FORMS if known is form)
    drill = drill_for(engagement, diameter, pitch, form)
    left = thread_percentage(diameter, drill, pitch, form)
    assert left.of_engagement == pytest.approx(engagement, abs=1e-9)
    less = thread_percentage(diameter, drill + 0.01, pitch, form)
    assert less.of_engagement < left.of_engagement
    assert (left.of_full_thread is None) == (form.flank_angle != 30)
    if left.of_full_thread and less.of_full_thread:
        assert less.of_full_thread < left.of_full_thread < left.of_engagement


def test_the_full_depth_of_the_form_leaves_it_all():
    for form in FORMS:
        minor = 20 - form.minor_drop * 2
        assert thread_percentage(20, minor, 2, form).of_engagement == pytest.approx(100)
        assert thread_percentage(20, 20, 2, form).of_engagement == 0


@given(st.floats(0.5, 24), st.floats(0.01, 1), st.floats(-1, 1), st.sampled_from([0.5, 1.5]), SETS)
def test_the_chosen_drill_lies_inside_and_none_is_nearer(
    low: float, width: float, off: float, pitch: float, sets: list[str]
):
    limits, wanted = hole(low, low + width), low + off
    chosen = nearest_drill(wanted, pitch, limits, sets)
    assert low - 1e-3 <= chosen <= low + width + 1e-3
    for name in set(sets) & set(INCH_SETS):
        for drill in inch_drills(name):
            if low <= drill.diameter <= low + width:
                assert abs(chosen - wanted) <= abs(drill.diameter - wanted) + 1e-9


def test_equally_near_the_thicker_drill_is_taken():
    # 1/2 in (12.7 mm) and 33/64 in (13.096875 mm): half way between them
    middle = (12.7 + 13.096875) / 2
    assert nearest_drill(middle, 2, hole(12, 14), ["fraction"]) == 13.096875
    assert nearest_drill(middle - 0.01, 2, hole(12, 14), ["fraction"]) == 12.7


def test_the_nearest_of_several_sets():
    limits = hole(4.978, 5.258)  # 1/4-20 UNC-2B
    assert nearest_drill(5.08, 1.27, limits, [METRIC]) == 5.1
    assert nearest_drill(5.105, 1.27, limits, DRILL_SETS) == 5.1054
    assert nearest_drill(5.16, 1.27, limits, DRILL_SETS) == 5.159375
    assert set(drills_inside(5.08, 1.27, limits, INCH_SETS)) == {
        4.9784,
        5.159375,
        5.0546,
        5.1054,
        5.1816,
        5.2197,
    }


def test_neighbours_are_those_of_all_sets_together():
    below, above = neighbours(hole(5.11, 5.15), ["fraction", "number"])
    assert below is not None
    assert above is not None
    assert (below.name, above.name) == ("#7", "13/64")
    assert neighbours(hole(60, 61), ["fraction"])[1] is None


@pytest.mark.parametrize(
    ("thread", "engagement", "drill"),
    [("M8", 82, 6.9), ("M8", 95, 6.7), ("M18x0.75", 80, 17.35), ("M10", 85, 8.6)],
)
def test_a_wanted_engagement(thread: str, engagement: float, drill: float):
    # by hand: M8 82 %: 8 - 0.82*1.353165 = 6.890; M10 85 %: 10 - 0.85*1.623798 = 8.620
    design = designed(thread, f"hole.engagement={engagement}")
    assert design.drill == drill
    assert f"for {engagement} % of the basic depth of engagement" in reason(design)
    assert "beyond" not in reason(design)
    assert percentage_left(design).of_engagement == pytest.approx(engagement, abs=2.5)
    assert size_finding(design) is None


def test_beyond_the_limits_the_nearest_inside_is_taken_and_the_reason_says_so():
    design = designed("M8", "hole.engagement=60")  # 7.188 mm, the limit of 6H is 6.912
    assert design.drill == 6.9
    assert "7.188 mm for 60 % of the basic depth of engagement" in reason(design)
    # (8 - 6.912) and (8 - 6.647) over 1.353165
    assert "beyond the 80.4 to 100.0 % that the minor limits allow" in reason(design)


@pytest.mark.parametrize(
    ("thread", "sets", "drill", "words"),
    [
        ("1/4-20 UNC", '["number"]', 5.1054, "of the number drills: #7"),
        ("5/16-18 UNC", '["letter", "number"]', 6.5278, "of the number, letter drills: F"),
        ("M8", '["fraction", "metric"]', 6.746875, "of the metric, fraction drills: 17/64"),
        ("M8", '["metric"]', 6.8, "on the next step of 0.1 mm"),
    ],
)
def test_the_sets_on_hand_decide(thread: str, sets: str, drill: float, words: str):
    design = designed(thread, f"shop.drills={sets}")
    assert design.drill == drill
    assert words in reason(design)
    assert next(choice for choice in design.choices if choice.field == "shop.drills").given


def test_metric_drills_alone_are_the_rule():
    assert dataclasses.replace(designed("M8"), choices=()) == dataclasses.replace(
        designed("M8", 'shop.drills=["metric"]'), choices=()
    )


def test_without_a_drill_inside_the_limits_the_next_ones_are_named():
    design = designed("M18x0.75", 'shop.drills=["fraction"]')
    assert design.drill == 17.25
    assert design.bored
    assert reason(design).startswith("bore to 17.188 to 17.378 mm: no drill on hand lies inside")
    found = size_finding(design)
    assert found is not None
    assert found.severity is Severity.WARNING
    assert "43/64 (17.066 mm) is the next below, 11/16 (17.462 mm) is the next above" in what(found)
    assert "shop.drills" in what(found)
    beyond = size_finding(designed("M18x0.75", 'shop.drills=["letter"]'))
    assert beyond is not None
    assert "(Z (10.490 mm) is the next below)" in what(beyond)


@pytest.mark.parametrize(
    ("drill", "severity"),
    [
        (17.513, Severity.WARNING),
        (17.56, Severity.ERROR),
        (17.18, Severity.WARNING),
        (17.19, None),
        (17.378, None),
        (17.379, Severity.WARNING),
    ],
)
def test_a_drill_outside_the_limits(drill: float, severity: Severity | None):
    # the ground tap's pitch diameter is 17.5578 mm, the minor limits are 17.188 and 17.378 mm
    found = size_finding(designed("M18x0.75", "thread.tap_class=2", f"hole.drill={drill}"))
    assert (found and found.severity) == severity
    if severity is Severity.ERROR:
        assert found is not None
        assert "down to the tap's pitch line; set hole.drill to 17.25 mm" in what(found)


@pytest.mark.parametrize(
    ("thread", "sets", "told"),
    [
        ("3/8 BSF", [], "set hole.drill to 8.204 mm (letter P)."),
        ("3/8 BSF", ["shop.drills=[metric]"], "set hole.drill to 8.20 mm."),
        ("M34x1", ["shop.drills=[fraction]"], "set hole.drill to 32.941 mm (1 19/64)."),
        # none of the sixty-fourths lies between 29.459 and 29.599 mm: it is bored
        ("M30x0.5", ["shop.drills=[fraction]"], "set hole.drill to 29.50 mm."),
    ],
)
def test_instead_of_a_drill_outside_the_limits_one_is_named_that_is_sold(
    thread: str, sets: list[str], told: str
):
    found = size_finding(designed(thread, *sets, "hole.drill=5"))
    assert found is not None
    assert what(found).endswith(told)


def test_a_drill_that_contradicts_the_engagement_is_refused():
    with pytest.raises(InputError) as failure:
        designed("M8", "hole.drill=6.7", "hole.engagement=80")
    message = str(failure.value)
    assert "hole.drill together with hole.engagement" in message
    assert "6.7 and 80" in message
    assert "80 % asks for a drill of 6.9 mm here" in message
    assert "delete hole.drill or hole.engagement" in message
    assert designed("M8", "hole.drill=6.9", "hole.engagement=80").drill == 6.9


@pytest.mark.parametrize(
    ("override", "words"),
    [
        ("hole.engagement=39.9", ["hole.engagement", "39.9", "at least 40", "at most 100", "[%]"]),
        ("hole.engagement=100.1", ["hole.engagement", "100.1", "at most 100"]),
        ("hole.engagement=nan", ["hole.engagement", "nan"]),
        ("shop.drills=[]", ["shop.drills", "entries at least 1"]),
        (
            'shop.drills=["inch"]',
            ["shop.drills", "inch", '"metric", "fraction", "number", "letter"'],
        ),
    ],
)
def test_bad_values_are_refused_with_words(override: str, words: list[str]):
    with pytest.raises(InputError) as failure:
        job_for("M8", [override])
    for word in words:
        assert word in str(failure.value)


def rows(design: TapDesign) -> dict[str, object]:
    block, *_ = chapter(design).blocks
    assert isinstance(block, Rows)
    return {row.label: row.value for row in block.rows}


def test_the_sheet_names_the_drill_and_both_percentages():
    found = rows(designed("1/4-20 UNC", 'shop.drills=["number"]'))
    assert found["tap drill"] == Tool(5.1054, 3, ("#7",))
    assert shown(Tool(5.1054, 3, ("#7",))) == ("5.105 mm (#7)",)
    assert found["minor diameter, as drilled"] == Length(5.1054)
    # (0.2500 - 0.2010) x 20 / 1.299038 and / 1.082532
    assert found["percentage of thread, full depth 0.6495 P"] == Words("75.4 %")
    assert found["percentage of thread, engagement 5/8 H"] == Words("90.5 %")


def test_a_metric_drill_has_no_other_name_and_other_forms_one_percentage():
    found = rows(designed("Tr16x4"))
    assert found["tap drill"] == Tool(12.2, 2)
    assert found["percentage of thread, basic depth"] == Words("95.0 %")
    assert not any("5/8" in label for label in found)


@pytest.mark.parametrize(
    "thread",
    ["M8-6G", "M20xPh3P1.5", "M12-LH", "0-80", "1/4 BSW", "2 BA", "G 1/4", "Tr16x4", "1/2-10 Acme"],
)
def test_the_percentages_of_a_design_follow_from_its_designation(thread: str):
    left = percentage_left(designed(thread))
    assert 70 < left.of_engagement <= 100
    assert math.isfinite(left.of_full_thread or 0)


@pytest.mark.parametrize(
    ("designation", "wanted", "least", "most", "left"),
    [
        # BS 84 depth 0.640327 P: 2.03304 mm on diameter at 16 threads per inch
        ("3/8 BSW", 70, (9.525 - 7.98830) / 0.0203304, 99.95, (9.525 - 7.9375) / 0.0203304),
        # ISO 965-1: minor 62.917 to 63.153
        ("M64x1", 60, (64 - 63.153) / 0.010825318, (64 - 62.917) / 0.010825318, 78.52),
        ("M64x1", 100, None, None, None),
    ],
)
def test_a_wish_beyond_the_limits_is_told_with_what_the_hole_leaves(
    designation: str, wanted: float, least: float | None, most: float | None, left: float | None
) -> None:
    design = settle(job_for(designation, [f"hole.engagement={wanted}"]))
    told = [f for f in design.findings if f.code == "engagement-wish"]
    if least is None:
        assert told == []
        return
    (finding,) = told
    assert finding.severity is Severity.WARNING
    assert finding.actual == wanted
    assert finding.limit.low == pytest.approx(least, abs=0.01)
    assert finding.limit.high == pytest.approx(most, abs=0.01)
    assert finding.values.number("left") == pytest.approx(left, abs=0.01)


def test_no_wish_is_no_wish_cut_short() -> None:
    assert "engagement-wish" not in {f.code for f in settle(job_for("M64x1")).findings}


def test_only_sets_beyond_the_usual_make_a_warning_of_a_hole_that_must_be_bored() -> None:
    def severity(*sets: str) -> Severity:
        found = settle(job_for("M33x0.75", sets)).findings
        return next(f.severity for f in found if f.code == "drill-between")

    assert severity() is severity('shop.drills=["metric"]') is Severity.NOTE
    assert severity('shop.drills=["fraction"]') is Severity.WARNING
