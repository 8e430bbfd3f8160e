"""The straight flanks of a thread, and what a flat or an arc between them measures."""

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Flanks:
    """Flanks that would meet in a sharp crest and a sharp root; heights are of diameters.

    Attributes:
        pitch, diameter: at the pitch line [mm].
        angle: of each flank to the plane square to the axis [rad].
    """

    pitch: float
    diameter: float
    angle: float

    @property
    def sharp(self) -> float:
        """From the pitch line to where two flanks meet, on diameter [mm]."""
        return self.pitch / 2 / math.tan(self.angle)

    @property
    def short(self) -> float:
        """By how much an arc of radius 1 that touches both flanks ends before that, on diameter."""
        return 2 * (1 / math.sin(self.angle) - 1)

    def flat(self, height: float) -> float:
        """Width of a flat at a height over the pitch line, on diameter [mm]."""
        return (self.sharp - height) * math.tan(self.angle)

    def radius(self, height: float) -> float:
        """Radius of an arc that ends at a height over the pitch line, on diameter [mm]."""
        return (self.sharp - height) / self.short

    def arc_height(self, radius: float) -> float:
        """Height over the pitch line at which an arc of that radius ends [mm], on diameter."""
        return self.sharp - radius * self.short

    def height(self, flat: float) -> float:
        """Height of a flat of that width [mm], on diameter."""
        return self.sharp - flat / math.tan(self.angle)
