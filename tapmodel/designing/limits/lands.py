"""How wide a land may be whose flanks are not relieved: all of it rubs on the thread it has cut."""

import math

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
