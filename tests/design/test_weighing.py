"""What a tap will do in the hole decides what its rules choose, and weighs what they did not."""

import pytest
from asked import design_of

from tapmodel.designing.choice import Choice, RunnerUp
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.report.words.choices import why
from tapmodel.report.words.runners_up import runner_up_text
from tapmodel.shape.flute_section import rake, section_of
from tapmodel.spec.job_file import job_for
from tapmodel.spec.units import Unit
from tapmodel.standards.materials.work import work_materials


def _choice(design: TapDesign, field: str) -> Choice:
    choice = design.choice(field)
    assert choice is not None
    return choice


def _runner_up(design: TapDesign, field: str) -> RunnerUp:
    found = _choice(design, field).runner_up
    assert found is not None
    return found


def _codes(design: TapDesign) -> set[str]:
    return {finding.code for finding in design.findings}


@pytest.mark.parametrize("designation", ["M1.2x0.25", "M1.6x0.35", "3/32 BSW", "14 BA"])
def test_a_core_that_would_break_is_made_stronger(designation: str) -> None:
    design = settle(job_for(designation, []))
    assert "tap-overloaded" not in _codes(design)
    core = _choice(design, "flutes.core_diameter")
    assert core.rule is not None
    assert core.rule.code == "core-against-torque"
    usual = core.rule.values.number("usual")
    # No stronger than needed: the usual one breaks, and so does one halfway to the chosen one.
    for thinner in (usual, usual + 0.3 * (design.tap.flutes.core_diameter - usual)):
        sets = [f"flutes.core_diameter={thinner:.4f}"]
        assert "tap-overloaded" in _codes(settle(job_for(designation, sets)))


def test_a_core_that_is_given_stays() -> None:
    design = settle(job_for("M1.2x0.25", ["flutes.core_diameter=0.48"]))
    assert design.tap.flutes.core_diameter == pytest.approx(0.48)
    assert "tap-overloaded" in _codes(design)


@pytest.mark.parametrize("designation", ["Tr16x4", "M18xPh7.5P2.5"])
def test_the_work_of_a_deep_thread_is_shared_instead(designation: str) -> None:
    design = settle(job_for(designation, ["hole.material=C45"]))
    rule = _choice(design, "flutes.core_diameter").rule
    assert rule is not None
    assert rule.code != "core-against-torque"
    assert "tap-overloaded" in _codes(design)


@pytest.mark.parametrize(
    ("material", "wanted"),
    [("mild steel", 8.0), ("42CrMo4", 8.0), ("EN-GJL-250", 1.5), ("EN AW-6082", 15.0)],
)
def test_the_material_settles_the_rake(material: str, wanted: float) -> None:
    design = settle(job_for("M10", [f"hole.material={material}"]))
    assert _choice(design, "flutes.rake").value == wanted
    section, major = section_of(design.tap.flutes), design.tap.thread.major
    assert float(rake(section, major / 2)) == pytest.approx(wanted, abs=0.01)
    assert f"{wanted:g} deg" in why(_choice(design, "flutes.rake"))


def test_the_rake_lies_in_the_range_of_every_group() -> None:
    for material in work_materials():
        design = settle(job_for("M12", [f"hole.material={material.name}"]))
        low, high = material.group.rake
        assert low <= float(str(_choice(design, "flutes.rake").value)) <= high
        assert not design.errors


def test_a_material_of_thin_chips_gets_a_longer_chamfer() -> None:
    usual = settle(job_for("M24", []))
    tough = settle(job_for("M24", ["hole.material=C105U"]))
    assert 0.08 < usual.figures.chip_thickness < 0.12
    assert tough.figures.chip_thickness < 0.08
    assert tough.tap.chamfer_length > usual.tap.chamfer_length


def test_a_runner_up_is_what_designing_with_it_gives() -> None:
    design = design_of("M30x3", [])
    other = _runner_up(design, "flutes.count")
    tried = settle(job_for("M30x3", [f"flutes.count={other.value:g}"]))
    assert tried.prediction is not None
    assert design.prediction is not None
    assert other.weight.torque == tried.prediction.torque.band.likely
    assert other.weight.bears == tried.prediction.strength.bears
    assert other.chosen.torque == design.prediction.torque.band.likely
    assert other.weight.chip == tried.figures.chip_thickness
    more = other.weight.bears / other.chosen.bears - 1
    assert f"{more:.0%} more strength" in runner_up_text(other, Unit.NONE)


def test_what_would_be_found_against_a_runner_up_is_told() -> None:
    other = _runner_up(design_of("M10", []), "relief.chamfer.kind")
    assert other.value == "concentric"
    assert "chamfer-rubs" in other.raised
    assert "the chamfer binds" in runner_up_text(other, Unit.NONE)
    assert "found against it: chamfer-rubs" in runner_up_text(other, Unit.NONE)


def test_the_number_of_flutes_stays_where_another_value_is_weighed() -> None:
    design = design_of("M10", [])
    other = _runner_up(design, "flutes.core_diameter")
    sets = [f"flutes.core_diameter={other.value:g}", f"flutes.count={design.tap.flutes.count}"]
    tried = settle(job_for("M10", sets))
    assert tried.prediction is not None
    assert other.weight.bears == tried.prediction.strength.bears


def test_what_the_job_gives_has_no_runner_up() -> None:
    design = design_of("M10", ["flutes.count=4"])
    assert _choice(design, "flutes.count").runner_up is None
    assert _choice(design, "flutes.core_diameter").runner_up is not None
