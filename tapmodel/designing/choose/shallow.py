"""Shallow flutes for large taps of fine pitch: as deep as cutter and chips ask."""

import math
from bisect import bisect_left
from dataclasses import dataclass, replace
from functools import lru_cache

from tapmodel.designing.choose.chamfer import SHORTEST, cone, ruled_point
from tapmodel.designing.choose.flute_solve import FluteWish, offset_for, solve
from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.steps import down
from tapmodel.prediction.chips.room import BULKING
from tapmodel.prediction.thread_section import moment_above
from tapmodel.shape.figures import chip_thickness
from tapmodel.shape.flute_section import flute_area
from tapmodel.tap.tap import TapThread

SHALLOW_COUNTS = (4, 6, 8, 10, 12)
"""Numbers of flutes that the rule goes through; all can be measured across."""

LARGEST_CUTTERS = (16.0, 20.0, 25.4, 32.0)
"""Largest cutters [mm] that are looked at, one after the other: who has a small mill holds none
thicker than the first, and larger ones are for taps whose lands would rub without them."""

SPARE = 1.5
"""Room of the flutes over what the chips of full thread take, however deep the hole."""

STEP = 0.5
"""Cores are whole steps of so much [mm]."""


@dataclass(frozen=True, slots=True)
class Shallow:
    """What flutes have to do that follow the thread's depth.

    Attributes:
        wall: radius where the wall of the drilled hole begins [mm].
        chips: area of all flutes inside that radius that the chips ask for [mm²].
        most: flutes between which each tooth of the shortest chamfer still has a chip to cut.
    """

    wall: float
    chips: float
    most: int


def shallow_for(thread: TapThread, hole: TappedHole, wall: float, least_chip: float) -> Shallow:
    """What shallow flutes of a tap have to do.

    Args:
        thread: of the tap.
        hole: that it is for.
        wall: radius where the wall of the drilled hole begins [mm].
        least_chip: that a tooth should cut [mm].

    Source: room for chips as `tapmodel.prediction.chips.room`, by Pappus' rule; the spare room is
    a rule of this program.
    """
    metal = 2 * math.pi * moment_above(thread, 2 * wall) / thread.lead
    shortest = cone(thread, ruled_point(hole), SHORTEST * thread.lead)
    chips = (
        count for count in SHALLOW_COUNTS if chip_thickness(thread, shortest, count) >= least_chip
    )
    return Shallow(wall, SPARE * BULKING * metal, max(chips, default=SHALLOW_COUNTS[0]))


# A cutter is tried anew beside every larger one that may be counted on, and for other starts.
@lru_cache(maxsize=256)
def with_shallow_core(
    wish: FluteWish, cutter_diameter: float, crest: float, shallow: Shallow
) -> FluteWish:
    """The wish with the thickest core that the cutter leaves of flutes that do their work.

    The edge is straight from the crest down to the wall of the hole, so that it has its rake
    there too, and the flutes hold the chips; the wish's own core, that of usual flutes, is the
    thinnest.

    Args:
        wish: of the flutes; its core is the usual one.
        cutter_diameter: of a cutter on hand [mm].
        crest: radius over the crests [mm].
        shallow: what the flutes have to do.

    Source: derived here: the ball's arc ends at its centre's height above the tap's axis.
    """
    ball, usual = cutter_diameter / 2, wish.core_diameter or 0.0
    offset = offset_for(wish, ball, crest)
    across = offset + ball
    if not abs(across) < shallow.wall:
        return wish
    straight = math.hypot(math.sqrt(shallow.wall**2 - across**2), offset)
    thickest = down(2 * (straight - ball), STEP)
    thinner = range(max(0, math.ceil((thickest - usual) / STEP)))

    def holds(steps: int) -> bool:
        """Whether the flutes hold the chips with a core that is thinner by so many steps."""
        cored = replace(wish, core_diameter=thickest - steps * STEP)
        section = solve(cored, cutter_diameter, 2 * crest).section
        return section is None or wish.count * flute_area(section, shallow.wall) >= shallow.chips

    steps = bisect_left(thinner, True, key=holds)
    return replace(wish, core_diameter=max(thickest - steps * STEP, usual))
