"""The outside of the tap in one section square to the axis: land by land, flutes apart.

A top is followed by arcs through three of its points, halved until they lie within
`ARC_DEVIATION` of it; a part without drop on a crest or root is an arc about the axis exactly.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations, pairwise
from typing import Protocol

from tapmodel.numerics import border
from tapmodel.shape.back_taper import narrowed, rises_before_edge
from tapmodel.shape.flute_section import crest_edge_angle
from tapmodel.shape.outlines.outline import Arc, Line, Piece, Point, arc_through
from tapmodel.shape.profile import Segment
from tapmodel.shape.relief import drop_law
from tapmodel.tap.tap import Tap
from tapmodel.words import ReliefPlace

ARC_DEVIATION = 2e-5
"""Largest distance between a fitted arc and the top it stands for [mm]."""

_CROSSING = 1e-11  # closeness of an angle at which surfaces change places [deg]
_APART = 1e-7  # borders closer than this are one [deg]: 0.1 nm at a radius of 60 mm
_ROUND = 1e-12  # radii that differ by this share of them are one
_Radii = tuple[float, tuple[float, ...]]  # an angle [deg], and those of all surfaces there [mm]
_FRACTIONS = tuple(n / 8 for n in range(9))


class Outside(Protocol):
    """What a section is bounded by outside the flutes."""

    def radius(self, angle: float) -> float:
        """Radius [mm] at the polar angle [deg]."""
        ...

    def pieces(self, start: float, end: float) -> tuple[Piece, ...]:
        """Outline from the polar angle `start` to `end`, the greater [deg]."""
        ...


def polar(radius: float, angle: float) -> Point:
    """Cartesian point of `radius` [mm] and `angle` [deg]."""
    return radius * math.cos(math.radians(angle)), radius * math.sin(math.radians(angle))


@dataclass(frozen=True)
class Threaded:
    """Top of one land in the threaded length: its section at `z` [mm] of the land of `flute`.

    `profile` is that of the thread.
    """

    tap: Tap
    z: float
    flute: float
    profile: tuple[Segment, ...]

    def radius(self, angle: float) -> float:
        """Radius at the polar angle [mm]."""
        return min(self._surfaces(angle))

    def pieces(self, start: float, end: float) -> tuple[Piece, ...]:
        """Arcs from the polar angle `start` to `end` [deg]."""
        found: list[Piece] = []
        for low, high in pairwise(self._borders(start, end)):
            found += self._fitted(low, high)
        return tuple(found)

    @cached_property
    def edge(self) -> float:
        """Polar angle of the crest edge [deg]."""
        return self.flute + crest_edge_angle(self.tap.flutes, self.tap.thread.major)

    @cached_property
    def _topped(self) -> Segment:
        """What the thread ends in above."""
        crest, flank, _, _ = self.profile
        return flank if rises_before_edge(self.tap) else crest

    @cached_property
    def _lost(self) -> float:
        """By which the thread is thinner in this section [mm]."""
        return narrowed(self.tap, self.z)

    @cached_property
    def _cone(self) -> float:
        """Radius of the chamfer before its relief [mm]."""
        chamfer = self.tap.chamfer
        return chamfer.point_diameter / 2 + self.z * math.tan(math.radians(chamfer.angle))

    @cached_property
    def _thread_drop(self) -> Callable[[float], float]:
        return drop_law(self.tap.relief.thread, self.tap.thread.major)

    @cached_property
    def _chamfer_drop(self) -> Callable[[float], float]:
        return drop_law(self.tap.relief.chamfer, self.tap.thread.major)

    def _surfaces(self, angle: float) -> tuple[float, ...]:
        """Radii of thread, chamfer cone and, where it is relieved alone, crest [mm]."""
        thread, relief = self.tap.thread, self.tap.relief.thread
        phi = angle - self.edge
        w = abs(math.remainder(self.z - thread.first_z - thread.lead * angle / 360, thread.pitch))
        crest, flank, root, _ = self.profile
        part = self._topped if w < crest.end else root if w > root.start else flank
        profile = float(part.radius(w)) - self._lost
        cone = self._cone - self._chamfer_drop(phi)
        if relief.applies_to is ReliefPlace.THREAD:
            return profile - self._thread_drop(phi), cone
        if relief.applies_to is ReliefPlace.CREST:
            return profile, cone, thread.major / 2 - self._thread_drop(phi) - self._lost
        return profile, cone

    def _borders(self, start: float, end: float) -> list[float]:
        """Angles between which one smooth surface is the outside, both ends included [deg]."""
        corners = sorted({start, end, *(a for a in self._corners(start, end) if start < a < end)})
        crossings: list[float] = []
        for low, high in pairwise(corners):
            steps = [low + (high - low) * fraction for fraction in _FRACTIONS]
            for left, right in pairwise((step, self._surfaces(step)) for step in steps):
                crossings += self._crossings(left, right)
        inner = [start]
        for angle in sorted({*corners, *crossings}):
            if inner[-1] + _APART < angle < end - _APART:
                inner.append(angle)
        return [*inner, end]

    def _corners(self, start: float, end: float) -> Iterator[float]:
        thread, reliefs = self.tap.thread, self.tap.relief
        for relief in (reliefs.thread, reliefs.chamfer):
            yield self.edge + relief.margin_angle
        period = 360 * thread.pitch / thread.lead
        crest, _, root, _ = self.profile
        for segment in (crest, root):
            # Where an arc is highest or lowest, two surfaces might change places twice about it.
            for offset in (segment.start, segment.end, *([segment.middle] if segment.arc else [])):
                at = (self.z - thread.first_z - offset) * 360 / thread.lead
                at += math.ceil((start - at) / period) * period
                while at < end:
                    yield at
                    at += period

    def _crossings(self, left: _Radii, right: _Radii) -> Iterator[float]:
        """Angles between which two surfaces change places, by bisection [deg]."""
        (low, below), (high, above) = left, right
        for one, other in combinations(range(len(below)), 2):
            before = below[one] < below[other]
            if before == (above[one] < above[other]):
                continue

            def same(angle: float, a: int = one, b: int = other, first: bool = before) -> bool:
                radii = self._surfaces(angle)
                return (radii[a] < radii[b]) == first

            yield border(same, low, high, _CROSSING)[1]

    def _fitted(self, low: float, high: float) -> list[Piece]:
        if high - low < 1e-9:
            return [Line(polar(self.radius(low), low), polar(self.radius(high), high))]
        angles = [low + (high - low) * n / 4 for n in range(5)]
        radii = [self.radius(angle) for angle in angles]
        if max(radii) - min(radii) < _ROUND * max(radii):
            return [Arc((0.0, 0.0), radii[0], low, high)]
        points = [polar(r, a) for r, a in zip(radii, angles, strict=True)]
        piece = arc_through(points[0], points[2], points[4])
        if all(_distance(piece, point) < ARC_DEVIATION for point in (points[1], points[3])):
            return [piece]
        return self._fitted(low, angles[2]) + self._fitted(angles[2], high)


@dataclass(frozen=True, slots=True)
class Plain:
    """Outside of the turned blank: a circle [mm], in the square with flats at +-`side` [mm]."""

    circle: float
    side: float = math.inf

    def radius(self, angle: float) -> float:
        """Radius at the polar angle [mm]."""
        return min(self.circle, self.side / math.cos(math.radians(math.remainder(angle, 90.0))))

    def pieces(self, start: float, end: float) -> tuple[Piece, ...]:
        """Arcs and flats from the polar angle `start` to `end` [deg]."""
        found: list[Piece] = []
        inner = sorted(angle for angle in self._corners() if start < angle < end)
        for low, high in pairwise([start, *inner, end]):
            if self.radius((low + high) / 2) == self.circle:
                found.append(Arc((0.0, 0.0), self.circle, low, high))
            else:
                ends = (polar(self.radius(low), low), polar(self.radius(high), high))
                found.append(Line(*ends))
        return tuple(found)

    def _corners(self) -> Iterator[float]:
        if self.circle <= self.side:
            return
        half = min(math.degrees(math.acos(self.side / self.circle)), 45.0)
        for middle in range(-360, 810, 90):
            yield middle - half
            if half < 45.0:
                yield middle + half


def _distance(piece: Piece, point: Point) -> float:
    """Of a point beside a piece from the piece [mm]."""
    if isinstance(piece, Arc):
        return abs(math.dist(piece.centre, point) - piece.radius)
    (x0, y0), (x1, y1) = piece.start, piece.end
    area = (x1 - x0) * (point[1] - y0) - (y1 - y0) * (point[0] - x0)
    return abs(area) / math.dist(piece.start, piece.end)
