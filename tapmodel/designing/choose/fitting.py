"""The cutter that fits best: what each of those on hand leaves, and what is wrong with it."""

import math
from dataclasses import dataclass
from functools import lru_cache

from tapmodel.designing.choose.flute_solve import FluteWish, Unmet, offset_for, solve
from tapmodel.designing.choose.shallow import Shallow, with_shallow_core
from tapmodel.designing.limits.flutes import (
    ToothRadii,
    impossible,
    land_width,
    misplaced,
    shortfall,
    stands,
)
from tapmodel.designing.limits.lands import most_rubbing
from tapmodel.findings import Finding
from tapmodel.shape.flute_section import FluteSection, rake
from tapmodel.standards.materials.groups import WorkGroup
from tapmodel.tap.tap import TapThread
from tapmodel.words import ToolSizes

KEPT = 0.5
"""Share of the rake wished for at the crest that the edge should keep down to the hole's wall."""


@dataclass(frozen=True, slots=True)
class FlutedTap:
    """What the flutes are cut into.

    Attributes:
        thread: of the tap.
        diameter: nominal [mm].
        wall: radius where the wall of the drilled hole begins, the innermost that cuts [mm].
        group: of the material to be tapped.
        tools: sizes of cutters that the rule counts on.
        shallow: what flutes have to do whose core a rule fits to each cutter; None for others.
        largest: cutter that the rule counts on where the flutes are shallow [mm].
        narrow: whether a land that rubs is a fault even where the usual share of the spacing does.
    """

    thread: TapThread
    diameter: float
    wall: float
    group: WorkGroup
    tools: ToolSizes
    shallow: Shallow | None = None
    largest: float = math.inf
    narrow: bool = False

    @property
    def tooth(self) -> ToothRadii:
        """From crest to root."""
        return ToothRadii(self.thread.major / 2, self.thread.minor / 2)


@dataclass(frozen=True, slots=True)
class Candidate:
    """A cutter tried: its section, and what is wrong with it.

    Attributes:
        section: that it leaves.
        unmet: wish that it cannot meet.
        shortfall: of the limits of flutes [mm].
        scrapes: whether its edge leans forward where the wall of the hole begins.
        weak: whether teeth are taller than their feet are thick.
        wide: whether lands rub.
        at_wall: rake where the wall of the hole begins [deg].
        blunt: rake that is lacking at the wall of the hole [deg]; no fault, but better not.
        land_miss: of the wanted width of the lands [mm].
    """

    section: FluteSection
    unmet: Unmet | None
    shortfall: float
    scrapes: bool
    weak: bool
    wide: bool
    at_wall: float
    blunt: float
    land_miss: float

    @property
    def good(self) -> bool:
        """Whether nothing is wrong with it."""
        faults = self.scrapes or self.weak or self.wide
        return not (self.unmet or self.shortfall > 0 or faults)


# Every trial of a cure that leaves the flutes alone asks for the same cutter again.
@lru_cache(maxsize=16)
def best_cutter(
    wish: FluteWish, cutters: tuple[float, ...], tap: FlutedTap
) -> tuple[Candidate | None, tuple[Finding, ...]]:
    """The best of some cutters [mm], and why others, or all, leave no flute.

    Those that meet every limit go first, then what is wrong with the land, its width last.

    Source: rule of this program.
    """
    tooth = tap.tooth
    possible: list[tuple[FluteSection, Unmet | None]] = []
    reasons: list[Finding] = []
    for diameter in cutters:
        wished = wish
        if tap.shallow is not None:
            wished = with_shallow_core(wish, diameter, tooth.crest, tap.shallow)
        found = solve(wished, diameter, 2 * tooth.crest)
        if found.section is None:
            offset = offset_for(wish, diameter / 2, tooth.crest)
            reasons.append(misplaced(offset, wished.core_diameter or 0.0, diameter / 2))
            continue
        reason = impossible(found.section, tooth)
        if reason is not None:
            reasons.append(reason)
            continue
        possible.append((found.section, found.unmet))
    # Most cutters cannot give the rake at all; they are looked at only where none can.
    met = [(section, unmet) for section, unmet in possible if unmet is None] or possible
    if not met:
        return None, tuple(reasons)
    return min((_candidate(wish, *found, tap) for found in met), key=_rank), tuple(reasons)


def _rank(candidate: Candidate) -> tuple[bool, float, bool, bool, bool, float, float]:
    """Least is best: wishes met, limits kept, then what is wrong with the land, its width last."""
    unmet, short = candidate.unmet is not None, candidate.shortfall
    faults = candidate.scrapes, candidate.weak, candidate.wide
    return unmet, short, *faults, candidate.blunt, candidate.land_miss


def _candidate(
    wish: FluteWish, section: FluteSection, unmet: Unmet | None, tap: FlutedTap
) -> Candidate:
    tooth = tap.tooth
    width = land_width(section, wish.count, tooth.crest)
    # Who wants a wide land gets it, and so does a rule that has no more flutes to give.
    widest = most_rubbing(tap.thread.major, wish.count)
    wide = width > widest and (wish.land_width <= widest or tap.narrow)
    at_wall = float(rake(section, tap.wall))
    return Candidate(
        section,
        unmet,
        shortfall(section, wish.count, tooth),
        # An edge high on the ball's arc scrapes where the hole's wall begins.
        at_wall < min(wish.rake or 0.0, 0.0),
        not stands(section, wish.count, tooth),
        wide,
        at_wall,
        # Lands that rub already are made no wider for it.
        0.0 if wide else max(0.0, KEPT * (wish.rake or 0.0) - at_wall),
        abs(width - wish.land_width),
    )
