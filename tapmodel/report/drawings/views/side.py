"""The side view with its dimensions, and the cutting end seen from the left."""

import math
from collections.abc import Sequence
from itertools import pairwise

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, HIDDEN, THIN, VISIBLE
from tapmodel.report.drawings.canvas import LINE
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lead_words import lead_words
from tapmodel.report.drawings.lettering import fitting_scale
from tapmodel.report.drawings.projection import draw_sign, side_of
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.drawings.views.end_view import cutting_end
from tapmodel.report.drawings.views.side_dimensions import (
    across_flats,
    diameters,
    lengths,
    title_line,
)
from tapmodel.report.units import Projection, Units
from tapmodel.shape.outlines.blank_profile import blank_profile
from tapmodel.shape.outlines.outline import Arc, Point
from tapmodel.shape.outlines.side_outline import SideLines, side_lines
from tapmodel.shape.turned import turned_lengths

_PAGE = 184.0  # that a page leaves between its margins [mm]
_WIDTH = 176.0  # of both views and what stands between them on paper, at most [mm]
_FRONT, _REAR = 8.0, 18.0  # of the dimensions before and behind the tap on paper [mm]
_TOLD_APART, _BOTH_LINES, _WIDE = 0.6, 1.2, 2.4
# pitches on paper from which teeth are drawn, their roots, and with wide lines [mm]
_GAP = 8.0  # between them and the end view on paper [mm]


def draw(design: TapDesign, projection: Projection, units: Units = Units.MM) -> Drawing:
    """Side view, cutting end to the left, a flat of the square towards the eye; end view."""
    length = design.tap.blank.overall_length + _widest(design)
    room = _WIDTH - _FRONT - _REAR - _GAP
    drawing = _drawn(design, projection, units, fitting_scale(length, room))
    if drawing.width_mm > _PAGE:
        # Lengths of a short thread on a thick tap are lettered far before the front.
        smaller = fitting_scale(length, 0.99 * drawing.scale * length)
        drawing = _drawn(design, projection, units, smaller)
    return drawing


def _drawn(design: TapDesign, projection: Projection, units: Units, scale: float) -> Drawing:
    sheet = Sheet("side", "Side view", scale, units)
    lines = side_lines(design.tap, design.figures.runout_end)
    _body(sheet, design)
    if _toothed(sheet, design):
        _teeth(sheet, design, lines)
    else:
        _thread(sheet, design)
    _rims(sheet, design, lines)
    _flute(sheet, design)
    _square(sheet, design)
    behind = across_flats(sheet, design)
    low = lengths(sheet, design)
    diameters(sheet, design)
    _end_view(sheet, design, behind, projection)
    end = title_line(sheet, low)
    sheet.lines_of_text((0.0, low - sheet.paper(LINE)), lead_words(sheet, design.tap.thread))
    draw_sign(sheet, (end + sheet.paper(12), low), projection)
    return sheet.finished()


def _body(sheet: Sheet, design: TapDesign) -> None:
    corners = [(z, r) for r, z in blank_profile(design.tap).corners]
    blank, side = design.tap.blank, design.tap.blank.square_across_flats / 2
    shape = [p for p in corners if p[1] > 0 and not _in_centre(design, p)]
    toothed = _toothed(sheet, design)
    start = design.tap.blank.thread_length if toothed else 0.0
    front = [p for p in shape if start <= p[0] < blank.square_start]
    rear = [
        (blank.square_start, blank.shank_diameter / 2),
        (blank.square_start, side),
        (blank.overall_length, side),
    ]
    if toothed:
        front = front[1:]  # the crest, where the profile may have a groove
    upper = [*([] if toothed else [(0.0, 0.0)]), *front, *rear, (blank.overall_length, 0.0)]
    sheet.path(upper, VISIBLE)
    sheet.path([(z, -r) for z, r in upper], VISIBLE)
    for (z, r), (_, after) in pairwise(front):
        if after != r and z > start:
            sheet.line((z, -r), (z, r), VISIBLE)
    over = sheet.paper(3)
    sheet.line((-over, 0.0), (blank.overall_length + over, 0.0), CENTRE)
    for rim, z, way in (
        (blank.front_centre, 0.0, 1),
        (blank.rear_centre, blank.overall_length, -1),
    ):
        tip = z + way * rim / 2 / math.tan(math.radians(30))
        if rim > 0:
            sheet.path([(z, rim / 2), (tip, 0.0), (z, -rim / 2)], HIDDEN)


def _in_centre(design: TapDesign, point: Point) -> bool:
    z, r = point
    blank = design.tap.blank
    rims = {(0.0, blank.front_centre / 2), (blank.overall_length, blank.rear_centre / 2)}
    return (z, r) in rims


def _thread(sheet: Sheet, design: TapDesign) -> None:
    """Root as a narrow line, end of the thread as a wide one, by ISO 6410-1."""
    (r, start), (_, end) = blank_profile(design.tap).root
    crest = design.tap.thread.major / 2
    for side in (-1, 1):
        sheet.line((start, side * r), (end, side * r), THIN)
    sheet.line((end, -crest), (end, crest), VISIBLE)
    sheet.line((design.tap.chamfer_length, -crest), (design.tap.chamfer_length, crest), VISIBLE)


def _toothed(sheet: Sheet, design: TapDesign) -> bool:
    """Whether teeth can be told apart on paper; else the thread is a narrow line, its root."""
    return sheet.scale * design.tap.thread.pitch >= _TOLD_APART


def _teeth(sheet: Sheet, design: TapDesign, lines: SideLines) -> None:
    """The thread as it is: its profile above and below, crests and roots across the lands."""
    point, end = design.tap.chamfer.point_diameter / 2, design.tap.blank.thread_length
    behind = turned_lengths(design.tap.blank, design.tap.thread.major)[1].start_radius
    for line, side in zip(lines.outline, (1, -1), strict=True):
        closed = [(0.0, 0.0), (0.0, side * point), *line[1:], (end, side * behind)]
        sheet.curve(closed, _of_teeth(sheet, design))
    for start, stop in lines.ends:
        sheet.line(start, stop, VISIBLE)
    wide = sheet.scale * design.tap.thread.pitch >= _BOTH_LINES
    for line in (*lines.rears, *lines.fronts, *lines.roots) if wide else lines.rears:
        sheet.curve(line, THIN)


def _rims(sheet: Sheet, design: TapDesign, lines: SideLines) -> None:
    """Of the flutes towards the eye, with the teeth in them where these can be told apart."""
    end = design.tap.blank.thread_length
    for rim in lines.rims:
        if rim[-1][0] > end:
            sheet.curve(rim, VISIBLE)
        elif _toothed(sheet, design):
            sheet.curve(rim, _of_teeth(sheet, design))
        else:
            sheet.line(_tip(rim[: len(rim) // 8 + 1]), _tip(rim[-len(rim) // 8 - 1 :]), VISIBLE)


def _tip(points: Sequence[Point]) -> Point:
    """The outermost of some."""
    return max(points, key=lambda point: abs(point[1]))


def _of_teeth(sheet: Sheet, design: TapDesign) -> str:
    """Wide lines, where they leave something white between them."""
    return VISIBLE if sheet.scale * design.tap.thread.pitch >= _WIDE else THIN


def _flute(sheet: Sheet, design: TapDesign) -> None:
    """Floor of the flute where the cutter's axis lies, and the ball where it stops."""
    flutes = design.tap.flutes
    ball, c, stop = flutes.cutter_diameter / 2, flutes.centre_radius, flutes.full_depth_length
    sheet.line((0.0, c - ball), (stop, c - ball), HIDDEN)
    beyond = min(design.figures.runout_end - stop, ball)
    end = 270.0 + math.degrees(math.asin(beyond / ball))
    sheet.pieces([Arc((stop, c), ball, 270.0, end)], HIDDEN)


def _square(sheet: Sheet, design: TapDesign) -> None:
    """Narrow crossed lines: the face is flat."""
    blank = design.tap.blank
    side, start, end = blank.square_across_flats / 2, blank.square_start, blank.overall_length
    sheet.line((start, -side), (end, side), THIN)
    sheet.line((start, side), (end, -side), THIN)


def _end_view(sheet: Sheet, design: TapDesign, behind: float, projection: Projection) -> None:
    """The cutting end, seen from the left, where the projection puts it.

    Behind the tap it stands after its dimensions, its words below; before the tap they stand
    above, for below are the words of the lengths.
    """
    radius, way = _widest(design) / 2, side_of(-1.0, projection)
    beside = radius + sheet.paper(_GAP)
    x = behind + beside if way > 0 else -sheet.paper(_FRONT) - beside
    cutting_end(sheet, design, (x, 0.0))
    first = -radius - sheet.paper(6) if way > 0 else radius + sheet.paper(6 + LINE)
    sheet.lines_of_text((x, first), ("cutting", "end"), "centre")


def _widest(design: TapDesign) -> float:
    return max(design.tap.thread.major, design.tap.blank.shank_diameter)
