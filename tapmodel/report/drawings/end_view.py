"""The tap seen from its cutting end, with the first flute on top.

Looking along +z with the direction of the first cutter axis upwards, y of the tap's frame points
to the right. A right-hand tap in use turns counter-clockwise in this view.
"""

import math

from tapmodel.design.flute_section import face_angle, heel_angle, section_of
from tapmodel.design.outline import Arc, Line, Loop, Piece, Point
from tapmodel.design.tap_design import TapDesign
from tapmodel.words import Hand

SEEN = "seen on the cutting end"


def placed(point: Point) -> Point:
    """A point of the tap's frame in the view."""
    return point[1], point[0]


def placed_loop(loop: Loop) -> list[Piece]:
    """An outline of the tap's frame in the view."""
    return [_placed_piece(piece) for piece in loop]


def _placed_piece(piece: Piece) -> Piece:
    if isinstance(piece, Line):
        return Line(placed(piece.start), placed(piece.end))
    return Arc(placed(piece.centre), piece.radius, 90.0 - piece.start_angle, 90.0 - piece.end_angle)


def polar(design: TapDesign, radius: float, theta: float) -> Point:
    """Point of the view at `radius` [mm] and the right-hand tap's angle `theta` [deg]."""
    turned = math.radians(theta)
    side = 1.0 if design.thread.hand is Hand.RIGHT else -1.0
    return side * radius * math.sin(turned), radius * math.cos(turned)


def in_flute(design: TapDesign, u: float, t: float, flute: int = 0) -> Point:
    """Point of the view at (u, t) of a flute's own frame [mm]."""
    return polar(
        design, math.hypot(u, t), design.flutes.angles[flute] + math.degrees(math.atan2(t, u))
    )


def on_face(design: TapDesign, radius: float, flute: int = 0) -> Point:
    """Point of a cutting face at `radius` [mm]."""
    angle = face_angle(section_of(design.flutes), radius)
    return polar(design, radius, design.flutes.angles[flute] + angle)


def on_heel(design: TapDesign, radius: float, flute: int = 0) -> Point:
    """Point of the heel wall of a flute at `radius` [mm]."""
    angle = heel_angle(section_of(design.flutes), radius)
    return polar(design, radius, design.flutes.angles[flute] + angle)


def polygon(pieces: list[Piece]) -> list[Point]:
    """Points along an outline, close enough for hatching."""
    points: list[Point] = []
    for piece in pieces:
        points.append(piece.start)
        if isinstance(piece, Arc):
            turn = piece.end_angle - piece.start_angle
            steps = max(1, math.ceil(abs(turn) / 4))
            points += [piece.at(piece.start_angle + turn * n / steps) for n in range(1, steps)]
    return points
