"""Each rule fires on the value that breaks it, and each value it advises mends it."""

import re
from pathlib import Path

import pytest
from asked import settled_of
from cure_trials import judged_cures

from tapmodel.designing.codes import Code
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules import flutes as rules_flutes
from tapmodel.report.words.findings import what
from tapmodel.report.words.limits import allowed
from tapmodel.spec.job_file import apply_sets
from tapmodel.words import Severity

GROUND = ("thread.tap_class=2",)
"""Of the tap on which all of this stands: its sizes were worked out by hand."""

BREAKING = [
    ("crest-flat", "error", ["thread.major=18.195"]),
    ("root-flat", "error", ["thread.root_flat=0.01"]),
    ("root-clearance", "error", ["thread.root_flat=0.17"]),
    ("pitch-size", "error", ["thread.pitch_diameter=17.7"]),
    ("pitch-size", "error", ["thread.pitch_diameter=17.5", "thread.major=18.05"]),
    ("major-size", "error", ["thread.major=18.03"]),
    ("chamfer-length", "error", ["chamfer.length=20", "blank.thread_length=20.5"]),
    ("point-drill", "error", ["chamfer.point_diameter=17.3"]),
    ("point-core", "error", ["chamfer.point_diameter=8.7", "chamfer.length=6"]),
    ("chip-thin", "warning", ["chamfer.pitches=14"]),
    ("chamfer-blind", "warning", ["hole.kind=blind", "hole.depth=2.9"]),
    ("engagement-wish", "warning", ["hole.engagement=70"]),
    (
        "rake-at-wall",
        "warning",
        ["flutes.rake=2", "flutes.cutter_diameter=8", "flutes.core_diameter=11.2"],
    ),
    ("land-rubs", "warning", ["flutes.cutter_diameter=3"]),
    ("land-wish", "warning", ["flutes.land_share=0.2", "shop.cutters=[6]"]),
    ("core", "error", ["flutes.core_diameter=2.5", "flutes.count=2", "flutes.cutter_diameter=5"]),
    ("core-root", "error", ["flutes.core_diameter=16.9"]),
    ("flute-neighbours", "error", ["flutes.count=6", "flutes.cutter_diameter=8"]),
    ("land-root", "error", ["flutes.count=6", "flutes.cutter_diameter=8.5"]),
    ("land-crest", "error", ["flutes.count=6", "flutes.cutter_diameter=8.5"]),
    (
        "flute-wish",
        "error",
        ["flutes.cutter_diameter=12", "flutes.core_diameter=10", "flutes.count=3"],
    ),
    ("flute-length", "error", ["flutes.full_depth_length=30"]),
    ("step-root", "error", ["blank.shank_diameter=17.0707", "blank.neck_diameter=0"]),
    ("runout-square", "error", ["flutes.full_depth_length=92"]),
    ("core-behind", "error", ["blank.shank_diameter=8.2"]),
    # thinner than the web of 8.1 mm: the cutter passes over the neck without touching it
    ("core-behind", "error", ["blank.shank_diameter=6"]),
    (
        "runout-shoulder",
        "error",
        [
            *("blank.neck_diameter=10", "blank.neck_length=3.8"),
            *("blank.shoulder_angle=75", "blank.shank_diameter=17.9"),
        ],
    ),
    ("relief-margin", "error", ["relief.thread.margin_angle=0"]),
    ("relief-arc", "error", ["flutes.count=6", "relief.thread.heel_drop=0.54"]),
    ("crest-drop", "error", ["relief.thread.kind=eccentric", "relief.thread.edge_angle=10"]),
    ("crest-drop", "error", ["relief.thread.heel_drop=0.6"]),
    (
        "thread-drop",
        "error",
        ["relief.thread.applies_to=thread", "relief.thread.heel_drop=2", "flutes.core_diameter=14"],
    ),
    ("chamfer-rubs", "warning", ["relief.chamfer.heel_drop=0.005mm"]),
    ("neck-hole", "warning", ["blank.neck_diameter=17.3", "blank.neck_length=3"]),
    ("shank-hole", "error", ["blank.shank_must_pass=true", "blank.shank_diameter=17.5"]),
    ("square-flats", "error", ["blank.square_across_flats=14"]),
    ("square-corners", "warning", ["blank.square_across_flats=9"]),
    ("overall-length", "error", ["blank.overall_length=54"]),
    ("front-centre", "error", ["blank.front_centre=8"]),
    ("front-centre-size", "error", ["blank.front_centre=1e-4"]),
    ("rear-centre-size", "error", ["blank.rear_centre=1e-4"]),
    ("rear-chamfer-size", "error", ["blank.rear_chamfer=1e-5"]),
    ("neck-length-size", "error", ["blank.neck_length=1e-6"]),
    ("cutter-size", "error", ["flutes.cutter_diameter=0.01"]),
    ("square-slim", "error", ["blank.square_across_flats=3"]),
    ("square-length", "error", ["blank.square_start=112"]),
    ("point-slim", "error", ["chamfer.angle=40", "chamfer.length=10"]),
    ("back-taper", "warning", ["thread.back_taper=0.21"]),
    ("drill-size", "error", ["hole.drill=17.9"]),
    ("drill-size", "error", ["hole.drill=17.06"]),
    ("drill-size", "warning", ["hole.drill=17.09"]),
    ("drill-size", "warning", ["hole.drill=17.4"]),
    ("pitch-size", "warning", ["thread.pitch_diameter=17.6"]),
    ("chamfer-rubs", "warning", ["relief.chamfer.kind=concentric"]),
    ("chamfer-angle", "error", ["chamfer.length=0.3"]),
    ("chamfer-angle", "error", ["chamfer.length=27"]),
    ("rake", "error", ["flutes.rake=25.1"]),
    ("rake", "error", ["flutes.rake=-20.1", "flutes.core_diameter=10"]),
    ("relief-rises", "warning", ["flutes.count=2", "flutes.cutter_diameter=5"]),
    ("rear-centre", "error", ["blank.rear_centre=11"]),
    ("rear-chamfer", "error", ["blank.rear_chamfer=4"]),
]
# Values just inside the limit, found by hand.
MENDED_OTHERWISE = [
    ("chamfer-angle", "error", ["chamfer.length=0.3"], ["chamfer.length=0.39"]),
    ("chamfer-angle", "error", ["chamfer.length=27"], ["chamfer.length=26"]),
    ("rake", "error", ["flutes.rake=25.1"], ["flutes.rake=25"]),
    ("rake", "error", ["flutes.rake=-20.1", "flutes.core_diameter=10"], ["flutes.rake=-20"]),
    ("drill-size", "warning", ["hole.drill=17.4"], ["hole.drill=17.37"]),
    ("chamfer-rubs", "warning", ["relief.chamfer.margin_angle=5"], ["relief.chamfer.edge_angle=4"]),
    (
        "chamfer-rubs",
        "warning",
        ["relief.chamfer.kind=concentric"],
        ["relief.chamfer.kind=eccentric"],
    ),
    ("centred-flutes", "note", ["flutes.offset=0"], ["flutes.rake=8"]),
    (
        "edge-on-ball",
        "warning",
        ["flutes.offset=0", "flutes.depth_from_top=2.2", "flutes.cutter_diameter=8"],
        ["flutes.depth_from_top=4"],
    ),
    ("shank-hole", "note", ["blank.shank_diameter=17.5"], ["blank.shank_diameter=17.1"]),
    ("square-length", "error", ["blank.square_start=112"], ["blank.square_start=100"]),
    (
        "cutter-at-hand",
        "note",
        ["flutes.cutter_diameter=7", "shop.cutters=[6, 8]"],
        ["flutes.cutter_diameter=6"],
    ),
    (
        "steel-at-hand",
        "note",
        ["tap.material=O1", "shop.steels=[D2, W1]"],
        ["tap.material=W1"],
    ),
    # W1 is hardened from 1400 F, which is 760 deg C
    (
        "furnace-cold",
        "warning",
        ["tap.material=W1", "shop.furnace=759.9"],
        ["shop.furnace=760"],
    ),
    (
        "relief-rises",
        "warning",
        ["flutes.count=2", "flutes.cutter_diameter=5"],
        ["relief.chamfer.kind=con-eccentric"],
    ),
]


def designed(sets: list[str]) -> TapDesign:
    return settled_of("M18x0.75", [*GROUND, *sets])


def found(sets: list[str]) -> dict[str, Severity]:
    """Severity by code of everything that a ground M18x0.75 with `sets` brings up."""
    return {f.code: f.severity for f in designed(sets).findings}


@pytest.mark.parametrize(("code", "severity", "sets"), BREAKING)
def test_the_rule_fires_and_every_cure_it_offers_mends_it(
    code: str, severity: str, sets: list[str]
) -> None:
    assert found(sets).get(code) == severity
    table = apply_sets({"designation": "M18x0.75"}, [*GROUND, *sets])
    (tried,) = judged_cures(table, only=code)
    assert "cures" in tried.marks
    assert tried.wrong == []


@pytest.mark.parametrize(("code", "severity", "sets", "mended"), MENDED_OTHERWISE)
def test_the_rule_fires_at_its_limit_and_not_inside_it(
    code: str, severity: str, sets: list[str], mended: list[str]
) -> None:
    assert found(sets).get(code) == severity
    replaced = {text.split("=")[0] for text in mended}
    kept = [text for text in sets if text.split("=")[0] not in replaced]
    if code in {"centred-flutes", "chamfer-rubs"}:
        kept = []
    assert code not in found([*kept, *mended])


@pytest.mark.parametrize(
    ("code", "outside", "inside"),
    [
        ("crest-flat", "thread.major=18.1815", "thread.major=18.1812"),
        ("major-size", "thread.major=18.0447", "thread.major=18.0448"),
        ("core", "flutes.core_diameter=2.7089", "flutes.core_diameter=2.7092"),
        ("square-corners", "blank.square_across_flats=9.897", "blank.square_across_flats=9.899"),
        # 18 mm less the minor limits of 17.378 and 17.188 mm, of a depth of 1.0825 * 0.75 mm
        ("engagement-wish", "hole.engagement=76.60", "hole.engagement=76.62"),
        ("flute-length", "flutes.full_depth_length=37.099", "flutes.full_depth_length=37.1"),
        ("chamfer-angle", "chamfer.angle=50.01", "chamfer.angle=49.99"),
        ("chamfer-angle", "chamfer.angle=0.99", "chamfer.angle=1.01"),
        ("front-centre", "blank.front_centre=7.901", "blank.front_centre=7.899"),
    ],
)
def test_limits_stand_where_they_are_stated(code: str, outside: str, inside: str) -> None:
    roomy = ["flutes.count=2", "flutes.cutter_diameter=5"] if code == "core" else []
    assert code in found([outside, *roomy])
    assert code not in found([inside, *roomy])


TOO_FAR = [
    # a quarter of the pitch over the least major diameter, 12 + 2 x 0.25 + 0.06 mm
    ("major-large", "Tr12x3", ["thread.major=13.3101"], ["thread.major=13.31"]),
    # 0.6 of the pitch of 3 mm under 9 mm: 10.605 less 7.2 mm of groove, whose flat at the root is
    # 1.5 less 3.405 x tan 15 deg
    ("root-deep", "Tr12x3", ["thread.root_flat=0.587"], ["thread.root_flat=0.588"]),
    # usual hook of the groups of materials, in the table: brass 0 to 5, copper 10 to 18 deg
    (
        "rake-unusual",
        "M10",
        ["hole.material=brass", "flutes.rake=5.01"],
        ["hole.material=brass", "flutes.rake=5"],
    ),
    (
        "rake-unusual",
        "M10",
        ["hole.material=copper", "flutes.rake=9.99"],
        ["hole.material=copper", "flutes.rake=10"],
    ),
    # the straight wall lies a ball's radius beside the cutter's axis: there it passes the tap's
    (
        "edge-scrapes",
        "M10",
        ["flutes.cutter_diameter=7", "flutes.offset=-3.501"],
        ["flutes.cutter_diameter=7", "flutes.offset=-3.5"],
    ),
    # thread 24, neck 5.5, a cone of 30 deg from 8 to the 8.376 mm of the hole, less a chamfer of 6
    ("hole-reach", "M10", ["hole.depth=23.83"], ["hole.depth=23.82"]),
    # a shank that passes: up to the square at 99 less a chamfer of 24
    ("hole-reach", "Tr12x3", ["hole.depth=75.01"], ["hole.depth=75"]),
    # a chamfer of 6 and ten diameters of 10.07 mm
    ("thread-long", "M10", ["blank.thread_length=106.71"], ["blank.thread_length=106.7"]),
    # 30, 1.5 and 3 times the shank of 10, the crests of 10.07 and the flats of 8 mm
    ("overall-slender", "M10", ["blank.overall_length=300.01"], ["blank.overall_length=300"]),
    ("shank-stout", "M10", ["blank.shank_diameter=15.106"], ["blank.shank_diameter=15.105"]),
    ("square-long", "M10", ["blank.square_start=55.99"], ["blank.square_start=56"]),
    # 10 and 12 mm, whatever the size
    ("shank-stout", "M2", ["blank.shank_diameter=10.01"], ["blank.shank_diameter=10"]),
    ("square-long", "M2", ["blank.square_length=12.01"], ["blank.square_length=12"]),
]


@pytest.mark.parametrize(("code", "designation", "outside", "inside"), TOO_FAR)
def test_what_goes_too_far_is_warned_of_from_its_limit_on(
    code: str, designation: str, outside: list[str], inside: list[str]
) -> None:
    far, near = (settled_of(designation, sets) for sets in (outside, inside))
    assert {f.code: f.severity for f in far.findings}.get(code) == "warning"
    assert code not in {f.code for f in near.findings}
    (tried,) = judged_cures(apply_sets({"designation": designation}, outside), only=code)
    assert "cures" in tried.marks
    assert tried.wrong == []


def test_who_asks_for_a_rake_that_scrapes_gets_it() -> None:
    asked = settled_of("M10", ["flutes.rake=-10"])
    assert asked.figures.rake_crest == pytest.approx(-10)
    assert "edge-scrapes" not in {f.code for f in asked.findings}


@pytest.mark.parametrize(
    ("code", "sets", "text"),
    [
        # a quarter of the 14 mm shank between run-out and square, and between thread and square
        ("runout-square", ["flutes.full_depth_length=92"], "at most 94.5 mm"),
        ("overall-length", ["blank.overall_length=54"], "at least 40.5 mm"),
        # 4 % and 5 % of the major diameter of 18.06 mm
        (
            "flute-neighbours",
            ["flutes.count=6", "flutes.cutter_diameter=8"],
            "at least 0.7224 mm",
        ),
        ("land-root", ["flutes.count=6", "flutes.cutter_diameter=8.5"], "at least 0.903 mm"),
    ],
)
def test_what_is_allowed_is_written_beside(code: str, sets: list[str], text: str) -> None:
    findings = designed(sets).findings
    assert next(allowed(f) for f in findings if f.code == code) == text


def test_a_pitch_diameter_beyond_the_zone_but_inside_the_hole_is_a_warning() -> None:
    codes = found(["thread.pitch_diameter=17.6"])
    assert codes["pitch-size"] is Severity.WARNING


def test_every_rule_in_the_source_is_tested_here() -> None:
    folder = Path(rules_flutes.__file__).parent
    source = "".join(path.read_text() for path in folder.rglob("*.py") if path.stem != "solid")
    written = {str(Code[name]) for name in re.findall(r"Code\.([A-Z_]+)", source)}
    tested = {row[0] for row in (*BREAKING, *MENDED_OTHERWISE, *TOO_FAR)}
    assert {"unlisted-pair", "wear-reserve"} <= set(found([]))
    assert written - tested == {
        *("unlisted-pair", "wear-reserve"),
        "drill-between",  # in test_drill.py
        *("tap-overloaded", "torque-near", "chip-room"),  # in test_load.py, on weaker taps
        *("chip-thick", "chip-keen"),  # in test_lands_and_chips.py, on coarser and finer threads
        "beyond-scope",  # in test_fine.py
        "chamfer-slight",  # in test_rules_relief.py, on threads too low for the usual drop
        "relief-steep",  # in test_rules_relief.py, on a tap that shows it
    }


def test_findings_come_worst_first() -> None:
    severities = [
        f.severity.value
        for f in designed(["relief.chamfer.kind=concentric", "blank.rear_chamfer=4"]).findings
    ]
    order = ["error", "warning", "note"]
    assert severities == sorted(severities, key=order.index)
    assert set(severities) == set(order)


def test_a_concentric_chamfer_stands_proud_by_the_advance_times_the_slope() -> None:
    design = designed(["relief.chamfer.kind=concentric"])
    finding = next(f for f in design.findings if f.code == "chamfer-rubs")
    slope = (18.06 - 17.15) / 2 / 3.0
    rub = 0.75 * slope * design.figures.land_angle / 360
    assert f"its heel stands {rub:.4f} mm proud" in what(finding)
    assert allowed(finding) == f"at least {rub:.5g} mm"
