"""Tool steels: rows as printed, names as people write them, and what is refused."""

import pytest

from tapmodel.errors import InputError, MeantError
from tapmodel.standards.materials.steels import (
    DEFAULT,
    hardness_after,
    steel_named,
    steel_names,
)
from tapmodel.words import Certainty

PRINTED = (
    # steel, deg F, HRC; read
    ("O1", 300, 63.0),
    ("O1", 400, 62.0),
    ("O1", 600, 57.0),
    ("O1", 1200, 31.0),
    ("W2", 300, 65.0),
    ("W2", 600, 55.0),
    ("A2", 350, 62.0),
    ("A2", 1000, 56.0),
    ("A2", 1250, 42.0),
)


@pytest.mark.parametrize(("name", "fahrenheit", "hardness"), PRINTED)
def test_rows_as_printed(name: str, fahrenheit: float, hardness: float):
    found, source = hardness_after(name, (fahrenheit - 32) / 1.8)
    assert found == pytest.approx(hardness, abs=1e-9)
    assert source.certainty is Certainty.READ
    assert str(fahrenheit) in source.place


def test_between_rows():
    # 375 F on O1: half-way between 62.5 and 62.
    assert hardness_after("O1", (375 - 32) / 1.8)[0] == pytest.approx(62.25)


def test_the_default_is_o1_at_light_straw():
    steel = steel_named(DEFAULT)
    assert (steel.name, steel.hardness, steel.quench) == ("O1", pytest.approx(62.0), "oil")
    assert steel.temper == pytest.approx(204.4, abs=0.1)
    assert (steel.harden_low, steel.harden_high) == pytest.approx((787.8, 815.6), abs=0.1)
    assert steel.case_depth == 0.0


def test_every_steel_has_a_usual_temper_in_its_table():
    assert len(steel_names()) == 9
    for name in steel_names():
        steel = steel_named(name)
        assert 58 < steel.hardness < 66
        assert 15 <= steel.toughness <= 25
        assert steel.harden_low <= steel.harden_high
        assert (steel.case_depth > 0) == (steel.core_tensile > 0)


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("o1", "O1"),
        ("1.2210", "silver steel"),
        ("Silver  Steel", "silver steel"),
        ("hss", "M2"),
        ("gauge plate", "O1"),
        ("1.2379", "D2"),
        ("O-1", "O1"),
    ],
)
def test_names_as_people_write_them(text: str, name: str):
    assert steel_named(text).name == name


def test_the_temper_as_given_tells_the_hardness():
    assert steel_named("O1", temper=260.0).hardness == pytest.approx(60.0)


def test_unknown_names_are_asked_back():
    for text in ("silver stel", "silver", "115CrV2"):
        with pytest.raises(InputError, match=r'did you mean "silver steel"\? Else one of O1, O2'):
            steel_named(text)
    with pytest.raises(InputError, match="silver steel, A2, D2"):
        steel_named("zinc")
    for heat in (100.0, 700.0):
        with pytest.raises(InputError, match="149 to 649"):
            steel_named("O1", temper=heat)


@pytest.mark.parametrize("text", ["4140", "1095", "HSS-E", "O3", "M42", "S7"])
def test_a_steel_that_is_not_held_is_answered_with_all_that_are_and_no_other(text: str) -> None:
    with pytest.raises(InputError) as refused:
        steel_named(text)
    assert refused.value.allowed == (
        "one of O1, O2, W1, W2, silver steel, A2, D2, M2, case-hardened mild steel"
    )
    assert not isinstance(refused.value, MeantError)


def test_drill_rod_is_asked_back_for_it_hardens_in_water_or_in_oil() -> None:
    with pytest.raises(MeantError, match=r"did you mean W1 or O1\?"):
        steel_named("Drill  Rod")
