"""Which broken rules leave no solid, at both sides of where it ends."""

import pytest

from tapmodel.designing.settle import settle
from tapmodel.findings import NoSolid
from tapmodel.spec.job_file import job_for

# What can be built although the rule is broken, and what cannot; each beside the other.
BOTH_SIDES = [
    ("crest-flat", ["thread.major=18.195"], ["thread.major=18.22"]),
    ("front-centre", ["blank.front_centre=8.0"], ["blank.front_centre=8.2"]),
    ("rear-centre", ["blank.rear_centre=11"], ["blank.rear_centre=12.7"]),
    ("rear-chamfer", ["blank.rear_chamfer=4"], ["blank.rear_chamfer=7.1"]),
    ("runout-square", ["flutes.full_depth_length=92"], ["flutes.full_depth_length=96"]),
    ("flute-length", ["flutes.full_depth_length=37.05"], ["flutes.full_depth_length=36.9"]),
    ("core-behind", ["blank.shank_diameter=8.2"], ["blank.shank_diameter=8.0"]),
    ("chamfer-angle", ["chamfer.length=0.3"], ["chamfer.point_diameter=18.07"]),
    ("overall-length", ["blank.overall_length=54"], ["blank.overall_length=50.9"]),
    (
        "flute-neighbours",
        ["flutes.count=6", "flutes.cutter_diameter=8"],
        ["flutes.count=6", "flutes.cutter_diameter=9.1"],
    ),
]
NEVER = [
    ("step-root", ["blank.shank_diameter=17.0707", "blank.neck_diameter=0"]),
    ("square-flats", ["blank.square_across_flats=14"]),
    ("square-length", ["blank.square_start=112"]),
    ("relief-arc", ["flutes.count=6", "relief.thread.heel_drop=0.54"]),
    ("point-core", ["chamfer.point_diameter=8.1", "chamfer.length=6"]),
    ("point-slim", ["chamfer.angle=40", "chamfer.length=12"]),
    ("crest-drop", ["relief.thread.kind=eccentric", "relief.thread.edge_angle=10"]),
]


def reason(code: str, sets: list[str]) -> NoSolid | None:
    findings = settle(job_for("M18x0.75", ["thread.tap_class=2", *sets])).findings
    return next(finding.no_solid for finding in findings if finding.code == code)


@pytest.mark.parametrize(("code", "solid", "none"), BOTH_SIDES)
def test_a_breach_leaves_a_solid_up_to_where_a_surface_ends(
    code: str, solid: list[str], none: list[str]
) -> None:
    assert reason(code, solid) is None
    assert reason(code, none) is not None


@pytest.mark.parametrize(("code", "sets"), NEVER)
def test_some_breaches_leave_none(code: str, sets: list[str]) -> None:
    assert reason(code, sets) is not None
