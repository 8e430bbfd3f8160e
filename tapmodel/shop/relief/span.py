"""The part of a land that drops: from the cutting edge, or the margin's end, to the heel."""

import math
from dataclasses import dataclass

import numpy as np

from tapmodel.shape.relief import Arc, Floats, arc_of, drop, drop_rate
from tapmodel.tap.tap import Relief
from tapmodel.words import ReliefKind

LEAST = 0.1
"""A land whose drop begins closer to its heel than that has none that could be made [deg]."""


@dataclass(frozen=True, slots=True)
class Span:
    """A relief on its land; angles count from the crest edge towards the heel [deg].

    Attributes:
        relief: the law of its drop.
        major: diameter over the crests [mm].
        heel: where the land ends.
    """

    relief: Relief
    major: float
    heel: float

    @property
    def begin(self) -> float:
        """Where the drop begins."""
        return self.relief.margin_angle

    @property
    def arc(self) -> Arc:
        """What it is ground on."""
        return arc_of(self.relief, self.major)

    @property
    def lean(self) -> float:
        """Relief angle where the drop begins [deg]: at the edge; none behind a margin."""
        return self.leans(self.begin) if self.relief.kind is ReliefKind.ECCENTRIC else 0.0

    def leans(self, phi: float) -> float:
        """Relief angle at `phi` [deg].

        Source: derived here; the surface falls by its rate on a way of its radius.
        """
        fallen, rate = self.drops(np.asarray(phi)), drop_rate(self.relief, self.major, _one(phi))
        return math.degrees(math.atan2(float(rate), self.major / 2 - float(fallen)))

    def drops(self, phi: Floats) -> Floats:
        """Drop at angles [mm]."""
        return drop(self.relief, self.major, phi)

    @property
    def swing(self) -> float:
        """Angle from where the drop begins to the heel, about the arc's own centre [deg].

        Source: derived here; both ends in the polar form, seen from that centre.
        """
        first, last = (self.from_centre(phi) for phi in (self.begin, self.heel))
        return (last - first) % 360.0

    def from_centre(self, phi: float) -> float:
        """Direction of the surface's point at `phi`, from the arc's centre [deg]."""
        arc, reach = self.arc, self.major / 2 - float(self.drops(np.asarray(phi)))
        turned, centre = math.radians(phi), math.radians(arc.direction)
        x = reach * math.cos(turned) - arc.offset * math.cos(centre)
        y = reach * math.sin(turned) - arc.offset * math.sin(centre)
        return math.degrees(math.atan2(y, x))


def span_of(relief: Relief, major: float, land_angle: float) -> Span | None:
    """A relief on a land of `land_angle` [deg]; None where nothing drops, or no land is left."""
    if relief.kind is ReliefKind.CONCENTRIC or land_angle - relief.margin_angle < LEAST:
        return None
    return Span(relief, major, land_angle)


def _one(phi: float) -> Floats:
    return np.asarray(phi, dtype=np.float64)
