"""Work materials: every name leads to one row, and every row says what a tap needs to know."""

from collections import Counter

import pytest

from tapmodel.designing.settle import settle
from tapmodel.errors import InputError
from tapmodel.report.screen.design import design_page
from tapmodel.spec.job_file import checked, job_for
from tapmodel.standards.materials.called import key
from tapmodel.standards.materials.groups import work_groups
from tapmodel.standards.materials.work import (
    PLAIN,
    names_of,
    work_material,
    work_materials,
)
from tapmodel.words import Certainty

NAMES = [(m.name, name) for m in work_materials() for name in names_of(m.name)]


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        *(("C45", "C45"), ("c 45", "C45"), ("Ck-45", "C45"), ("1.0503", "C45"), ("EN8", "C45")),
        *(("X5CrNi18-10", "X5CrNi18-10"), ("x5 crni 18 10", "X5CrNi18-10"), ("304", "X5CrNi18-10")),
        *(("1.4301", "X5CrNi18-10"), ("V2A", "X5CrNi18-10"), ("stainless", "X5CrNi18-10")),
        *(("GG25", "EN-GJL-250"), ("GG-25", "EN-GJL-250"), ("en-gjl 250", "EN-GJL-250")),
        *(("0.6025", "EN-GJL-250"), ("ms58", "CuZn39Pb3"), ("Brass", "CuZn39Pb3")),
        *(("EN AW 6082", "EN AW-6082"), ("Aluminum", "EN AW-6082"), ("6061-T6", "EN AW-6082")),
        *(("42crmo4", "42CrMo4"), ("42CrMo4+QT", "42CrMo4 30 HRC"), ("4140", "42CrMo4")),
        *(("MILD  STEEL", "mild steel"), ("St 37-2", "S235JR"), ("tool steel", "C105U")),
        *(("tool steel annealed", "C105U"), ("16MnCr5", "16MnCr5"), ("11SMn30", "11SMn30")),
        *(("C15", "C15"), ("C60", "C60"), ("S235JR", "S235JR"), ("GE 260", "GE 260")),
    ],
)
def test_a_name_is_read_leniently(typed: str, name: str) -> None:
    assert work_material(typed).name == name


def test_no_two_names_are_read_alike() -> None:
    counted = Counter(key(name) for _, name in NAMES)
    assert [key for key, times in counted.items() if times > 1] == []
    assert len(NAMES) > 350
    assert all(work_material(name).name == owner for owner, name in NAMES)


def test_the_plain_names_that_a_message_offers_are_names() -> None:
    assert [name for name in PLAIN if work_material(name) is None] == []


@pytest.mark.parametrize("typed", ["", " ", "---", "wood", "C46b", "x" * 500, "\x1b[31m", "ß"])
def test_an_unknown_name_is_refused_with_a_list(typed: str) -> None:
    with pytest.raises(InputError) as failure:
        work_material(typed)
    assert failure.value.field == "hole.material"
    assert "C45, 42CrMo4" in failure.value.allowed
    assert all(name in failure.value.allowed for name in PLAIN)
    assert len(failure.value.allowed) < 800


def test_the_names_nearest_to_the_one_typed_are_offered() -> None:
    with pytest.raises(InputError, match='did you mean "CuZn39Pb3" or'):
        work_material("CuZn39Pb")


def test_every_row_is_complete_and_in_reason() -> None:
    for material in work_materials():
        assert 50 <= material.hardness <= 400, material.name
        assert 350 <= material.kienzle.kc11 <= 4000, material.name
        assert 0.13 <= material.kienzle.mc <= 0.31, material.name
        assert material.kienzle.rake == material.group.kienzle_rake
        # A's force is about half as large again as B's, whose chip is a larger triangle.
        if material.torque_a and material.torque_b:
            assert 1.1 < material.torque_a / material.torque_b < 3.3, material.name
        assert material.torque_a is None or material.group.a_row, material.name


def test_every_group_has_its_members_and_makes_sense() -> None:
    used = {material.group.name for material in work_materials()}
    assert used == set(work_groups())
    for group in work_groups().values():
        for least, most in (group.rake, group.speed, group.chip):
            assert 0 <= least < most
        assert 0.1 <= group.friction <= 0.3
        assert group.speed_source.certainty is Certainty.MEMORY


@pytest.mark.parametrize(
    ("name", "rake"),
    [
        *(("cast iron", (0, 3)), ("brass", (0, 5)), ("bronze", (5, 8)), ("mild steel", (8, 12))),
        *(("C45", (5, 10)), ("42CrMo4", (5, 10)), ("tool steel", (5, 8)), ("1.4301", (8, 13))),
        *(("copper", (10, 18)), ("aluminium", (10, 20)), ("magnesium", (10, 20))),
    ],
)
def test_the_usual_rakes_are_those_of_the_handbook(name: str, rake: tuple[float, float]) -> None:
    assert work_material(name).group.rake == rake


def test_a_tap_of_carbon_steel_runs_at_half_the_printed_speed() -> None:
    # 40 to 60 ft/min for high-speed steel in mild steel
    assert work_material("mild steel").group.speed == pytest.approx((6.096, 9.144))
    assert work_material("brass").group.speed == pytest.approx((13.716, 15.24))


def test_a_heat_treated_steel_cuts_harder_as_its_printed_torque() -> None:
    soft = work_material("42CrMo4")
    for name in ("42CrMo4 30 HRC", "42CrMo4 40 HRC"):
        hard = work_material(name)
        assert hard.torque_a is not None
        assert soft.torque_a is not None
        raised = hard.kienzle.kc11 / soft.kienzle.kc11
        assert raised == pytest.approx(hard.torque_a / soft.torque_a, rel=1e-3)


def test_yellow_brass_is_the_one_that_is_drawn_and_rolled() -> None:
    assert work_material("yellow brass").name == work_material("C27000").name == "CuZn37"


@pytest.mark.parametrize(
    ("word", "told"),
    [
        ("brass", "brass (CuZn39Pb3)"),
        ("yellow  brass", "yellow brass (CuZn37)"),
        ("cuzn39-pb3", "CuZn39Pb3"),
        ("CuZn39Pb3", "CuZn39Pb3"),
    ],
)
def test_papers_tell_the_word_of_the_job_with_the_name_of_the_standard_behind(
    word: str, told: str
) -> None:
    job = checked({"designation": "M10", "hole": {"material": word}})
    design = settle(job)
    assert design.work.material.told == told
    assert design.work.material.name == work_material(word).name
    page = " ".join(design_page(design).split())
    assert f"likely torque (a model) in {told} " in page
    assert settle(job_for("M10")).work.material.told == "mild steel"


def test_the_steel_of_the_tap_is_told_likewise() -> None:
    steel = settle(job_for("M10", ["tap.material=gauge plate"])).work.steel
    assert (steel.name, steel.told) == ("O1", "gauge plate (O1)")
