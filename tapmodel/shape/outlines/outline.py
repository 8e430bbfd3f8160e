"""Plane outlines of straight lines and circular arcs: ends, area, mirror image.

Lengths mm, angles degrees. An outline is run with the body at its left: round the outside
counter-clockwise, round a hole clockwise.
"""

import math
from dataclasses import dataclass
from typing import Self

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Line:
    """A straight piece from `start` to `end` [mm]."""

    start: Point
    end: Point

    @property
    def swept(self) -> float:
        """Half the integral of x dy - y dx along the piece [mm²]."""
        return (self.start[0] * self.end[1] - self.start[1] * self.end[0]) / 2

    def mirrored(self) -> Self:
        """The image in the line y = 0, run the other way round."""
        return type(self)((self.end[0], -self.end[1]), (self.start[0], -self.start[1]))


@dataclass(frozen=True, slots=True)
class Arc:
    """A circular piece.

    Attributes:
        centre, radius: of the circle [mm].
        start_angle, end_angle: of the ends about the centre [deg]; counter-clockwise when the
            end is the greater, clockwise when it is the less.
    """

    centre: Point
    radius: float
    start_angle: float
    end_angle: float

    @property
    def start(self) -> Point:
        """Where it begins [mm]."""
        return self.at(self.start_angle)

    @property
    def end(self) -> Point:
        """Where it ends [mm]."""
        return self.at(self.end_angle)

    def at(self, angle: float) -> Point:
        """Point of the circle in the direction `angle` [deg] from the centre [mm]."""
        turned = math.radians(angle)
        return (
            self.centre[0] + self.radius * math.cos(turned),
            self.centre[1] + self.radius * math.sin(turned),
        )

    @property
    def swept(self) -> float:
        """Half the integral of x dy - y dx along the piece [mm²]."""
        (x0, y0), (x1, y1) = self.start, self.end
        about = self.radius**2 * math.radians(self.end_angle - self.start_angle)
        return (about + self.centre[0] * (y1 - y0) - self.centre[1] * (x1 - x0)) / 2

    def mirrored(self) -> Self:
        """The image in the line y = 0, run the other way round."""
        centre = (self.centre[0], -self.centre[1])
        return type(self)(centre, self.radius, -self.end_angle, -self.start_angle)


Piece = Line | Arc
Loop = tuple[Piece, ...]


@dataclass(frozen=True, slots=True)
class Outline:
    """Closed loops, each piece beginning where the one before it ends."""

    loops: tuple[Loop, ...]

    @property
    def area(self) -> float:
        """By Green's theorem; holes count negative because they are run clockwise [mm²]."""
        return sum(piece.swept for loop in self.loops for piece in loop)

    def mirrored(self) -> Self:
        """The image in the line y = 0."""
        return type(self)(tuple(tuple(p.mirrored() for p in reversed(loop)) for loop in self.loops))


def full_circle(radius: float, *, hole: bool = False) -> Loop:
    """Circle of `radius` about the axis [mm]."""
    return (Arc((0.0, 0.0), radius, 360.0, 0.0) if hole else Arc((0.0, 0.0), radius, 0.0, 360.0),)


def arc_through(first: Point, middle: Point, last: Point) -> Piece:
    """The arc through three points in order, or the line when they lie straight.

    Source: derived here; the centre is equally far from all three.
    """
    (ax, ay), (bx, by) = ((point[0] - first[0], point[1] - first[1]) for point in (middle, last))
    twice = 2 * (ax * by - ay * bx)
    if abs(twice) < 1e-9 * math.hypot(bx, by) ** 2:
        return Line(first, last)
    a2, b2 = ax * ax + ay * ay, bx * bx + by * by
    cx, cy = (by * a2 - ay * b2) / twice, (ax * b2 - bx * a2) / twice
    start = math.degrees(math.atan2(-cy, -cx))
    end = math.degrees(math.atan2(by - cy, bx - cx))
    turn = (end - start) % 360.0 if twice > 0 else -((start - end) % 360.0)
    return Arc((first[0] + cx, first[1] + cy), math.hypot(cx, cy), start, start + turn)
