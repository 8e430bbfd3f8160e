"""What is tapped: settled with its reason, and nothing of the tap follows from it."""

import pytest

from tapmodel.designing.cures.fix import fixed
from tapmodel.designing.settle import settle
from tapmodel.designing.work import Work
from tapmodel.errors import InputError
from tapmodel.spec.job_file import job_for


def work(designation: str, *sets: str) -> Work:
    return settle(job_for(designation, list(sets))).work


@pytest.mark.parametrize(
    ("designation", "depth"), [("M10", 15.0), ("1/4-20 UNC", 9.525), ("M18x0.75-LH", 27.0)]
)
def test_a_job_that_says_nothing_taps_mild_steel_through_one_and_a_half_diameters(
    designation: str, depth: float
) -> None:
    found = work(designation)
    assert (found.material.name, found.assumed) == ("mild steel", True)
    assert (found.kind, found.blind) == ("through", False)
    assert found.depth == pytest.approx(depth, rel=1e-9)
    assert (found.steel.name, found.steel.hardness) == ("O1", 62.0)


def test_what_the_job_says_is_taken() -> None:
    found = work(
        "M10",
        *("hole.material=1.4301", "hole.depth=1/2in", "hole.kind=blind"),
        *("tap.material=silver steel", "tap.hardness=61"),
    )
    assert (found.material.name, found.assumed) == ("X5CrNi18-10", False)
    assert (found.depth, found.blind) == (12.7, True)
    assert (found.steel.name, found.steel.hardness) == ("silver steel", 61.0)


def test_mild_steel_asked_for_is_no_assumption() -> None:
    assert not work("M10", "hole.material=mild steel").assumed


@pytest.mark.parametrize(
    ("sets", "kind"),
    [
        (["chamfer.form=bottoming"], "blind"),
        (["chamfer.pitches=2"], "blind"),
        (["chamfer.pitches=2.1"], "through"),
        (["chamfer.length=3"], "blind"),
        (["chamfer.form=plug"], "through"),
        (["chamfer.form=bottoming", "hole.kind=through"], "through"),
    ],
)
def test_the_hole_has_a_bottom_where_a_bottoming_chamfer_is_asked_for(
    sets: list[str], kind: str
) -> None:
    assert work("M10", *sets).kind == kind


def test_a_chamfer_that_a_rule_made_short_leaves_the_hole_open() -> None:
    design = settle(job_for("M42x0.1"))
    assert design.figures.chamfer_leads == pytest.approx(2)
    assert design.work.kind == "through"


def test_several_starts_count_leads() -> None:
    assert work("M20xPh3P1.5", "chamfer.pitches=2").kind == "blind"
    assert work("M20xPh3P1.5", "chamfer.length=7").kind == "through"  # 2.3 leads


@pytest.mark.parametrize("designation", ["M10", "M18x0.75", "1/2 BSW", "Tr16x4"])
def test_of_what_it_taps_only_rake_and_chips_shape_the_tap(designation: str) -> None:
    plain = settle(job_for(designation))
    sets = ["hole.material=11SMn30", "hole.depth=3", "hole.kind=blind"]
    sets += ["tap.material=O1", "tap.hardness=58"]
    other = settle(job_for(designation, sets))
    assert other.work != plain.work
    assert (other.tap, other.figures) == (plain.tap, plain.figures)


@pytest.mark.parametrize(
    ("typed", "told"),
    [("brasss", '"brass"'), ("42CrMoV4", '"42CrMo4"'), ("wood", "mild steel, free-cutting steel")],
)
def test_an_unknown_material_is_refused_with_names_like_it(typed: str, told: str) -> None:
    with pytest.raises(InputError, match=r"hole\.material") as failure:
        work("M10", f"hole.material={typed}")
    assert told in str(failure.value)


def test_a_cure_leaves_what_is_tapped_alone() -> None:
    sets = ["hole.material=brass", "hole.depth=3", "flutes.core_diameter=9.9"]
    job, cures = fixed(job_for("M10", sets))
    assert cures
    assert job.hole.material == "brass"
    assert job.hole.depth == 3


def test_the_hardness_follows_from_the_temper_unless_it_is_given() -> None:
    # O1 at 260 deg C: 60 HRC (table of tempering, read)
    tempered = work("M10", "tap.temper=260").steel
    assert (tempered.hardness, tempered.temper) == (pytest.approx(60.0), 260.0)
    measured = work("M10", "tap.temper=260", "tap.hardness=58.5").steel
    assert (measured.hardness, measured.temper) == (58.5, 260.0)
    assert work("M10", "tap.hardness=58.5").steel.temper == 0.0
    with pytest.raises(InputError, match=r"tap\.temper.*149 to 649 °C for O1"):
        work("M10", "tap.temper=120")


def test_a_softer_tap_bears_less() -> None:
    hard, soft = (settle(job_for("M10", [f"tap.temper={heat}"])).prediction for heat in (200, 400))
    assert hard is not None
    assert soft is not None
    assert soft.strength.yields.likely < 0.95 * hard.strength.yields.likely
