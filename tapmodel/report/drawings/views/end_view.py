"""The tap seen from its cutting end, with the first flute on top.

Looking along +z with the direction of the first cutter axis upwards, y of the tap's frame points
to the right. A right-hand tap in use turns counter-clockwise in this view.
"""

import math
from collections.abc import Iterable
from dataclasses import replace

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, THIN, VISIBLE
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import Units
from tapmodel.shape.flute_section import face_angle, heel_angle, section_of
from tapmodel.shape.outlines.outline import Arc, Line, Loop, Piece, Point
from tapmodel.shape.outlines.section import full_thread_height, section_outline
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


def moved(pieces: Iterable[Piece], by: Point) -> list[Piece]:
    """Pieces shifted within the picture."""
    return [_moved(piece, by) for piece in pieces]


def _moved(piece: Piece, by: Point) -> Piece:
    def shifted(point: Point) -> Point:
        return point[0] + by[0], point[1] + by[1]

    if isinstance(piece, Line):
        return Line(shifted(piece.start), shifted(piece.end))
    return replace(piece, centre=shifted(piece.centre))


def cutting_end(sheet: Sheet, design: TapDesign, centre: Point) -> None:
    """The tap seen on its cutting end: front face, flutes, crests, and the shank if thicker."""
    blank, height = design.tap.blank, full_thread_height(design.tap)
    for z, layer in ((0.0, THIN), (height, VISIBLE)):
        for loop in section_outline(design.tap, z).loops:
            sheet.pieces(moved(placed_loop(loop), centre), layer)
    widest = max(design.tap.thread.major, blank.shank_diameter) / 2
    if 2 * widest > design.tap.thread.major:
        sheet.circle(centre, widest, VISIBLE)
    over = widest + sheet.paper(2.5)
    x, y = centre
    sheet.line((x - over, y), (x + over, y), CENTRE)
    sheet.line((x, y - over), (x, y + over), CENTRE)


def true_end(design: TapDesign, units: Units = Units.MM) -> Drawing:
    """The cutting end as large as the tap itself, to lay the tap on."""
    sheet = Sheet("end", "Cutting end", 1.0, units)
    cutting_end(sheet, design, (0.0, 0.0))
    return sheet.finished()


def polar(design: TapDesign, radius: float, theta: float) -> Point:
    """Point of the view at `radius` [mm] and the right-hand tap's angle `theta` [deg]."""
    turned = math.radians(theta)
    side = 1.0 if design.tap.thread.hand is Hand.RIGHT else -1.0
    return side * radius * math.sin(turned), radius * math.cos(turned)


def in_flute(design: TapDesign, u: float, t: float, flute: int = 0) -> Point:
    """Point of the view at (u, t) of a flute's own frame [mm]."""
    return polar(
        design, math.hypot(u, t), design.tap.flutes.angles[flute] + math.degrees(math.atan2(t, u))
    )


def on_face(design: TapDesign, radius: float, flute: int = 0) -> Point:
    """Point of a cutting face at `radius` [mm]."""
    angle = face_angle(section_of(design.tap.flutes), radius)
    return polar(design, radius, design.tap.flutes.angles[flute] + angle)


def on_heel(design: TapDesign, radius: float, flute: int = 0) -> Point:
    """Point of the heel wall of a flute at `radius` [mm]."""
    angle = heel_angle(section_of(design.tap.flutes), radius)
    return polar(design, radius, design.tap.flutes.angles[flute] + angle)


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
