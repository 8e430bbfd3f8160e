"""How wide a land may be whose flanks are not relieved: all of it rubs on the thread it has cut."""

import math

from tapmodel.tap.tap import Relief
from tapmodel.words import ReliefKind, ReliefPlace

MOST_SHARE = 0.4
"""Largest share of the spacing of the flutes that may rub."""

LONGEST = 16.0
"""Longest way that a single land may rub behind its edge [mm].

Four flutes with lands of a quarter of the diameter are printed for taps up to 2 1/2 in
(63.5 mm), which is a land of 16 mm at the most.
"""


def most_rubbing(major: float, count: int) -> float:
    """Largest width of a land, along the crests, over which its flanks may rub, all [mm].

    Source: rule of this program, see `LONGEST`; a third of the spacing is common practice.
    """
    return min(MOST_SHARE * math.pi * major / count, LONGEST)


def rubbing_width(relief: Relief, major: float, land_width: float) -> float:
    """How far behind the edge the flanks of a land have no clearance, along the crests, all [mm].

    Args:
        relief: of the thread.
        major: diameter over the crests.
        land_width: at that diameter.

    Source: derived here: relief of the crest leaves the flanks as they are, relief of the whole
    thread moves them inwards from the end of its margin on.
    """
    if relief.applies_to is not ReliefPlace.THREAD or relief.kind is ReliefKind.CONCENTRIC:
        return land_width
    return math.radians(relief.margin_angle) * major / 2
