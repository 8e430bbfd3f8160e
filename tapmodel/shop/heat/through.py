"""Whether the tap's sections harden through."""

from dataclasses import dataclass
from enum import StrEnum

from tapmodel.designing.record import TapDesign
from tapmodel.shape.thickest import thickest_round
from tapmodel.shape.turned import thickest_behind, turned_lengths
from tapmodel.standards.materials.hardening import Fact, Hardening, Of, hardening_of
from tapmodel.standards.materials.steels import steel_named

DEEPER = "A2"
"""A steel that hardens through in thick sections, in air."""


class Where(StrEnum):
    """A section that is judged."""

    SHANK = "shank"
    BEHIND = "blank behind the flutes"
    FLUTED = "core between the flutes"
    GIVEN = "section"


@dataclass(frozen=True, slots=True)
class Thick:
    """A section, by the round bar that cools like it.

    Attributes:
        where: of the tap it is.
        diameter: of the shank, of what is thicker than it where the flutes have run out, or of
            the thickest round between the flutes [mm].
    """

    where: Where
    diameter: float


@dataclass(frozen=True, slots=True)
class HardenedThrough:
    """Sections of a steel, and which are too thick for it.

    Attributes:
        hardening: what is published of the steel.
        sections: that are judged.
        deeper: whether the shop has, and can harden, a steel that hardens deeper than others do.
    """

    hardening: Hardening
    sections: tuple[Thick, ...]
    deeper: bool = True

    @property
    def known(self) -> Fact | None:
        """The thickest section that hardens through; None where that is not known."""
        return self.hardening.fact(Of.THROUGH)

    @property
    def too_thick(self) -> tuple[Thick, ...]:
        """Those whose core stays softer; none where that is not known."""
        return tuple(s for s in self.sections if self.hardening.through(s.diameter) is False)


def of_design(design: TapDesign) -> HardenedThrough:
    """Shank and fluted section of a tap in the steel that it is made of, and what is solid between.

    Source: the table of hardening.
    """
    tap = design.tap
    lengths = turned_lengths(tap.blank, tap.thread.major)
    shank = Thick(Where.SHANK, tap.blank.shank_diameter)
    behind = Thick(Where.BEHIND, thickest_behind(lengths, design.figures.runout_end))
    fluted = Thick(Where.FLUTED, thickest_round(tap))
    solid = (shank, behind) if behind.diameter > shank.diameter else (shank,)
    known = hardening_of(design.work.steel)
    return HardenedThrough(known, (*solid, fluted), _has(design, DEEPER))


def _has(design: TapDesign, steel: str) -> bool:
    """Whether a steel is in stock, or may be bought, and the furnace hardens it."""
    stock, furnace = design.words("shop.steels"), design.number("shop.furnace")
    names = {steel_named(word).name for word in stock}
    hot = furnace is None or furnace >= steel_named(steel).furnace
    return hot and (not names or steel in names)
