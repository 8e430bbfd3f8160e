"""Dimensions of the side view: lengths from the cutting end, diameters with their limits."""

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import THIN
from tapmodel.report.drawings.canvas import Align
from tapmodel.report.drawings.lettering import (
    degrees,
    past,
    scale_text,
)
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.shape.outlines.outline import Point
from tapmodel.shape.turned import turned_lengths

_ROW = 6.0  # between dimension lines [mm on paper]
_NOTE = 4.6  # between lines of lettering [mm on paper]


def across_flats(sheet: Sheet, design: TapDesign) -> float:
    """Dimension of the square behind the tap; returns where it ends [mm]."""
    blank = design.tap.blank
    side, end = blank.square_across_flats / 2, blank.overall_length
    words, at = f"□{sheet.mm(2 * side)}", end + sheet.paper(5)
    text = (at + sheet.paper(1.5), 0.0), "left"
    sheet.linear(((end, -side), (end, side)), (at, 0.0), words, text, upright=True)
    return at + sheet.paper(1.5 + sheet.width(words))


def lengths(sheet: Sheet, design: TapDesign) -> Point:
    """All lengths from the cutting end, one below the other.

    Returns where the lettering of the first two ends, beside which other words may stand, and the
    lowest y [mm].
    """
    rows, end = _rows(design), 0.0
    low = -max(design.tap.thread.major, design.tap.blank.shank_diameter) / 2
    for number, (z, words) in enumerate(rows):
        y = low - sheet.paper(7 + number * _ROW)
        text = f"{sheet.mm(z)} {words}"
        at = _lettered(sheet, text, y, [mark for mark, _ in rows[number:]])
        if number < 2 and at[1] == "left":
            end = max(end, at[0][0] + sheet.paper(sheet.width(text)))
        ends = ((0.0, -design.tap.chamfer.point_diameter / 2), (z, -_radius(design, z)))
        sheet.linear(ends, (0.0, y), text, at)
    return end, low - sheet.paper(7 + len(rows) * _ROW)


def _lettered(sheet: Sheet, text: str, y: float, marks: list[float]) -> tuple[Point, Align]:
    """Place of a length's lettering: over its line, or behind it clear of the longer ones."""
    z, *longer = marks
    if sheet.width(text) <= z * sheet.scale - 3:
        return (z / 2, y + sheet.paper(2.3)), "centre"
    room = sheet.paper(sheet.width(text) + 2)
    return (past(z + sheet.paper(5.5), room, longer) + sheet.paper(1), y + sheet.paper(0.7)), "left"


def _rows(design: TapDesign) -> list[tuple[float, str]]:
    blank, flutes = design.tap.blank, design.tap.flutes
    rows = [
        (design.tap.chamfer_length, "chamfer"),
        (blank.thread_length, "thread"),
        (flutes.full_depth_length, "full depth"),
        (design.figures.runout_end, "run-out"),
        (blank.square_start, "square"),
        (blank.overall_length, "overall"),
    ]
    if blank.neck_length > 0:
        rows.append((blank.thread_length + blank.neck_length, "neck"))
    return sorted(rows)


def _radius(design: TapDesign, z: float) -> float:
    """Of the blank at z, the larger one at a step [mm]."""
    blank = design.tap.blank
    if z >= blank.overall_length:
        return blank.square_across_flats / 2
    return max(
        radius
        for piece in turned_lengths(blank, design.tap.thread.major)
        if piece.start <= z <= piece.end
        for radius in (piece.start_radius, piece.end_radius)
    )


def diameters(sheet: Sheet, design: TapDesign) -> None:
    """Diameters with their limits above the view, the foremost highest."""
    notes = _notes(sheet, design)
    top = max(design.tap.thread.major, design.tap.blank.shank_diameter) / 2
    for number, (z, diameter, words) in enumerate(notes):
        y = top + sheet.paper(3.5 + (len(notes) - 1 - number) * _NOTE)
        r = diameter / 2
        sheet.line((z, r), (z, y), THIN)
        sheet.across(((z, -r), (z, r)), words, ((z + sheet.paper(1.5), y), "left"))
    _point(sheet, design, top + sheet.paper(3.5 + len(notes) * _NOTE))


def _notes(sheet: Sheet, design: TapDesign) -> list[tuple[float, float, str]]:
    thread, blank = design.tap.thread, design.tap.blank
    end = blank.thread_length
    behind = (max(end + blank.neck_length, design.figures.runout_end) + blank.square_start) / 2
    limits = design.limits
    low, high = sheet.at_least(limits.pitch_min), sheet.at_most(limits.pitch_max)
    words = f"{sheet.size(thread.major)} thread, at least {sheet.at_least(limits.major_min)}"
    at = design.tap.chamfer_length + (end - design.tap.chamfer_length) / 3
    notes = [(at, thread.major, f"{words}; pitch ⌀{low} to {high}")]
    if blank.neck_length > 0:
        neck = f"{sheet.size(blank.neck_diameter)} neck"
        notes.append((end + 0.8 * blank.neck_length, blank.neck_diameter, neck))
    return [*notes, (behind, blank.shank_diameter, f"{sheet.size(blank.shank_diameter)} shank")]


def _point(sheet: Sheet, design: TapDesign, y: float) -> None:
    """In front of the tap, where nothing else stands."""
    chamfer = design.tap.chamfer
    r, x = chamfer.point_diameter / 2, -sheet.paper(5)
    words = f"{sheet.size(chamfer.point_diameter)} point, cone {degrees(chamfer.angle)} to the axis"
    sheet.line((x, r), (x, y), THIN)
    at = (x + sheet.paper(1.5), y), "left"
    sheet.linear(((0.0, -r), (0.0, r)), (x, 0.0), words, at, upright=True)


def title_line(sheet: Sheet, y: float) -> float:
    """What the drawing states of itself, under it; returns where the lettering ends [mm]."""
    told = f"all lengths from the cutting end; {sheet.units}"
    words = f"scale {scale_text(sheet.scale)}; {told}"
    sheet.text((0.0, y), words)
    return sheet.paper(sheet.width(words))
