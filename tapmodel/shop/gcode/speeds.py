"""How fast a cutter turns and is fed in the annealed steel of a tap."""

import math

from tapmodel.shop.gcode.program import Speed

CUTTING_SPEED = 18.0
"""Of a high-speed steel cutter in annealed tool steel [m/min]; common practice."""

TEETH, SHARE_A_TOOTH = 2, 0.004
"""Teeth of the cutter, and the feed of each in diameters of it; common practice."""

MOST_TURNS = 5000.0
"""More turns than small mills have [1/min]; common practice."""


def speed_of(cutter: float) -> Speed:
    """Speed of a cutter of that diameter [mm].

    Source: common practice, as the constants say; the maker's data come first.
    """
    turns = min(1000 * CUTTING_SPEED / (math.pi * cutter), MOST_TURNS)
    turns = float(f"{turns:.2g}")
    return Speed(turns, turns * TEETH * SHARE_A_TOOTH * cutter)
