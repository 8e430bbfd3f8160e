"""A relief as a shop makes it: rounded to what it can set, in flats, or in passes of a wheel.

Angles count from the crest edge of a land towards its heel [deg]; a drop is that of the radius.
"""

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import Protocol

import numpy as np

from tapmodel.designing.choose.steps import up
from tapmodel.shape.relief import Floats, drop
from tapmodel.shop.relief.span import Span
from tapmodel.tap.tap import Relief
from tapmodel.words import ReliefKind

LEAST_REACH = 1e-6
"""A ray that runs along a flat meets it nowhere; its reciprocal radius is held above this."""


class Made(Protocol):
    """A surface that was made."""

    @property
    def kinks(self) -> Floats:
        """Angles at which it may stand highest between its neighbours, (n,) [deg]."""
        ...

    def drop(self, phi: Floats) -> Floats:
        """Radial drop at angles of any shape [mm]."""
        ...


@dataclass(frozen=True, slots=True)
class OnCentres:
    """An arc as the law has it, its offset rounded to what the centres can be set to."""

    relief: Relief
    major: float

    @property
    def kinks(self) -> Floats:
        """None but the end of a margin."""
        return np.array([self.relief.margin_angle])

    def drop(self, phi: Floats) -> Floats:
        """By the law."""
        return drop(self.relief, self.major, phi)


def on_centres(span: Span, step: float) -> OnCentres:
    """The arc whose offset is the next that can be set, and not less, so that it clears as much.

    Args:
        span: the relief as designed.
        step: graduation of the offset [mm].

    Source: derived here.
    """
    relief = span.relief
    offset = up(relief.arc_offset, step)
    # No arc has its centre beyond the crests: a coarse holder does not make so small a relief.
    offset = offset if offset < span.major / 4 else relief.arc_offset
    return OnCentres(
        Relief(relief.kind, relief.applies_to, relief.margin_angle, offset), span.major
    )


@dataclass(frozen=True, slots=True)
class Flats:
    """Flats side by side from where the drop begins to the heel.

    Attributes:
        full: radius over the crests [mm].
        corners: angles where flats begin and end, rising, (n + 1,) [deg].
        drops: there, (n + 1,) [mm].
        margin: whether the round surface before the first is left.
    """

    full: float
    corners: Floats
    drops: Floats
    margin: bool

    @property
    def kinks(self) -> Floats:
        """The corners: a flat lies lower than any curve between them."""
        return self.corners

    @property
    def count(self) -> int:
        """Of flats."""
        return len(self.corners) - 1

    def drop(self, phi: Floats) -> Floats:
        """Of the flats; before the first and behind the last these go on.

        Source: derived here; along a line the reciprocal radius is a sine of the angle, so between
        two of its points it is `(sin(b - phi)/ra + sin(phi - a)/rb) / sin(b - a)`.
        """
        flat = np.clip(np.searchsorted(self.corners, phi, side="right") - 1, 0, self.count - 1)
        first, last = np.radians(self.corners)[flat], np.radians(self.corners)[flat + 1]
        radii, turned = self.full - self.drops, np.radians(phi)
        share = np.sin(last - turned) / radii[flat] + np.sin(turned - first) / radii[flat + 1]
        fallen = self.full - 1 / np.maximum(share / np.sin(last - first), LEAST_REACH)
        if not self.margin:
            return fallen
        return np.where(phi <= self.corners[0], 0.0, np.maximum(fallen, 0.0))


def flats(span: Span, count: int, step: float = 0.0) -> Flats:
    """`count` flats of equal angle, whose corners lie on the arc.

    Args:
        span: the relief as designed.
        count: of flats.
        step: division of the indicator: each corner but the first is taken down to the next that
            is not less [mm]; 0 leaves the corners on the arc.

    Source: derived here.
    """
    corners = np.linspace(span.begin, span.heel, count + 1)
    fallen = span.drops(corners)
    if step:
        rounded = [up(float(one), step) for one in fallen[1:]]
        fallen = np.array([fallen[0], *rounded])
    return Flats(span.major / 2, corners, fallen, span.relief.kind is ReliefKind.CON_ECCENTRIC)


def flat_departs(span: Span, count: int = 1) -> float:
    """How far a flat lies below the arc that it stands for, in its middle [mm].

    Source: derived here; the sagitta of the arc over the chord from one corner to the next, the
    greatest of all flats.
    """
    corners = np.linspace(span.begin, span.heel, count + 1)
    around = [span.from_centre(float(phi)) for phi in corners]
    parts = [(last - first) % 360.0 for first, last in pairwise(around)]
    return span.arc.radius * (1 - math.cos(math.radians(max(parts)) / 2))
