"""The thickest round that fits in the fluted section, which is what heat has to leave."""

import math

import numpy as np
from numpy.typing import NDArray

from tapmodel.shape.flute_section import Floats, FluteSection, section_of
from tapmodel.tap.tap import Tap

Complexes = NDArray[np.complex128]

_POINTS = 41  # on a side of the grid
_LOOKS = 6  # each at a quarter of the one before


def thickest_round(tap: Tap) -> float:
    """Diameter of the largest circle between the flutes and under the thread's root [mm].

    It stands about the axis, or in a land where flutes are few. A front centre is left out.

    Args:
        tap: whose full thread is looked at.

    Source: derived here; looked for on grids, each closer than the one before, to 0.01 %.
    """
    outer, flute = tap.thread.minor / 2, section_of(tap.flutes)
    middle, half = complex(0.0, 0.0), outer
    found = 0.0
    across = np.linspace(-1.0, 1.0, _POINTS)
    for _ in range(_LOOKS):
        points = middle + half * (across[:, None] + 1j * across)
        room = np.minimum(outer - np.abs(points), _from_flutes(points, flute, tap.flutes.count))
        best = int(np.argmax(room))
        found, middle = max(found, float(room.flat[best])), complex(points.flat[best])
        half /= 4
    return 2 * found


def _from_flutes(points: Complexes, flute: FluteSection, count: int) -> Floats:
    """Distance of points from the nearest flute [mm], negative within one."""
    turned = [points * np.exp(-2j * math.pi * number / count) for number in range(count)]
    return np.min([_from_flute(seen, flute) for seen in turned], axis=0)


def _from_flute(points: Complexes, flute: FluteSection) -> Floats:
    """As `_from_flutes`, of the flute whose cutter stands along +x."""
    below = np.minimum(points.real - flute.centre_radius, 0.0)
    return np.hypot(below, points.imag - flute.offset) - flute.ball_radius
