"""Over how much of a land's width the flanks have no clearance at all."""

import math

from tapmodel.tap.tap import Relief
from tapmodel.words import ReliefKind, ReliefPlace


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
