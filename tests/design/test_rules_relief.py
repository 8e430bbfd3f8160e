"""Relief over the whole land: it widens towards the web, and the drop with it."""

import dataclasses
import math

import numpy as np
import pytest
from asked import design_of

from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.reliefs.reach import Walls, lowest_nominal, meets_cleanly, spans
from tapmodel.designing.settle import settle
from tapmodel.findings import Bound
from tapmodel.report.words.limits import allowed
from tapmodel.shape.flute_section import FluteSection
from tapmodel.shape.relief import con_eccentric, drop, eccentric_by_edge
from tapmodel.shape.turned import Turned, second_cut, turned_lengths
from tapmodel.spec.job_file import checked, job_for
from tapmodel.words import ReliefPlace, Severity

CREST, THREAD, CHAMFER = ReliefPlace.CREST, ReliefPlace.THREAD, ReliefPlace.CHAMFER


def designed(*sets: str) -> TapDesign:
    return design_of("M18x0.75", sets)


SHALLOW = ("flutes.core_diameter=14.8", "flutes.cutter_diameter=2", "blank.shank_diameter=16.5")
"""A core so thick that the point comes near the web."""


def errors(design: TapDesign) -> dict[str, str]:
    return {f.code: allowed(f) for f in design.findings if f.severity is Severity.ERROR}


def heel_behind_edge(design: TapDesign, radius: float) -> float:
    """Angle behind the crest edge of a heel that lies on the ball's arc [deg]."""
    flutes, crest = design.tap.flutes, design.tap.thread.major / 2
    ball, centre = flutes.cutter_diameter / 2, complex(flutes.centre_radius, flutes.offset)
    face = math.asin((flutes.offset + ball) / crest)
    square = radius**2 + abs(centre) ** 2 - ball**2
    heel = math.atan2(centre.imag, centre.real) - math.acos(square / (2 * radius * abs(centre)))
    return 360 / flutes.count + math.degrees(heel - face)


def test_the_crest_may_drop_to_the_root_where_the_heel_meets_it() -> None:
    design = designed("relief.thread.kind=eccentric", "relief.thread.edge_angle=10")
    found = next(f for f in design.findings if f.code == "crest-drop")
    most = float(found.cures[0].settings[0].value)
    thread = design.tap.thread
    heel = heel_behind_edge(design, thread.minor / 2)
    relief = eccentric_by_edge(CREST, thread.major, most)
    fallen = float(drop(relief, thread.major, np.asarray(heel)))
    assert fallen == pytest.approx((thread.major - thread.minor) / 2, rel=5e-3)


def test_the_relieved_point_stays_above_the_web_at_its_own_heel() -> None:
    shallow = SHALLOW
    assert errors(designed(*shallow)) == {}
    steeper = designed(*shallow, "relief.chamfer.edge_angle=7")
    # at the crest's heel alone there would be room enough
    heel_drop = steeper.figures.chamfer_relief.heel_drop
    reached = steeper.tap.chamfer.point_diameter / 2 - heel_drop
    assert reached > steeper.tap.flutes.core_diameter / 2 + 0.1
    assert "point-core" in errors(steeper)
    assert errors(designed(*shallow, "relief.chamfer.edge_angle=6.97")) == {}


def test_where_no_point_would_enter_the_drilled_hole_the_relief_is_the_cure() -> None:
    shallow = SHALLOW
    steep = designed(*shallow, "relief.chamfer.edge_angle=8")
    found = next(f for f in steep.findings if f.code == "point-core")
    settings = [setting for cure in found.cures for setting in cure.settings]
    cure = next(s for s in settings if s.field == "relief.chamfer.edge_angle")
    assert cure.bound is Bound.AT_MOST
    assert 6.9 < float(cure.value) < 7
    assert errors(designed(*shallow, f"relief.chamfer.edge_angle={cure.text}")) == {}


@pytest.mark.parametrize("core", [14.8, 8.1])
def test_the_least_point_is_the_one_whose_relief_ends_on_the_web(core: float) -> None:
    relief = con_eccentric(CHAMFER, 18.0, 40.0, 10.0, 0.3)
    web = Walls(np.array([core / 2]), np.array([5.0]), np.array([50.0]))
    expected = core / 2 + float(drop(relief, 18.0, np.asarray(50.0)))
    assert lowest_nominal(relief, 18.0, web) == pytest.approx(expected, rel=1e-12)


def test_a_relief_deepest_in_the_middle_of_a_wide_land_counts_there() -> None:
    relief = eccentric_by_edge(CHAMFER, 20.0, 4.0)
    web = Walls(np.array([8.0]), np.array([0.0]), np.array([150.0]))
    # the near end of the arc is two offsets nearer than the far one; the edge lies between them
    deepest = 10 - (10 - 2 * 10 * math.sin(math.radians(2)))
    assert lowest_nominal(relief, 20.0, web) == pytest.approx(8.0 + deepest, abs=0.01)
    assert float(drop(relief, 20.0, np.asarray(150.0))) < 0.8 * deepest


def test_an_arc_spans_a_land_up_to_where_the_ray_touches_it() -> None:
    relief = con_eccentric(THREAD, 18.0, 20.0, 7.0, 0.5)
    radius = 9.0 - relief.arc_offset
    assert relief.arc_offset > radius
    touch = 7.0 + math.degrees(math.asin(radius / relief.arc_offset))
    for share, whole in ((0.95, True), (1.01, False)):
        wide = Walls(np.array([5.0, 9.0]), np.zeros(2), np.array([share * touch, 20.0]))
        assert spans(relief, 18.0, wide) is whole


@pytest.mark.parametrize(("lean", "clean"), [(29.0, True), (32.0, False)])
def test_a_wall_must_fall_more_steeply_than_the_relief(lean: float, clean: bool) -> None:
    # an edge angle of 45 deg falls 1 mm per mm; a wall that leans by 31 deg runs 0.6 mm per mm
    relief = eccentric_by_edge(CREST, 2000.0, 45.0)
    radii = np.linspace(999.0, 1000.0, 65)
    heel = np.degrees(np.tan(np.radians(lean)) * (1000.0 - radii) / 1000.0)
    land = Walls(radii, np.zeros_like(radii), heel)
    assert meets_cleanly(relief, 2000.0, land, 999.9) is clean


def test_a_relief_as_steep_as_the_flute_is_refused_with_its_cure() -> None:
    table = {
        "designation": "M2x0.29",
        "flutes": {"count": 2, "cutter_diameter": 0.3, "rake": -20},
        "blank": {"thread_length": 2.7},
    }
    steep = design_tap(checked({**table, "relief": {"chamfer": {"edge_angle": 14.12}}}))
    found = next(f for f in steep.findings if f.code == "relief-steep")
    cure = found.cures[0].settings[0]
    assert cure.field == "relief.chamfer.edge_angle"
    assert 4 < float(cure.value) < 14.12
    cured = {**table, "relief": {"chamfer": {"edge_angle": cure.value}}}
    assert errors(design_tap(checked(cured))) == {}


def test_cutter_that_leaves_the_neck_may_not_meet_the_shoulder() -> None:
    section = FluteSection(4.0, 0.0, 8.0)  # core radius 4, leaves a neck of radius 5 at 2.645 mm
    cone = 5 + 2.0 * math.tan(math.radians(70))
    for neck_end, again in ((32.64, False), (32.66, True), (34.0, False)):
        lengths = (
            Turned(0.0, 28.0, 9.0, 9.0),
            Turned(28.0, neck_end, 5.0, 5.0),
            Turned(neck_end, neck_end + 2, 5.0, cone),
            Turned(neck_end + 2, 80.0, cone, cone),
        )
        assert second_cut(section, 30.0, lengths) is again


def test_a_blank_too_short_for_its_shank_is_a_finding_not_a_crash() -> None:
    blank = dataclasses.replace(designed().tap.blank, overall_length=30.0, thread_length=37.0)
    assert turned_lengths(blank, 18.06)[-1].start == turned_lengths(blank, 18.06)[-1].end
    short = designed("blank.overall_length=20", "blank.square_length=4", "blank.shank_diameter=6")
    assert {"overall-length", "core-behind"} <= set(errors(short))


@pytest.mark.parametrize(
    ("designation", "sets", "angle"),
    [
        ("M64x1", ["flutes.count=8", "flutes.cutter_diameter=10"], 1.28),
        ("M80x0.75", ["flutes.count=4", "flutes.core_diameter=36"], 0.53),
    ],
)
def test_a_drop_cut_short_is_told_with_the_relief_that_it_leaves(
    designation: str, sets: list[str], angle: float
) -> None:
    design = settle(job_for(designation, sets))
    told = next(f for f in design.findings if f.code == "chamfer-slight")
    assert told.severity is Severity.NOTE
    assert told.actual == pytest.approx(angle, abs=0.006)
    thread = design.tap.thread
    height = (thread.major - thread.minor) / 2
    assert told.values.number("drop") == pytest.approx(height / 2, abs=1e-4)
    # Over so short a land the arc falls nearly as a straight line does.
    assert told.values.number("drop") == pytest.approx(
        told.values.number("land") * math.tan(math.radians(angle)), rel=0.1
    )


@pytest.mark.parametrize(
    "sets",
    [
        ["relief.chamfer.edge_angle=1"],
        ["relief.chamfer.heel_drop=0.2"],
        ["relief.chamfer.kind=concentric"],
    ],
)
def test_little_relief_that_was_asked_for_is_no_news(sets: list[str]) -> None:
    found = settle(job_for("M80x0.75", ["flutes.count=4", *sets])).findings
    assert "chamfer-slight" not in {f.code for f in found}


def test_no_usual_thread_is_told_of_slight_relief() -> None:
    coarse = (
        "M3",
        "M10",
        "M24",
        "M64",
        "M64x4",
        "1/4-20 UNC",
        "1-12",
        "3/8 BSW",
        "G 1/2",
        "Tr36x6",
    )
    told = {
        text
        for text in coarse
        if "chamfer-slight" in {f.code for f in settle(job_for(text)).findings}
    }
    assert told == set()
