"""What is published of hardening a tool steel: heat, soak, medium, section that hardens through."""

from dataclasses import dataclass
from enum import StrEnum

from tapmodel.sources import Source
from tapmodel.spec.temperatures import celsius
from tapmodel.standards.materials.steels import TapSteel
from tapmodel.standards.tables import Row, cell_source, read_table


class Of(StrEnum):
    """What a fact is of, as the table names it."""

    HEAT = "heat"
    PREHEAT = "preheat"
    SOAK = "soak"
    QUENCHED = "quenched"
    THROUGH = "through"


@dataclass(frozen=True, slots=True)
class Fact:
    """A published fact.

    Attributes:
        of: what it is of.
        quench: medium for which it is told; empty where that makes no difference.
        low, high: its range, in deg C, minutes, HRC or mm.
        source: who published it.
    """

    of: Of
    quench: str
    low: float
    high: float
    source: Source


@dataclass(frozen=True, slots=True)
class Hardening:
    """Everything published of hardening one steel.

    Attributes:
        steel: with the range from which it is quenched, and the medium.
        facts: all others; what is not among them is not known.
    """

    steel: TapSteel
    facts: tuple[Fact, ...]

    def fact(self, of: Of) -> Fact | None:
        """The fact for the steel's own medium; None where nothing is known."""
        media = ("", self.steel.quench)
        return next((f for f in self.facts if f.of is of and f.quench in media), None)

    @property
    def in_other_media(self) -> tuple[Fact, ...]:
        """Sections that harden through in another medium than the steel's own."""
        others = (f for f in self.facts if f.of is Of.THROUGH and f.quench != self.steel.quench)
        return tuple(others)

    def through(self, section: float) -> bool | None:
        """Whether a round section [mm] hardens through; None where that is not known.

        Source: as the fact of the section.
        """
        known = self.fact(Of.THROUGH)
        return None if known is None else section <= known.high


def hardening_of(steel: TapSteel) -> Hardening:
    """What is published of hardening a steel.

    Source: the table of hardening, each cell with its own.
    """
    rows = (row for row in read_table("tool_steel_hardening") if row["steel"] == steel.name)
    return Hardening(steel, tuple(map(_fact, rows)))


def _fact(row: Row) -> Fact:
    low, high = (celsius(float(row[end]), row["unit"]) for end in ("low", "high"))
    place = _PLACES[Of(row["fact"])]
    source = cell_source(row["steel"], place, row["read"])
    return Fact(Of(row["fact"]), row["quench"], low, high, source)


_PLACES = {
    Of.HEAT: "hardening",
    Of.PREHEAT: "preheat",
    Of.SOAK: "time at heat",
    Of.QUENCHED: "hardness before tempering",
    Of.THROUGH: "section that hardens through",
}
