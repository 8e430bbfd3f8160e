"""Whether a straight wire meets the crest's corner before it lies on the flanks.

The crest winds away from a straight wire. Where flanks are steep and the lead angle is beyond some
40 degrees it first winds across the wire's way, and the wire would rest there, too high.
"""

import math

from tapmodel.shop.wires.groove import Groove
from tapmodel.shop.wires.over_wires import seated

_STEPS = 720
"""Points looked at on either side, over a quarter turn: an overlap that fits between two of them is
below a tenth of a micrometre per mm of diameter."""

_TOUCHING = 1e-6
"""Share of the wire's radius that counts as touching: the thickest wire touches the very corner."""


def fouls_crest(groove: Groove, wire: float, crest_radius: float) -> bool:
    """True when the wire, lying on both flanks, would cut into the corner of a crest.

    Args:
        groove: the thread.
        wire: diameter [mm].
        crest_radius: where the straight flank ends, from the tap's axis [mm].

    Source: derived here: distance of the corner's helix from the wire's axis.
    """
    lying = seated(groove, wire)
    lean = math.radians(lying.lean)
    for step in range(-_STEPS, _STEPS + 1):
        theta = step * math.pi / 2 / _STEPS
        below = lying.axis_radius - crest_radius * math.cos(theta)
        along_tap = groove.rise * theta + groove.half_width(crest_radius)
        across = along_tap * math.cos(lean) - crest_radius * math.sin(theta) * math.sin(lean)
        if math.hypot(below, across) < wire / 2 * (1 - _TOUCHING):
            return True
    return False
