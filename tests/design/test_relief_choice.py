"""Reliefs as chosen: kinds, defaults, what the chamfer needs."""

import math

import numpy as np
import pytest
from asked import settled_of
from cure_trials import judged_cures
from refusals import refused

from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.errors import NoTapError
from tapmodel.prediction.rubbing.need import chamfer_rub, needed_drop
from tapmodel.report.words.limits import actual
from tapmodel.shape.relief import drop
from tapmodel.spec.job_file import apply_sets, job_for
from tapmodel.words import ReliefKind, ReliefPlace

GROUND = "thread.tap_class=2"
"""Of the tap on which all of this stands: its major diameter is 18.06 mm by hand."""


def designed(*sets: str) -> TapDesign:
    return settled_of("M18x0.75", (GROUND, *sets))


def test_defaults() -> None:
    design = designed()
    (thread, of_thread), (chamfer, of_chamfer) = design.reliefs
    assert (thread.kind, thread.applies_to) == (ReliefKind.CON_ECCENTRIC, ReliefPlace.CREST)
    assert of_thread.heel_drop == pytest.approx(0.004 * 18)
    assert thread.margin_angle == pytest.approx(design.figures.land_angle / 3, abs=0.05)
    assert (chamfer.kind, chamfer.applies_to) == (ReliefKind.ECCENTRIC, ReliefPlace.CHAMFER)
    half_depth = (design.tap.thread.major - design.tap.thread.minor) / 4
    assert of_chamfer.heel_drop == pytest.approx(half_depth, abs=5e-5)


def test_a_narrow_land_gets_the_full_edge_angle_on_the_chamfer() -> None:
    relief = designed("flutes.count=8", "flutes.land_share=0.2").figures.chamfer_relief
    assert relief.edge_angle == pytest.approx(4.0, abs=1e-9)


@pytest.mark.parametrize("place", ["thread", "chamfer"])
@pytest.mark.parametrize(
    ("sets", "kind"),
    [
        (["edge_angle=3"], ReliefKind.ECCENTRIC),
        (["kind=eccentric", "heel_drop=0.05"], ReliefKind.ECCENTRIC),
        (["margin_angle=7.5", "heel_drop=0.05"], ReliefKind.CON_ECCENTRIC),
        (["kind=con-eccentric"], ReliefKind.CON_ECCENTRIC),
        (["kind=concentric"], ReliefKind.CONCENTRIC),
    ],
)
def test_what_is_asked_for_comes_out(place: str, sets: list[str], kind: ReliefKind) -> None:
    design = designed(*(f"relief.{place}.{text}" for text in sets))
    relief, figures = design.reliefs[place == "chamfer"]
    assert relief.kind is kind
    for text in sets:
        name, _, value = text.partition("=")
        if name != "kind":
            found = relief.margin_angle if name == "margin_angle" else getattr(figures, name)
            assert found == pytest.approx(float(value), abs=1e-9)
    heel = drop(relief, design.tap.thread.major, np.asarray(design.figures.land_angle))
    assert figures.heel_drop == pytest.approx(float(heel), abs=1e-12)


def test_relief_of_the_whole_thread_can_be_had() -> None:
    assert designed("relief.thread.applies_to=thread").tap.relief.thread.applies_to == "thread"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("relief.thread.margin_angle=35", r"margin_angle at most 30\.\d\d deg"),
        ("relief.chamfer.heel_drop=3.7", "No arc drops 3.7 mm"),
    ],
)
def test_what_no_arc_can_do_is_refused_with_the_limit(text: str, words: str) -> None:
    with refused(words):
        designed(text)


def test_the_advised_margin_and_drop_are_accepted() -> None:
    assert designed("relief.thread.margin_angle=33.9").tap.relief.thread.margin_angle == 33.9
    with pytest.raises(NoTapError) as refusal:
        designed("relief.chamfer.heel_drop=3.7")
    advised = refusal.value.finding.cures[0].settings[0].text
    assert designed(f"relief.chamfer.heel_drop={advised}").figures.chamfer_relief.heel_drop > 0.5


def test_an_arc_that_turns_back_before_its_heel_is_refused_with_cures_that_work() -> None:
    sets = ["relief.thread.margin_angle=33", "relief.thread.heel_drop=2"]
    with refused("turns back before it has reached its drop") as refusal:
        designed(*sets)
    finding = refusal.value.finding
    assert (finding.code, actual(finding)) == ("relief-arc", "2.0000 mm at the heel")
    (tried,) = judged_cures(apply_sets({"designation": "M18x0.75"}, [GROUND, *sets]))
    assert "cures" in tried.marks
    assert tried.wrong == []


@pytest.mark.parametrize("margin", [25.0, 29.0, 33.0])
def test_an_arc_turns_back_where_its_centre_stands_square_below_the_heel(margin: float) -> None:
    """With a degrees left behind the margin that is a drop of R (1 - tan(45 - a/2)).

    The centre lies o along the margin's radius, (R2 - r2) / 2 (R - r cos a), and the ray to the
    heel meets the circle there for the second time as long as r > o cos a.
    """
    land = designed().figures.land_angle
    most = 9.03 * (1 - math.tan(math.radians(45 - (land - margin) / 2)))
    for share, reached in ((0.99, True), (1.01, False)):
        drops = f"relief.thread.heel_drop={share * most}"
        job = job_for("M18x0.75", [GROUND, f"relief.thread.margin_angle={margin}", drops])
        if reached:
            relief = settle(job).figures.thread_relief
            assert relief.heel_drop == pytest.approx(share * most, abs=1e-9)
        else:
            with refused("turns back"):
                settle(job)


def test_the_chamfer_needs_the_advance_times_the_slope() -> None:
    design = designed()
    turn = needed_drop(design.tap.thread, design.tap.chamfer, 360.0)
    assert turn == pytest.approx(0.75 * (18.06 - 17.15) / 2 / 3.0, rel=1e-12)


def test_rub_is_the_worst_shortfall_over_the_land() -> None:
    margin = designed("relief.chamfer.margin_angle=10", "relief.chamfer.heel_drop=0.2")
    land = margin.figures.land_angle
    rub = chamfer_rub(margin.tap.thread, margin.tap.chamfer, margin.tap.relief.chamfer, land)
    at_margin = needed_drop(margin.tap.thread, margin.tap.chamfer, 10.0)
    assert at_margin <= rub < 1.05 * at_margin
    none = designed("relief.chamfer.kind=concentric")
    rub = chamfer_rub(none.tap.thread, none.tap.chamfer, none.tap.relief.chamfer, land)
    assert rub == pytest.approx(needed_drop(none.tap.thread, none.tap.chamfer, land), rel=1e-12)
    clear = designed()
    assert chamfer_rub(clear.tap.thread, clear.tap.chamfer, clear.tap.relief.chamfer, land) == 0


def test_the_edge_angle_is_the_slope_of_the_drop_at_the_edge() -> None:
    relief = designed("relief.chamfer.edge_angle=4").tap.relief.chamfer
    step = 1e-4
    slope = float(drop(relief, 18.06, np.asarray(step))) / (9.03 * math.radians(step))
    assert slope == pytest.approx(math.tan(math.radians(4)), rel=1e-4)
