"""The walls of the flutes in one section square to the axis: where they stand, what they trace.

At full depth the void of a flute is the strip and the disc of `tapmodel.shape.flute_section`;
where the cutter runs out it is the same figure with the half width of the cutter there.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

from tapmodel.numerics import rising_root
from tapmodel.shape.flute_section import FluteSection, face_angle, heel_angle
from tapmodel.shape.outlines.outline import Arc, Line, Piece, Point
from tapmodel.tap.tap import Flutes

_MEET = 1e-13
"""Radial gap at which a wall meets the outside [mm]."""

Top = Callable[[float], float]
"""Radius of the body's outside [mm] at a polar angle [deg]."""


@dataclass(frozen=True, slots=True)
class Flute:
    """One flute in a section: its direction [deg] and its void there."""

    angle: float
    void: FluteSection

    @property
    def floor(self) -> float:
        """Least radius of the void [mm]."""
        return self.void.centre_distance - self.void.ball_radius

    @property
    def floor_angle(self) -> float:
        """Polar angle of the floor [deg]."""
        return self.angle + math.degrees(math.atan2(self.void.offset, self.void.centre_radius))

    def wall_angle(self, radius: float, *, heel: bool) -> float:
        """Polar angle of a wall at `radius` [mm], at the floor when that is deeper [deg]."""
        if radius <= self.floor:
            return self.floor_angle
        return self.angle + (heel_angle if heel else face_angle)(self.void, radius)

    def meeting(self, top: Top, highest: float, *, heel: bool) -> float:
        """Radius at which a wall meets the outside, the floor's where it does not cut [mm].

        Args:
            top: radius of the outside by polar angle.
            highest: a radius that the outside never exceeds [mm].
            heel: the heel wall instead of the cutting face.
        """

        def over(radius: float) -> float:
            return radius - top(self.wall_angle(radius, heel=heel))

        return rising_root(over, self.floor, highest, _MEET)

    def trace(self, heel_from: float, face_to: float) -> tuple[Piece, ...]:
        """Outline down the heel wall, round the floor and up the cutting face.

        Args:
            heel_from: radius at which the heel wall begins [mm].
            face_to: radius at which the face ends [mm].
        """
        down, start = self._part(heel_from, heel=True)
        up, end = self._part(face_to, heel=False)
        centre = self._place(self.void.centre_radius, self.void.offset)
        ball = Arc(centre, self.void.ball_radius, self.angle + start, self.angle + end)
        return (*down, ball, *(Line(piece.end, piece.start) for piece in up))

    def wall(self, outer: float, inner: float, *, heel: bool) -> tuple[Piece, ...]:
        """One wall alone, inwards on the heel and outwards on the face, above the floor [mm]."""
        straight, above = self._part(outer, heel=heel)
        lower, below = self._part(inner, heel=heel)
        pieces: tuple[Piece, ...]
        if lower:
            pieces = (Line(straight[0].start, lower[0].start),)
        else:
            centre = self._place(self.void.centre_radius, self.void.offset)
            turn = (self.angle + above, self.angle + below)
            ends = turn if heel else turn[::-1]
            ball = Arc(centre, self.void.ball_radius, *ends)
            if heel:
                pieces = (*straight, ball)
            else:
                pieces = (ball, *(Line(line.end, line.start) for line in straight))
        return pieces

    def _part(self, radius: float, *, heel: bool) -> tuple[tuple[Line, ...], float]:
        """Straight part of a wall from `radius` inwards, and where the ball's arc takes over.

        The second value is an angle about the ball's centre from the cutter axis, 180 at the
        side of the tap's axis [deg].
        """
        turned = math.radians(self.wall_angle(radius, heel=heel) - self.angle)
        u, t = radius * math.cos(turned), radius * math.sin(turned)
        c, e, b = self.void.centre_radius, self.void.offset, self.void.ball_radius
        if u > c:
            t = e - b if heel else e + b
            return (Line(self._place(u, t), self._place(c, t)),), 270.0 if heel else 90.0
        return (), math.degrees(math.atan2(t - e, u - c)) % 360.0

    def _place(self, u: float, t: float) -> Point:
        cosine, sine = math.cos(math.radians(self.angle)), math.sin(math.radians(self.angle))
        return u * cosine - t * sine, u * sine + t * cosine


def flutes_at(flutes: Flutes, z: float) -> tuple[Flute, ...]:
    """The flutes in the section at `z` [mm] in order of angle; none behind the cutter's end.

    Source: derived here; ball and shank of the cutter are cut alike at
    `sqrt(b**2 - (z - full_depth_length)**2)` from their axes.
    """
    ball, beyond = flutes.cutter_diameter / 2, max(z - flutes.full_depth_length, 0.0)
    if beyond >= ball:
        return ()
    void = FluteSection(math.sqrt(ball**2 - beyond**2), flutes.offset, flutes.centre_radius)
    return tuple(Flute(angle, void) for angle in sorted(flutes.angles))
