"""The side view: lengths from the cutting end, diameters with their limits."""

import math
from itertools import pairwise

from tapmodel.design.blank_profile import blank_profile
from tapmodel.design.outline import Arc, Point
from tapmodel.design.tap_design import TapDesign
from tapmodel.design.turned import turned_lengths
from tapmodel.export.dxf_document import CENTRE, HIDDEN, THIN, VISIBLE
from tapmodel.report.drawings.lettering import degrees, fitting_scale, mm, scale_text, size
from tapmodel.report.drawings.sheet import Align, Drawing, Sheet

_LENGTH = 166.0  # of the tap on paper, at most [mm]
_ROW = 7.5  # between dimension lines [mm on paper]


def draw(design: TapDesign) -> Drawing:
    """Side view, cutting end to the left, a flat of the square towards the eye."""
    scale = fitting_scale(design.blank.overall_length, _LENGTH)
    sheet = Sheet("side", "Side view", scale)
    _body(sheet, design)
    _thread(sheet, design)
    _flute(sheet, design)
    _square(sheet, design)
    _lengths(sheet, design)
    _diameters(sheet, design)
    return sheet.finished()


def _body(sheet: Sheet, design: TapDesign) -> None:
    corners = [(z, r) for r, z in blank_profile(design).corners]
    blank, side = design.blank, design.blank.square_across_flats / 2
    shape = [p for p in corners if p[1] > 0 and not _in_centre(design, p)]
    front = [p for p in shape if p[0] < blank.square_start]
    rear = [
        (blank.square_start, blank.shank_diameter / 2),
        (blank.square_start, side),
        (blank.overall_length, side),
    ]
    upper = [(0.0, 0.0), *front, *rear, (blank.overall_length, 0.0)]
    sheet.path(upper, VISIBLE)
    sheet.path([(z, -r) for z, r in upper], VISIBLE)
    for (z, r), (_, after) in pairwise(front):
        if after != r and z > 0:
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
    blank = design.blank
    rims = {(0.0, blank.front_centre / 2), (blank.overall_length, blank.rear_centre / 2)}
    return (z, r) in rims


def _thread(sheet: Sheet, design: TapDesign) -> None:
    """Root as a narrow line, end of the thread as a wide one, by ISO 6410-1."""
    (r, start), (_, end) = blank_profile(design).root
    crest = design.thread.major / 2
    for side in (-1, 1):
        sheet.line((start, side * r), (end, side * r), THIN)
    sheet.line((end, -crest), (end, crest), VISIBLE)
    sheet.line((design.chamfer.length, -crest), (design.chamfer.length, crest), VISIBLE)


def _flute(sheet: Sheet, design: TapDesign) -> None:
    """Floor of the flute where the cutter's axis lies, and the ball where it stops."""
    flutes = design.flutes
    ball, c, stop = flutes.cutter_diameter / 2, flutes.centre_radius, flutes.full_depth_length
    sheet.line((0.0, c - ball), (stop, c - ball), HIDDEN)
    beyond = min(flutes.runout_end - stop, ball)
    end = 270.0 + math.degrees(math.asin(beyond / ball))
    sheet.pieces([Arc((stop, c), ball, 270.0, end)], HIDDEN)


def _square(sheet: Sheet, design: TapDesign) -> None:
    """Narrow crossed lines: the face is flat."""
    blank = design.blank
    side, start, end = blank.square_across_flats / 2, blank.square_start, blank.overall_length
    sheet.line((start, -side), (end, side), THIN)
    sheet.line((start, side), (end, -side), THIN)
    at = (end + sheet.paper(4), 0.0)
    words = f"□{mm(2 * side)}"
    text = (at[0], side + sheet.paper(3.5)), "centre"
    sheet.linear(((end, -side), (end, side)), at, words, text, upright=True)


def _lengths(sheet: Sheet, design: TapDesign) -> None:
    blank, flutes = design.blank, design.flutes
    rows = [
        (design.chamfer.length, "chamfer"),
        (blank.thread_length, "thread"),
        (flutes.full_depth_length, "full depth"),
        (flutes.runout_end, "run-out"),
        (blank.thread_length + blank.neck_length, "neck"),
        (blank.square_start, "square"),
        (blank.overall_length, "overall"),
    ]
    if blank.neck_length == 0:
        del rows[4]
    low = -max(design.thread.major, blank.shank_diameter) / 2
    for number, (z, words) in enumerate(sorted(rows)):
        y = low - sheet.paper(8 + number * _ROW)
        text = f"{mm(z)} {words}"
        at: tuple[Point, Align] = ((z / 2, y + sheet.paper(2.4)), "centre")
        if sheet.width(text) > z * sheet.scale - 3:
            at = ((z + sheet.paper(6), y), "left")
        edge = -_radius(design, z)
        ends = ((0.0, -design.chamfer.point_diameter / 2), (z, edge))
        sheet.linear(ends, (0.0, y), text, at)
    y = low - sheet.paper(9 + len(rows) * _ROW)
    words = f"scale {scale_text(sheet.scale)}; all lengths from the cutting end; mm"
    sheet.text((blank.overall_length / 2, y), words, "centre")


def _radius(design: TapDesign, z: float) -> float:
    """Of the blank at z, the larger one at a step [mm]."""
    blank = design.blank
    if z >= blank.overall_length:
        return blank.square_across_flats / 2
    lengths = turned_lengths(blank, design.thread.major)
    return max(
        radius
        for piece in lengths
        if piece.start <= z <= piece.end
        for radius in (piece.start_radius, piece.end_radius)
    )


def _diameters(sheet: Sheet, design: TapDesign) -> None:
    thread, blank, chamfer = design.thread, design.blank, design.chamfer
    top = max(thread.major, blank.shank_diameter) / 2
    end = blank.thread_length
    behind = (max(end + blank.neck_length, design.flutes.runout_end) + blank.square_start) / 2
    pitch = f"pitch ⌀{thread.pitch_min:.3f} to {thread.pitch_max:.3f}"
    notes = [
        (
            chamfer.length + (end - chamfer.length) / 3,
            thread.major,
            f"{size(thread.major)} thread, at least {thread.major_min:.3f}; {pitch}",
        ),
        (behind, blank.shank_diameter, f"{size(blank.shank_diameter)} shank"),
    ]
    if blank.neck_length > 0:
        neck = f"{size(blank.neck_diameter)} neck"
        notes.insert(1, (end + 0.8 * blank.neck_length, blank.neck_diameter, neck))
    for number, (z, diameter, words) in enumerate(notes):
        y = top + sheet.paper(4 + (len(notes) - 1 - number) * 4.5)
        r = diameter / 2
        sheet.line((z, r), (z, y), THIN)
        sheet.across(((z, -r), (z, r)), words, ((z + sheet.paper(1.5), y), "left"))
    _point(sheet, design, top + sheet.paper(4 + len(notes) * 4.5))


def _point(sheet: Sheet, design: TapDesign, y: float) -> None:
    """In front of the tap, where nothing else stands."""
    chamfer = design.chamfer
    r, x = chamfer.point_diameter / 2, -sheet.paper(5)
    words = f"{size(chamfer.point_diameter)} point, cone {degrees(chamfer.angle)} to the axis"
    sheet.line((x, r), (x, y), THIN)
    at = (x + sheet.paper(1.5), y), "left"
    sheet.linear(((0.0, -r), (0.0, r)), (x, 0.0), words, at, upright=True)
