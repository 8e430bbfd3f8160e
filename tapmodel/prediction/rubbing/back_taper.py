"""What a thread that tapers towards the square gains in clearance."""

import math

import numpy as np
from numpy.typing import NDArray

from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]


def back_taper_clearance(taper: float, behind: Floats) -> Floats:
    """Clearance along the radius that a back taper leaves on crests and flanks [mm].

    The profile sinks bodily towards the axis, so a tooth stands that far below the surface that the
    thickest tooth, the last of the chamfer, has cut: along the radius on the crest, times the sine
    of the flank angle square to a flank. Within the land of one tooth it gains
    `taper/2*lead*phi/360`, which is nothing: 0.05 µm on a land of 45 degrees at pitch 0.8 and the
    common 0.1 mm in 100 mm.

    Args:
        taper: loss of diameter for each mm of length, 0.0005 to 0.001 being usual (from memory).
        behind: distances behind the end of the chamfer, any shape [mm]; there is none before it.

    Returns:
        Clearance, same shape [mm].

    Source: derived here.
    """
    return taper / 2 * np.maximum(behind, 0.0)


def flank_clearance_behind(tap: Tap, behind: Floats) -> Floats:
    """The same square to the flanks of a tap, at distances behind the end of its chamfer [mm].

    Source: derived here.
    """
    along_radius = back_taper_clearance(2 * tap.thread.narrowing, behind)
    return along_radius * math.sin(math.radians(tap.thread.flank_angle))
