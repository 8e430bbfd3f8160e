"""Lines of equal shear in a twisted section, and the section's outline."""

import cmath
import math
from dataclasses import dataclass
from functools import cached_property
from typing import cast

import numpy as np
from contourpy import LineType, contour_generator
from numpy.typing import NDArray

from tapmodel.prediction.strength.edge import edge_of
from tapmodel.prediction.strength.field import field_at
from tapmodel.prediction.strength.outlines import Slice, slices_of
from tapmodel.prediction.strength.record import Section
from tapmodel.prediction.strength.torsion import torsion_of
from tapmodel.shape.outlines.outline import Arc, Line, Piece, Point
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

Floats = NDArray[np.float64]

SHARES = (0.2, 0.4, 0.6, 0.8, 0.9)
"""Of the peak, along which lines are drawn."""

_ACROSS = 140
"""Points of the grid across the section."""

_REACH = 1.013
"""Half the grid by the section's radius: no point of it falls on the edge by round numbers."""

_SHORT = 0.12
"""Lines shorter than this share of the radius, which stand about corners, are left out."""

_BESIDE = 0.65
"""Of half the angle from flute to flute, within which a line ends at that flute."""

_PER_MM = 1e3  # shear in 1 N·mm [1/mm³] to that in 1 N·m [MPa]


@dataclass(frozen=True, slots=True)
class StressLine:
    """A line of equal shear, or of equal carbon.

    Attributes:
        share: of the peak of its section; or carbon [mass %].
        points: along it in the view, shape (n, 2) [mm].
        closed: whether the last is joined to the first.
    """

    share: float
    points: Floats
    closed: bool

    @property
    def length(self) -> float:
        """Of it, from the first point to the last [mm]."""
        return float(np.sum(np.hypot(*np.diff(self.points, axis=0).T)))


class Seen:
    """A section seen on the cutting end, the first flute on top."""

    def __init__(self, tap: Tap, section: Section) -> None:
        """`section` is one of the strength of `tap`."""
        self.section = section
        self._slice = _slice_of(tap, section)
        self._side = 1.0 if tap.thread.hand is Hand.RIGHT else -1.0

    @property
    def radius(self) -> float:
        """Of the circle about it [mm]."""
        return self._slice.radius

    def placed(self, points: NDArray[np.complex128]) -> Floats:
        """Points of the right-hand tap's section in the view, shape (n, 2) [mm]."""
        return np.stack([self._side * points.imag, points.real], axis=-1)

    def pieces(self) -> list[Piece]:
        """The outline in the view."""
        cut = self._slice
        if cut.is_round:
            rim: list[Piece] = [Arc((0.0, 0.0), cut.radius, 0.0, 360.0)]
        else:
            rim = [
                self._piece(piece, 360.0 * turn / cut.turns)
                for turn in range(cut.turns)
                for piece in cut.sector
            ]
        return [*rim, *([Arc((0.0, 0.0), cut.bore, 0.0, 360.0)] if cut.bore else [])]

    def peak(self) -> Point:
        """The highest in the view of the equal places at which the shear is greatest [mm]."""
        spot, turns = complex(*self.section.at), self._slice.turns
        turned = spot * np.exp(2j * math.pi * np.arange(turns) / turns)
        x, y = max(self.placed(turned).tolist(), key=lambda point: point[1])
        return x, y

    def end(self, share: float) -> Point:
        """Where a line of a share ends on the edge of the flute or flat to the left [mm].

        Of a line that ends nowhere there it is the point furthest to the left.
        """
        mine = [line for line in self.lines if line.share == share]
        ends = [line.points[[0, -1]] for line in mine if not line.closed]
        out = self._leftwards
        across = np.array([-out[1], out[0]])
        found = np.concatenate([np.zeros((0, 2)), *ends])
        away = np.arctan2(found @ across, found @ out)
        near = np.abs(away) < _BESIDE * math.pi / self._slice.turns
        if not near.any():
            x, y = min(np.concatenate([line.points for line in mine]).tolist())
            return x, y
        # On one side of the flute as long as there is any, that they stand in their order.
        order = np.where(near, np.where(away < 0, -away, math.pi + away), math.inf)
        x, y = found[int(np.argmin(order))].tolist()
        return x, y

    def opening(self, x: float) -> float:
        """How high the flute or flat to the left opens at `x`, within the section's height [mm]."""
        out = self._leftwards
        high = x * out[1] / out[0] if out[0] else math.copysign(self.radius, out[1])
        return float(np.clip(high, -self.radius, self.radius))

    @cached_property
    def _leftwards(self) -> Floats:
        """Direction of the flute or flat that lies furthest to the left, the lower one of two."""
        turns = self._slice.turns
        spokes = np.exp(2j * math.pi * np.arange(turns) / turns)
        return np.array(min(np.round(self.placed(spokes), 9).tolist()))

    @cached_property
    def lines(self) -> list[StressLine]:
        """Lines of equal shear, the lowest first."""
        if self._slice.is_round:
            return [_ring(share, share * self.radius) for share in SHARES if self._has(share)]
        return self._contours()

    def _has(self, share: float) -> bool:
        return share * self.radius > self._slice.bore

    def _contours(self) -> list[StressLine]:
        cut = self._slice
        torsion = torsion_of(edge_of(cut.sector, cut.turns, cut.bore))
        half = _REACH * torsion.edge.size
        across = np.linspace(-half, half, _ACROSS)
        x, y = np.meshgrid(across, across)
        shear = field_at(torsion, x, y).shear * _PER_MM / self.section.shear
        lined = contour_generator(
            x, y, np.ma.masked_invalid(shear), line_type=LineType.Separate, corner_mask=True
        )
        rim, cell = self.rim(), float(across[1] - across[0])
        found: list[StressLine] = []
        for share in SHARES:
            # Of this kind they are points alone, (n, 2).
            for line in cast("list[Floats]", lined.lines(share)):
                points = self.placed(line[:, 0] + 1j * line[:, 1])
                closed = bool(np.all(points[0] == points[-1]))
                points = points[:-1] if closed else _joined(points, rim, cell)
                found.append(StressLine(share, points, closed))
        return [line for line in found if line.length > _SHORT * self.radius]

    def rim(self) -> Floats:
        """Points along the outline in the view, close together, shape (n, 2) [mm]."""
        return np.concatenate([_along(piece) for piece in self.pieces()])

    def _piece(self, piece: Piece, turn: float) -> Piece:
        if isinstance(piece, Line):
            return Line(self._point(piece.start, turn), self._point(piece.end, turn))
        start, end = (
            90.0 - self._side * (angle + turn) for angle in (piece.start_angle, piece.end_angle)
        )
        return Arc(self._point(piece.centre, turn), piece.radius, start, end)

    def _point(self, point: Point, turn: float) -> Point:
        turned = complex(*point) * cmath.exp(1j * math.radians(turn))
        return self._side * turned.imag, turned.real


def _slice_of(tap: Tap, section: Section) -> Slice:
    return next(cut for cut in slices_of(tap) if cut.place is section.place and cut.z == section.z)


def _ring(share: float, radius: float) -> StressLine:
    turned = np.linspace(0.0, 2 * math.pi, 90, endpoint=False)
    return StressLine(share, radius * np.stack([np.cos(turned), np.sin(turned)], axis=-1), True)


def _along(piece: Piece) -> Floats:
    shares = np.linspace(0.0, 1.0, 200)[:, None]
    if isinstance(piece, Line):
        start, end = np.array(piece.start), np.array(piece.end)
        return start + shares * (end - start)
    turned = np.radians(piece.start_angle + shares * (piece.end_angle - piece.start_angle))
    return np.array(piece.centre) + piece.radius * np.hstack([np.cos(turned), np.sin(turned)])


def _joined(points: Floats, rim: Floats, cell: float) -> Floats:
    """A line that ends a cell of the grid before the rim, brought up to it."""
    ends: list[Floats] = []
    for end in (points[0], points[-1]):
        away = np.hypot(*(rim - end).T)
        nearest = int(np.argmin(away))
        ends.append(rim[nearest : nearest + 1] if away[nearest] < 2 * cell else points[:0])
    return np.concatenate([ends[0], points, ends[1]])
