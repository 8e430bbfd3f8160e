"""Hardening of tool steels: facts as printed, what is not known, tempers for a hardness."""

import pytest

from tapmodel.errors import InputError
from tapmodel.standards.materials.hardening import Of, hardening_of
from tapmodel.standards.materials.steels import steel_named, steel_names, temper_rows
from tapmodel.standards.materials.tempering import tempering_at, tempering_for
from tapmodel.words import Certainty

FACTS = (
    # steel, fact, medium, low, high, how sure
    # a supplier's data of O1: harden 788 to 816 C, preheat 649 C, 10 to 30 min; read
    ("O1", Of.HEAT, "", 788, 816, Certainty.READ),
    ("O1", Of.PREHEAT, "", 649, 649, Certainty.READ),
    ("O1", Of.SOAK, "", 10, 30, Certainty.READ),
    # another supplier's row of O1, 1/2 in specimens in oil from 1475 F; read
    ("O1", Of.QUENCHED, "oil", 65, 65, Certainty.READ),
    ("O1", Of.THROUGH, "oil", 50, 50, Certainty.MEMORY),
    # a shop book's row of W2, water from 1450 F; read
    ("W2", Of.QUENCHED, "water", 67, 67, Certainty.READ),
    # a page of water-hardening steels: a tough core beyond 13 mm; read
    ("W1", Of.THROUGH, "water", 13, 13, Certainty.READ),
    ("silver steel", Of.THROUGH, "water", 13, 13, Certainty.READ),
    # makers' sheets, low certainty
    ("silver steel", Of.THROUGH, "oil", 6, 6, Certainty.MEMORY),
    # Industrial Heating, an answer on A2: 60 to 62 as hardened; read
    ("A2", Of.QUENCHED, "air", 60, 62, Certainty.READ),
    ("A2", Of.THROUGH, "air", 100, 100, Certainty.MEMORY),
)


@pytest.mark.parametrize(("steel", "of", "quench", "low", "high", "sure"), FACTS)
def test_facts_as_told(  # noqa: PLR0913, PLR0917  (the columns of a row)
    steel: str, of: Of, quench: str, low: float, high: float, sure: Certainty
) -> None:
    facts = hardening_of(steel_named(steel)).facts
    (found,) = (fact for fact in facts if fact.of is of and fact.quench == quench)
    assert (found.low, found.high, found.source.certainty) == (low, high, sure)


RANGES = (
    # a furnace maker's guide, deg F; read
    *(("W1", 1400, 1550, "water"), ("O1", 1450, 1500, "oil"), ("A2", 1700, 1800, "air")),
    *(("D2", 1800, 1875, "air"), ("M2", 2150, 2250, "oil")),
)


@pytest.mark.parametrize(("name", "low", "high", "quench"), RANGES)
def test_ranges_as_printed(name: str, low: float, high: float, quench: str) -> None:
    steel = steel_named(name)
    assert (steel.harden_low, steel.harden_high) == pytest.approx(
        ((low - 32) / 1.8, (high - 32) / 1.8), abs=0.01
    )
    assert (steel.quench, steel.harden_source.certainty) == (quench, Certainty.READ)


def test_what_is_not_known_is_not_guessed() -> None:
    for name in ("O2", "M2"):
        known = hardening_of(steel_named(name))
        assert known.through(5) is known.through(500) is None
    soaked = {name for name in steel_names() if hardening_of(steel_named(name)).fact(Of.SOAK)}
    assert soaked == {"O1"}


@pytest.mark.parametrize(
    ("name", "thickest"), [("O1", 50), ("W1", 13), ("silver steel", 13), ("A2", 100)]
)
def test_sections_harden_through_up_to_their_limit(name: str, thickest: float) -> None:
    known = hardening_of(steel_named(name))
    assert known.through(thickest) is True
    assert known.through(1.01 * thickest) is False


@pytest.mark.parametrize("name", steel_names())
def test_the_temper_for_a_hardness_leaves_that_hardness(name: str) -> None:
    rows = temper_rows(name)
    for row in rows:
        assert tempering_for(name, row.hardness, "--hardness").temper == pytest.approx(row.temper)
    for share in (0.03, 0.4, 0.77):
        wanted = rows[0].hardness + share * (rows[-1].hardness - rows[0].hardness)
        found = tempering_for(name, wanted, "--hardness")
        assert found.before.hardness >= wanted >= found.after.hardness
        assert tempering_at(name, found.temper, "").hardness == pytest.approx(wanted)


def test_between_two_printed_rows() -> None:
    # O1, read: 500 F 60, 600 F 57; half-way 550 F.
    found = tempering_for("O1", 58.5, "--hardness")
    assert found.temper == pytest.approx((550 - 32) / 1.8, abs=0.1)
    assert (found.before.hardness, found.after.hardness) == (60.0, 57.0)
    row = tempering_for("O1", 60.0, "--hardness")
    assert row.before is row.after or row.before == row.after


def test_beyond_the_table_is_refused() -> None:
    for wanted in (63.1, 30.9, float("nan"), float("inf"), -1.0):
        with pytest.raises(InputError, match=r"--hardness: .* 31 to 63 HRC for O1"):
            tempering_for("O1", wanted, "--hardness")
    for heat in (100.0, 700.0, float("nan")):
        with pytest.raises(InputError, match=r"--temper: .* 149 to 649"):
            tempering_at("O1", heat, "--temper")
