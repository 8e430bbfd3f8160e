"""Dimensions of the side view: lengths from the ends, diameters with their limits."""

import math
from collections.abc import Sequence

from tapmodel.designing.limits.crests import major_zone
from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import THIN
from tapmodel.report.drawings.canvas import LETTER_HEIGHT, LINE, Align
from tapmodel.report.drawings.lettering import degrees, scale_text
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import Units
from tapmodel.shape.outlines.outline import Point
from tapmodel.shape.turned import turned_lengths

_ROW = 6.0  # between dimension lines [mm on paper]
_NOTE = 4.6  # between lines of lettering [mm on paper]
_ARROW = 6.0  # of an arrow that stands outside of what it measures, with its tail [mm on paper]
_INSIDE = 6.0  # a length that its two arrows stand within [mm on paper]

_Placed = tuple[tuple[str, ...], tuple[Point, Align]]
"""Words of a length, line by line, the place of the first line, and how it is set there."""

_Note = tuple[float, float, str]
"""Where along the axis [mm], which diameter [mm] (0 of a second line of the one before), words."""


def across_flats(sheet: Sheet, design: TapDesign) -> float:
    """Dimension of the square behind the tap; returns where it ends [mm]."""
    blank = design.tap.blank
    side, end = blank.square_across_flats / 2, blank.overall_length
    at = end + sheet.paper(5)
    # inches stand under the mm, for beside them they leave the end view no room
    words, *under = f"□{sheet.mm(2 * side)}".split(" ")
    # of two lines both are as high as the extension lines may be, and stand behind their ends
    left, high = (at + sheet.paper(3), LINE / 2) if under else (at + sheet.paper(1.5), 0.0)
    text = (left, sheet.paper(high)), "left"
    sheet.linear(((end, -side), (end, side)), (at, 0.0), words, text, upright=True)
    sheet.lines_of_text((left, -sheet.paper(high)), under)
    return left + sheet.paper(max(map(sheet.width, (words, *under))))


def lengths(sheet: Sheet, design: TapDesign) -> float:
    """All lengths from the cutting end, and the square's from the rear, one below the other.

    Each is lettered where no extension line of a longer one passes, and a letter's height clear of
    the words of the one before. Returns the lowest y [mm].
    """
    y = -max(design.tap.thread.major, design.tap.blank.shank_diameter) / 2 - sheet.paper(7)
    rows, before = _rows(design), None
    for (start, z, name), after in zip(rows, [*rows[1:], None], strict=True):
        free = math.inf if after is None else after[0] or after[1]
        placed = _lettered(sheet, (start, z, free), name, y)
        lower = _crowded(sheet, before, placed)
        y -= lower
        words, ((x, high), align) = placed[0], placed[1]
        at = (x, high - lower), align
        if start > 0:
            # the overall length draws the extension line at the rear end
            sheet.across(((start, y), (z, y)), words[0], at, upright=False)
            sheet.line((start, -_radius(design, start)), (start, y - sheet.paper(1.5)), THIN)
        else:
            front = (0.0, -design.tap.chamfer.point_diameter / 2)
            ends = (front, (z, -_radius(design, z)))
            sheet.linear(ends, (0.0, y), words[0], at)
        sheet.lines_of_text((x, at[0][1] - sheet.paper(LINE)), words[1:], align)
        before = words, at
        y -= sheet.paper(_ROW + LINE / 2 * (len(words) - 1))
    return y


def _crowded(sheet: Sheet, before: _Placed | None, after: _Placed) -> float:
    """How much lower words must stand so as not to read on from those before them [mm]."""
    if before is None:
        return 0.0
    (left, right), (start, end) = _reach(sheet, before), _reach(sheet, after)
    letter = sheet.paper(LETTER_HEIGHT)
    if start > right + letter or left > end + letter:
        return 0.0
    (_, high), _ = before[1]
    lowest = high - sheet.paper(LINE * (len(before[0]) - 1))
    (_, first), _ = after[1]
    return max(first + 2 * letter - lowest, 0.0)


def _reach(sheet: Sheet, placed: _Placed) -> tuple[float, float]:
    """From where to where words stand along the axis [mm]."""
    words, ((x, _), align) = placed
    width = sheet.paper(max(map(sheet.width, words)))
    left = x - {"left": 0.0, "centre": 0.5, "right": 1.0}[align] * width
    return left, left + width


def _lettered(sheet: Sheet, ends: tuple[float, float, float], name: str, y: float) -> _Placed:
    """Words of a length, on several lines where they have less room, and the place of the first.

    Over its line, behind it as far as the next extension line leaves `ends` free, or before it;
    those of the square behind the rear end, where no other length is lettered.
    """
    start, z, free = ends
    p, along = sheet.paper, (z - start) * sheet.scale
    number, *inches = sheet.length(z - start).split(" ")
    whole = (" ".join((number, *inches, name)),)
    parts = (f"{number} {name}", *inches)
    if sheet.width(whole[0]) <= along - 3:
        return whole, (((start + z) / 2, y + p(2.3)), "centre")
    clear = p(1.5 if along > _INSIDE else 0.5 + _ARROW)
    if start > 0:
        # behind the extension line of the overall length, no wider than the square's other words
        stacked = (number, *inches, name)
        return stacked, ((z + clear, y + p(LINE / 2 * (len(stacked) - 1))), "left")
    if inches and sheet.width(parts[0]) <= along - 3:
        return parts, ((z / 2, y + p(LINE / 2)), "centre")
    for words in (whole, parts, (number, *inches, name)):
        if z + clear + p(max(map(sheet.width, words)) + 1) < free:
            return words, ((z + clear, y + p(LINE / 2 * (len(words) - 1))), "left")
    return parts, ((-clear, y + p(LINE / 2 * (len(parts) - 1))), "right")


def _rows(design: TapDesign) -> list[tuple[float, float, str]]:
    """From where to where [mm], and of what; that of the square counts from the rear."""
    blank, flutes = design.tap.blank, design.tap.flutes
    rows = [
        (design.tap.chamfer_length, "chamfer"),
        (blank.thread_length, "thread"),
        (flutes.full_depth_length, "full depth"),
        (design.figures.runout_end, "run-out"),
    ]
    if blank.neck_length > 0:
        rows.append((blank.thread_length + blank.neck_length, "neck"))
    return [
        *((0.0, z, words) for z, words in sorted(rows)),
        (blank.square_start, blank.overall_length, "square"),
        (0.0, blank.overall_length, "overall"),
    ]


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
    top = _under_notes(sheet, design, notes)
    for number, (z, diameter, words) in enumerate(notes):
        y = top + sheet.paper(3.5 + (len(notes) - 1 - number) * _NOTE)
        r, at = diameter / 2, (z + sheet.paper(1.5), y)
        if not diameter:
            sheet.text(at, words)
            continue
        sheet.line((z, r), (z, y), THIN)
        sheet.across(((z, -r), (z, r)), words, (at, "left"))
    _point(sheet, design, top + sheet.paper(3.5 + len(notes) * _NOTE))


def _under_notes(sheet: Sheet, design: TapDesign, notes: Sequence[_Note]) -> float:
    """What the notes stand above [mm]: the tap, or the square's arrow where the last reaches it."""
    blank, (z, _, words) = design.tap.blank, notes[-1]
    top = max(design.tap.thread.major, blank.shank_diameter) / 2
    if z + sheet.paper(1.5 + sheet.width(words)) < blank.overall_length + sheet.paper(4):
        return top
    return max(top, blank.square_across_flats / 2 + sheet.paper(_ARROW))


def _notes(sheet: Sheet, design: TapDesign) -> list[_Note]:
    thread, blank = design.tap.thread, design.tap.blank
    end = blank.thread_length
    behind = (max(end + blank.neck_length, design.figures.runout_end) + blank.square_start) / 2
    limits = design.limits
    low, high = sheet.at_least(limits.pitch_min), sheet.at_most(limits.pitch_max)
    least, most = major_zone(design)
    crests = f"{sheet.at_least(least)} to {sheet.at_most(most)}"
    words = f"{sheet.size(thread.major)} thread, {crests}"
    at = design.tap.chamfer_length + (end - design.tap.chamfer_length) / 3
    notes = [(at, thread.major, words), (at, 0.0, f"pitch ⌀{low} to {high}")]
    if sheet.wanted is not Units.BOTH:
        # numbers in one unit leave room for both on a line
        notes = [(at, thread.major, "; ".join(told for _, _, told in notes))]
    if thread.back_taper:
        taper = f"back taper {thread.back_taper:g} in 100, from the end of the chamfer"
        notes.append((at, 0.0, taper))
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
    told = f"lengths from the cutting end but the square's; {sheet.units_told}"
    words = f"scale {scale_text(sheet.scale)}; {told}"
    sheet.text((0.0, y), words)
    return sheet.paper(sheet.width(words))
