"""How much drop the chamfer needs, at the crests, because the tap advances while it turns."""

import math

import numpy as np

from tapmodel.shape.relief import drop
from tapmodel.tap.tap import Chamfer, Relief, TapThread


def needed_drop(thread: TapThread, chamfer: Chamfer, phi: float) -> float:
    """Drop of the chamfer at `phi` [deg] behind the edge below which it rubs [mm].

    While the land turns by phi the tap advances lead*phi/360, so the cone moves outwards by that
    times tan(angle).

    Source: derived here.
    """
    return thread.lead * math.tan(math.radians(chamfer.angle)) * phi / 360


def chamfer_rub(thread: TapThread, chamfer: Chamfer, relief: Relief, land_angle: float) -> float:
    """By how much the chamfer's land stands into the metal that its own edge has just cut [mm].

    The largest shortfall of the drop against `needed_drop` over the land; 0 when it clears.

    Source: derived here.
    """
    phi = np.linspace(0.0, land_angle, 361)
    need = needed_drop(thread, chamfer, 1.0) * phi
    return float(np.max(np.maximum(need - drop(relief, thread.major, phi), 0.0)))
