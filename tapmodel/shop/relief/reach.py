"""How far a wheel may come on a land before it touches the next, across the flute.

In a section square to the axis the wheel, its axis beside the tap's, is a circle that touches the
relieved surface from outside. Let Q be the point of contact, n the normal there, P a point of the
next land: a wheel of radius w stands clear of P while

    |Q + w*n - P| > w,   that is   |Q - P|**2 > 2*w*n.(P - Q)

so where n.(P - Q) is not positive a wheel of any size is free. P is its edge, for the land lies no
further out behind it, or, for a small wheel that dips into the flute, a point of the cutting face
below, down to the root; that is followed by points. On a chamfer the wheel is dressed to its
angle, and the section is the same at each height, with the cone's radius there.

Source: derived here.
"""

import math
from dataclasses import dataclass

import numpy as np

from tapmodel.numerics import border
from tapmodel.prediction.rubbing.land import edges_of, heel_phi
from tapmodel.shape.relief import Floats, drop, drop_rate
from tapmodel.shop.relief.span import Span
from tapmodel.tap.tap import Tap
from tapmodel.words import ReliefPlace

_PLACES = 129
_HEIGHTS = 5
_DEEP = 129
_ABOVE_CORE = 1e-3
_CLOSE = 1e-6
# The edge so little above the tangent [mm]: a wheel that touched it would be wide as a house.
_LEVEL = 1e-6


@dataclass(frozen=True, slots=True)
class Crossing:
    """A land and the next edge, in one section.

    Attributes:
        span: the relief.
        base: radius of the surface without drop [mm].
        begin, heel: between which the wheel touches, behind the crest edge [deg].
        face: radii of points of the next cutting face, from its edge to its root, (m,) [mm].
        face_at: their angles, (m,) [deg].
    """

    span: Span
    base: float
    begin: float
    heel: float
    face: Floats
    face_at: Floats

    def clearances(self, radius: float, phi: Floats) -> Floats:
        """Of a wheel of `radius` from the next land, touching at angles `phi` [deg], (n,) [mm]."""
        across, apart = self._across(phi)
        away = np.sqrt(np.maximum(radius**2 + apart - 2 * radius * across, 0.0))
        return np.min(away, axis=-1) - radius

    def largest(self, phi: Floats) -> Floats:
        """Radius of the largest wheel that is free at angles `phi`, (n,) [mm]; inf for any."""
        across, apart = self._across(phi)
        free = np.full_like(apart, np.inf)
        found = np.divide(apart, 2 * across, out=free, where=across > _LEVEL)
        return np.min(found, axis=-1)

    @property
    def places(self) -> Floats:
        """Angles at which the wheel is tried, from where the drop begins to the heel [deg]."""
        return np.linspace(self.begin, self.heel, _PLACES)

    def _across(self, phi: Floats) -> tuple[Floats, Floats]:
        """`n.(P - Q)` and `|P - Q|**2`, each (n, m)."""
        relief, major, phi = self.span.relief, self.span.major, phi[..., None]
        radius, rate = self.base - drop(relief, major, phi), drop_rate(relief, major, phi)
        turned, target = np.radians(phi), np.radians(self.face_at)
        # along the radius through Q, and square to it towards the heel
        outwards = self.face * np.cos(target - turned) - radius
        onwards = self.face * np.sin(target - turned)
        across = (outwards * radius + onwards * rate) / np.hypot(radius, rate)
        return across, outwards**2 + onwards**2


@dataclass(frozen=True, slots=True)
class Reach:
    """What a wheel may do on a relief.

    Attributes:
        crossings: sections that it was looked at in.
        largest: diameter of the largest wheel that is free all over the land [mm]; inf for any.
    """

    crossings: tuple[Crossing, ...]
    largest: float

    def clearance(self, diameter: float) -> float:
        """Least distance of a wheel from the next land; negative where it would cut it [mm]."""
        return min(
            float(np.min(one.clearances(diameter / 2, one.places))) for one in self.crossings
        )

    def goes_to(self, diameter: float) -> float | None:
        """How far behind the crest edge a wheel may touch [deg]; None where nowhere."""
        ends: list[float] = []
        for one in self.crossings:
            found = _end(one, diameter / 2)
            if found is None:
                return None
            ends.append(found)
        return min(ends)


def reach_of(tap: Tap, span: Span) -> Reach:
    """How a wheel reaches a relief: in full thread, or at heights all along the chamfer.

    Source: as the head of this file.
    """
    major = tap.thread.major / 2
    # At the core both walls of a flute are one.
    low, web = major, tap.flutes.core_diameter / 2 + _ABOVE_CORE
    if span.relief.applies_to is ReliefPlace.CHAMFER:
        low = min(max(tap.chamfer.point_diameter / 2, web), major)
    edges = edges_of(tap, np.linspace(low, major, _HEIGHTS) if low < major else np.array([major]))
    heels, spacing = heel_phi(edges, span.relief, 0.0), 360 / tap.flutes.count
    found: list[Crossing] = []
    for radius, phi, heel in zip(edges.radii, edges.phi, heels, strict=True):
        begin = max(float(phi), span.begin)
        base = float(radius) + float(drop(span.relief, span.major, np.asarray(phi)))
        if heel > begin:
            root = min(max(tap.thread.minor / 2, web), float(radius))
            face = np.linspace(float(radius), root, _DEEP)
            found.append(Crossing(span, base, begin, float(heel), face, edges.face(face) + spacing))
    free = (2 * float(np.min(one.largest(one.places))) for one in found)
    return Reach(tuple(found), min(free, default=math.inf))


def _end(crossing: Crossing, radius: float) -> float | None:
    """Last angle at which a wheel is free on the way from where the drop begins [deg]."""

    def free(phi: float) -> bool:
        return float(crossing.clearances(radius, np.asarray(phi))) > 0

    if not free(crossing.begin):
        return None
    if free(crossing.heel):
        return crossing.heel
    return border(free, crossing.begin, crossing.heel, _CLOSE)[0]
