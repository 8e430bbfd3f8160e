"""The two walls of a flute in polar form: at which angle a circle about the axis meets them.

A flute's section is a strip |t - e| <= b for u >= c and a disc of radius b about (c, e) below;
u points along the cutter axis, t along +theta. Beyond the full-depth length the same form holds
with the smaller b of the cutter's section there.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

FACE, HEEL = 1, -1


@dataclass(frozen=True, slots=True)
class Walls:
    """Section of one flute: ball centre (`c`, `e`) and radius `b` [mm]; `b` may be an array."""

    c: float
    e: float
    b: Floats

    def angle(self, side: int, radius: Floats) -> Floats:
        """Polar angle, from the cutter axis, where the wall is met at `radius` [rad].

        Args:
            side: FACE for the wall at +t (the cutting face), HEEL for the one at -t.
            radius: about the tap's axis [mm]; below the core radius the angle of the core.
        """
        t = self.e + side * self.b
        straight = radius >= self.turn_radius(side)
        safe = np.where(straight, radius, np.abs(t) + 1.0)
        on_line = np.arcsin(np.clip(t / safe, -1.0, 1.0))
        reach = np.hypot(self.c, self.e)
        # Half-angle form: exact where circle and ball only just touch.
        overlap = (self.b**2 - (reach - radius) ** 2) / (4 * radius * reach)
        half = np.arcsin(np.sqrt(np.clip(overlap, 0.0, 1.0)))
        on_ball = np.arctan2(self.e, self.c) + side * 2 * half
        return np.where(straight, on_line, on_ball)

    def turn_radius(self, side: int) -> Floats:
        """Radius where the straight wall passes into the ball's arc [mm]."""
        return np.hypot(self.c, self.e + side * self.b)
