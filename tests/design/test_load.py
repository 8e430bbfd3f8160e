"""What a tap has to bear in its hole: named where it is too much, with a cure that works."""

from dataclasses import replace

import pytest
from asked import design_of

from tapmodel.designing.cures.fix import cured
from tapmodel.designing.design import cured as advised
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.findings import Finding
from tapmodel.report.words.cures import advice
from tapmodel.report.words.findings import said
from tapmodel.spec.job_file import job_for

IN_C45 = ["hole.material=C45"]


def _found(design: TapDesign, code: str) -> Finding:
    (finding,) = (found for found in design.findings if found.code == code)
    return finding


def _codes(design: TapDesign) -> set[str]:
    return {finding.code for finding in design.findings}


@pytest.mark.parametrize("designation", ["Tr16x4", "Tr20x4", "Tr24x20(P5)", "1/2-10 Acme"])
def test_one_tap_is_not_enough_for_a_coarse_thread_in_steel(designation: str) -> None:
    design = settle(job_for(designation, IN_C45))
    finding = _found(design, "tap-overloaded")
    assert design.prediction is not None
    assert finding.actual == design.prediction.torque.band.likely
    assert finding.limit.high == design.prediction.strength.bears
    words = said(finding)
    assert "One tap is not enough" in words
    assert f"{design.prediction.strength.bears:.3g} N·m" in words


@pytest.mark.parametrize("designation", ["Tr16x4", "Tr20x4", "1/2-10 Acme"])
def test_brass_lets_one_tap_do(designation: str) -> None:
    assert "tap-overloaded" not in _codes(settle(job_for(designation, ["hole.material=brass"])))


@pytest.mark.parametrize("designation", ["M4", "M6", "M10", "M20", "M18x0.75", "1/2 BSW"])
def test_one_tap_is_enough_for_a_common_thread_in_steel(designation: str) -> None:
    design = settle(job_for(designation, IN_C45))
    assert "tap-overloaded" not in _codes(design)
    assert design.prediction is not None
    # the torque to stop at lies between what the tap takes and what breaks it
    low, high = design.prediction.torque.band.likely, design.prediction.strength.breaks.low
    assert low < design.prediction.strength.bears < high


def test_the_cure_of_an_overloaded_tap_works() -> None:
    finding = _found(design_of("Tr20x4", IN_C45), "tap-overloaded")
    assert finding.cures
    for cure in finding.cures:
        sets = [f"{each.field}={each.text}" for each in cure.settings]
        assert "tap-overloaded" not in _codes(settle(job_for("Tr20x4", [*IN_C45, *sets])))


def test_a_cure_says_what_it_worsens() -> None:
    finding = _found(design_of("Tr16x8(P4)", ["hole.drill=12.3"]), "tap-overloaded")
    eased, alone = finding.cures
    (worse,) = alone.worsens
    # 11.28 mm of land on a quarter of the circumference of 16.66 mm
    assert (worse.code, worse.severity) == ("land-rubs", "warning")
    assert worse.actual == pytest.approx(11.280, abs=5e-3)
    assert advice((alone,)).endswith(
        " mm (then the lands rub along 86% of the way from edge to edge and the tap may still take "
        "up to 132 N·m and is to be stopped at 119 N·m)"
    )
    # with flanks that are relieved too nothing rubs more, and it is named first
    assert eased.worsens == ()
    assert [setting.field for setting in eased.settings] == [
        "flutes.core_diameter",
        "relief.thread.applies_to",
    ]


def test_a_cure_that_worsens_nothing_says_nothing() -> None:
    finding = _found(design_of("Tr20x4"), "tap-overloaded")
    # A drill that mends it as well leaves no margin, so it is not named beside one that does.
    (cure,) = finding.cures
    assert (cure.worsens, cure.leaves) == ((), ())
    assert "then" not in advice(finding.cures)


MARGINS = (
    ("Tr16x4", ("hole.material=1.4301",)),
    ("Tr20x4", ("hole.material=C45",)),
    ("1-5 Acme", ("hole.material=C45",)),
    ("Tr30x6", ("hole.material=C45",)),
    ("1/2-10 Acme", ("hole.material=1.4301",)),
    ("M10", ("hole.material=1.4301", "flutes.core_diameter=2.5")),
    ("1/2-13 UNC", ("hole.material=C45", "flutes.core_diameter=3")),
)


@pytest.mark.parametrize(("designation", "sets"), MARGINS)
def test_a_cure_of_an_overloaded_tap_leaves_a_margin(
    designation: str, sets: tuple[str, ...]
) -> None:
    job = job_for(designation, sets)
    finding = _found(advised(settle(job), job, {"tap-overloaded"}), "tap-overloaded")
    assert finding.cures
    for cure in finding.cures:
        assert cure.leaves == ()
        mended = settle(cured(job, cure))
        assert {"tap-overloaded", "torque-near"} & _codes(mended) == set()
        assert mended.prediction is not None
        assert mended.prediction.torque.band.high <= mended.prediction.strength.bears
    # The nearest: with a core that is 1 % thinner it may come to its stop.
    core = finding.cures[0].settings[0]
    assert core.field == "flutes.core_diameter"
    thinner = replace(core, value=round(0.99 * float(core.value), 3))
    less = replace(finding.cures[0], settings=(thinner, *finding.cures[0].settings[1:]))
    assert {"tap-overloaded", "torque-near"} & _codes(settle(cured(job, less)))


def test_a_cure_without_a_margin_says_so_where_none_leaves_one() -> None:
    job = job_for("Tr16x8(P4)", IN_C45)
    finding = _found(advised(settle(job), job, {"tap-overloaded"}), "tap-overloaded")
    assert finding.cures
    for cure in finding.cures:
        (note,) = cure.leaves
        mended = settle(cured(job, cure))
        assert note == _found(mended, "torque-near")
        assert mended.prediction is not None
        most, stop = mended.prediction.torque.band.high, mended.prediction.strength.bears
        assert f"may still take up to {most:.3g} N·m and is to be stopped at {stop:.3g} N·m)" in (
            advice((cure,))
        )
    # A core that would leave one stands out of the point.
    for core in (10.5, 10.8, 11.1):
        sets = [*IN_C45, f"flutes.core_diameter={core}", "relief.thread.applies_to=thread"]
        assert "point-core" in _codes(settle(job_for("Tr16x8(P4)", sets)))


def test_a_thin_core_between_deep_centred_flutes_is_named() -> None:
    sets = ["flutes.offset=0", "flutes.core_diameter=2.4"]
    finding = _found(settle(job_for("M10", [*IN_C45, *sets])), "tap-overloaded")
    sound = settle(job_for("M10", IN_C45)).prediction
    assert sound is not None
    assert finding.limit.high is not None
    assert finding.limit.high < 0.5 * sound.strength.bears


def test_a_torque_that_may_come_near_is_a_note() -> None:
    design = settle(job_for("M3"))
    finding = _found(design, "torque-near")
    assert design.prediction is not None
    torque, stop = design.prediction.torque.band, design.prediction.strength.bears
    assert torque.likely < stop < torque.high == finding.actual


def test_flutes_that_do_not_hold_the_chips_are_told() -> None:
    blind = settle(job_for("M10", ["hole.kind=blind", "hole.depth=12"]))
    finding = _found(blind, "chip-room")
    assert blind.prediction is not None
    assert finding.actual == blind.prediction.room.blind < 12
    assert "12.0 mm deep" in said(finding)
    # none of the chips of so long a chamfer have room
    jammed = settle(job_for("Tr16x8(P4)", ["hole.kind=blind", "hole.depth=24"]))
    finding = _found(jammed, "chip-room")
    assert finding.actual < 8.0
    assert "less than one turn" in said(finding)
    # half of the chips of a through hole fall out of it
    held = settle(job_for("M10")).prediction
    assert held is not None
    depth = 2 * held.room.through
    for share, told in ((0.99, False), (1.01, True)):
        through = settle(job_for("M10", [f"hole.depth={share * depth:.6f}"]))
        assert ("chip-room" in _codes(through)) is told


def test_a_tap_that_breaks_a_rule_is_not_foretold() -> None:
    assert settle(job_for("M10", ["flutes.cutter_diameter=9"])).prediction is None
