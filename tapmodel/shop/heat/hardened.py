"""Hardening a tool steel without a tap: what is published, and the temper for a hardness."""

from dataclasses import dataclass
from typing import Any

from tapmodel.errors import InputError
from tapmodel.shop.heat.asked import SECTION
from tapmodel.shop.heat.through import HardenedThrough, Thick, Where
from tapmodel.standards.materials.hardening import Fact, Of, hardening_of
from tapmodel.standards.materials.steels import TemperRow, steel_named
from tapmodel.standards.materials.tempering import Tempering, tempering_at, tempering_for


@dataclass(frozen=True, slots=True)
class Hardened:
    """The answer.

    Attributes:
        judged: what is published of the steel, and the section if one was given.
        tempering: for the hardness, or at the temper.
    """

    judged: HardenedThrough
    tempering: Tempering


def hardened(
    steel: str, section: float | None, hardness: float | None, temper: float | None
) -> Hardened:
    """How a steel is hardened and tempered.

    Args:
        steel: its name.
        section: thickness of a round bar [mm]; None where it was not given.
        hardness: wanted after tempering [HRC].
        temper: at which it is tempered [deg C]; for neither it is the usual one.

    Raises:
        InputError: no such steel, or a number that its tables do not hold.

    Source: the tables of tool steels, each cell with its own.
    """
    try:
        known = hardening_of(steel_named(steel))
    except InputError as error:
        raise type(error)("STEEL", steel, error.allowed) from None
    thick = None if section is None else SECTION.holds("--section", section)
    sections = () if thick is None else (Thick(Where.GIVEN, thick),)
    return Hardened(
        HardenedThrough(known, sections), _tempering(known.steel.name, hardness, temper)
    )


def _tempering(steel: str, hardness: float | None, temper: float | None) -> Tempering:
    if hardness is not None:
        return tempering_for(steel, hardness, "--hardness")
    usual = steel_named(steel).temper
    return tempering_at(steel, usual if temper is None else temper, "--temper")


def hardened_record(found: Hardened) -> dict[str, Any]:
    """The answer as JSON has it: deg C, minutes, HRC, mm; None for what is not known."""
    judged, tempering = found.judged, found.tempering
    hardening = judged.hardening
    steel = hardening.steel
    section = judged.sections[0].diameter if judged.sections else None
    return {
        "steel": steel.name,
        "quench_from": [steel.harden_low, steel.harden_high],
        "quench_from_source": str(steel.harden_source),
        "quench": steel.quench,
        "preheat": _fact(hardening.fact(Of.PREHEAT)),
        "soak": _fact(hardening.fact(Of.SOAK)),
        "as_quenched": _fact(hardening.fact(Of.QUENCHED)),
        "hardens_through": _fact(judged.known),
        "section": section,
        "section_hardens_through": None if section is None else hardening.through(section),
        "temper": tempering.temper,
        "hardness": tempering.hardness,
        "rows": [_row(row) for row in dict.fromkeys((tempering.before, tempering.after))],
    }


def _fact(fact: Fact | None) -> dict[str, Any] | None:
    if fact is None:
        return None
    return {"low": fact.low, "high": fact.high, "source": str(fact.source)}


def _row(row: TemperRow) -> dict[str, Any]:
    return {"temper": row.temper, "hardness": row.hardness, "source": str(row.source)}
