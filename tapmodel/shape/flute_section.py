"""Exact geometry of one straight flute left by a ball-nose cutter, in its own frame.

u points outwards along the cutter axis, t along +theta. The void is the strip
|t - offset| <= ball_radius for u >= centre_radius and the disc of that radius about
(centre_radius, offset) below. The wall on the +t side is the cutting face, the other the heel of
the land in front. Every formula is derived from that definition; lengths mm, angles degrees.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.tap.tap import Flutes

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class FluteSection:
    """One flute across the axis [mm].

    Attributes:
        ball_radius: of the cutter.
        offset: of the cutter axis; positive moves it towards the land whose face it cuts.
        centre_radius: of the ball's centre along the cutter axis.
    """

    ball_radius: float
    offset: float
    centre_radius: float

    @property
    def centre_distance(self) -> float:
        """Of the ball's centre from the tap's axis [mm]."""
        return math.hypot(self.centre_radius, self.offset)

    @property
    def core_diameter(self) -> float:
        """Of the web that the flutes leave [mm]; negative when they pass the axis."""
        return 2 * (self.centre_distance - self.ball_radius)


def section_of(flutes: Flutes) -> FluteSection:
    """The section that a record of flutes describes."""
    return FluteSection(flutes.cutter_diameter / 2, flutes.offset, flutes.centre_radius)


def face_angle(section: FluteSection, radius: float) -> float:
    """Polar angle of the cutting face at `radius` [mm], from the cutter axis [deg].

    Raises:
        ValueError: the face does not reach that radius.

    Source: derived here; on the straight wall `asin((e + b)/r)`, on the ball the crossing of
    two circles.
    """
    return _wall_angle(section, radius, 1)


def heel_angle(section: FluteSection, radius: float) -> float:
    """Polar angle of the heel wall at `radius` [mm]; see `face_angle`.

    Source: derived here.
    """
    return _wall_angle(section, radius, -1)


def _wall_angle(section: FluteSection, radius: float, side: int) -> float:
    wall = section.offset + side * section.ball_radius
    if radius >= math.hypot(section.centre_radius, wall):
        return math.degrees(math.asin(wall / radius))
    b, m = section.ball_radius, section.centre_distance
    half = math.acos((radius**2 + m**2 - b**2) / (2 * radius * m))
    return math.degrees(math.atan2(section.offset, section.centre_radius) + side * half)


def wall_angles(section: FluteSection, radii: Floats, side: int) -> Floats:
    """Polar angles of a wall at many `radii` [mm]: `side` 1 the face, -1 the heel [deg].

    Source: as `face_angle`.
    """
    wall = section.offset + side * section.ball_radius
    b, m = section.ball_radius, section.centre_distance
    straight = np.arcsin(np.clip(wall / radii, -1, 1))
    half = np.arccos(np.clip((radii**2 + m**2 - b**2) / (2 * radii * m), -1, 1))
    on_arc = math.atan2(section.offset, section.centre_radius) + side * half
    above = radii >= math.hypot(section.centre_radius, wall)
    return np.degrees(np.where(above, straight, on_arc))


def on_ball(section: FluteSection, radius: float) -> bool:
    """Whether the cutting face at `radius` lies on the ball's arc, below the straight wall.

    Source: derived here.
    """
    return radius < math.hypot(section.centre_radius, section.offset + section.ball_radius)


def rake(section: FluteSection, radius: float) -> float:
    """Rake of the cutting face at `radius` [mm]: polar angle less the face's own lean [deg].

    Source: derived here; on the ball it comes to `asin((r**2 + b**2 - m**2) / (2*r*b))`, m the
    distance of the ball's centre from the axis.
    """
    angle = face_angle(section, radius)
    if not on_ball(section, radius):
        return angle
    turned = math.radians(angle)
    along = section.centre_radius - radius * math.cos(turned)
    across = radius * math.sin(turned) - section.offset
    return angle - 90 + math.degrees(math.atan2(across, along))


def chordal_hook(section: FluteSection, crest: float, root: float) -> float:
    """Angle between the radius through the crest edge and the chord from there to the root.

    Args:
        section: the flute.
        crest: outer radius of the tooth [mm].
        root: inner radius of the tooth [mm].

    Returns:
        Hook, positive when the root of the face lies behind the radius [deg].

    Source: derived here.
    """
    outer, inner = (math.radians(face_angle(section, radius)) for radius in (crest, root))
    u = crest * math.cos(outer) - root * math.cos(inner)
    t = crest * math.sin(outer) - root * math.sin(inner)
    return math.degrees(outer - math.atan2(t, u))


def land_angle(section: FluteSection, count: int, radius: float) -> float:
    """Angle of a land at `radius` [mm] between `count` flutes [deg]; negative when cut away.

    Source: derived here.
    """
    return 360 / count - (face_angle(section, radius) - heel_angle(section, radius))


def flute_area(section: FluteSection, radius: float) -> float:
    """Area of one flute inside the circle of `radius` [mm], exactly [mm²].

    Source: derived here by Green's theorem, round the void: outer arc from heel to face, the
    face's straight wall, the ball's arc, the heel's straight wall.
    """
    heel, face = heel_angle(section, radius), face_angle(section, radius)
    twice = radius**2 * math.radians(face - heel)
    down, first = _leaving(section, radius, 1)
    up, last = _leaving(section, radius, -1)
    b, c, e = section.ball_radius, section.centre_radius, section.offset
    sweep = (last - first) % (2 * math.pi)
    twice += b**2 * sweep
    twice += b * c * (math.sin(last) - math.sin(first)) - b * e * (math.cos(last) - math.cos(first))
    return (twice + down - up) / 2


def _leaving(section: FluteSection, radius: float, side: int) -> tuple[float, float]:
    """Twice the area swept along the straight wall inwards, and where the ball's arc begins.

    The second value is an angle about the ball's centre from the u axis [rad].
    """
    angle = math.radians(_wall_angle(section, radius, side))
    u, t = radius * math.cos(angle), radius * math.sin(angle)
    wall = section.offset + side * section.ball_radius
    if radius >= math.hypot(section.centre_radius, wall):
        return wall * (u - section.centre_radius), side * math.pi / 2
    return 0.0, math.atan2(t - section.offset, u - section.centre_radius)


def crest_edge_angle(flutes: Flutes, major: float) -> float:
    """Polar angle of a land's crest edge from its own cutter axis [deg]; `major` diameter [mm].

    Land j carries the cutting face of flute j, so its edge lies at `angles[j]` plus this.

    Source: derived here.
    """
    return face_angle(section_of(flutes), major / 2)
