"""Dimensions of the side view: lengths from the ends, diameters with their limits."""

from collections.abc import Sequence
from dataclasses import dataclass

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
_INSIDE = 9.0  # a length that its two arrows stand within [mm on paper]

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


@dataclass(frozen=True, slots=True)
class _Length:
    """One length [mm]: from where to where, its line and its lettering."""

    start: float
    z: float
    y: float
    text: str
    at: tuple[Point, Align]


def lengths(sheet: Sheet, design: TapDesign) -> Point:
    """All lengths from the cutting end, and the square's from the rear, one below the other.

    Returns where the lettering of the first two ends, beside which other words may stand, and the
    lowest y [mm].
    """
    low = -max(design.tap.thread.major, design.tap.blank.shank_diameter) / 2
    drawn = list[_Length]()
    for number, (start, z, words) in enumerate(_rows(design)):
        y = low - sheet.paper(7 + number * _ROW)
        text = f"{sheet.length(z - start)} {words}"
        length = _Length(start, z, y, text, _lettered(sheet, text, (start, z), y))
        _draw(sheet, design, length, drawn)
        drawn.append(length)
    besides = [_span(sheet, length)[1] for length in drawn[:2] if length.at[1] == "left"]
    return max(besides, default=0.0), low - sheet.paper(7 + len(drawn) * _ROW)


def _lettered(sheet: Sheet, text: str, ends: Point, y: float) -> tuple[Point, Align]:
    """Place of a length's lettering: over its line, or right beside the arrow at its inner end."""
    start, z = ends
    along = (z - start) * sheet.scale
    if sheet.width(text) <= along - 3:
        return ((start + z) / 2, y + sheet.paper(2.3)), "centre"
    clear = 0.5 + _ARROW
    if start > 0:
        return (start - sheet.paper(clear), y + sheet.paper(0.7)), "right"
    clear = 1.5 if along > _INSIDE else clear
    return (z + sheet.paper(clear), y + sheet.paper(0.7)), "left"


def _span(sheet: Sheet, length: _Length) -> tuple[float, float]:
    """From where to where its lettering reaches along the axis [mm]."""
    (x, _), align = length.at
    width = sheet.paper(sheet.width(length.text))
    left = x - {"left": 0.0, "centre": 0.5, "right": 1.0}[align] * width
    return left, left + width


def _draw(sheet: Sheet, design: TapDesign, length: _Length, above: Sequence[_Length]) -> None:
    """The dimension; lettering of those above it interrupts its extension line."""
    inner, y = length.start or length.z, length.y
    gap = sheet.paper(1.0)
    in_the_way = [
        other.at[0][1]
        for other in above
        if _span(sheet, other)[0] - gap < inner < _span(sheet, other)[1] + gap
    ]
    top = -_radius(design, inner)
    ends = ((0.0, -design.tap.chamfer.point_diameter / 2), (inner, top))
    if length.start > 0:
        # the overall length draws the extension line at the rear end
        sheet.across(((inner, y), (length.z, y)), length.text, length.at, upright=False)
    elif in_the_way:
        sheet.level(ends, (0.0, y), length.text, length.at)
    else:
        sheet.linear(ends, (0.0, y), length.text, length.at)
        return
    half, start = sheet.paper(LETTER_HEIGHT / 2 + 0.6), top - sheet.paper(0.6)
    for middle in in_the_way:
        sheet.line((inner, start), (inner, middle + half), THIN)
        start = middle - half
    sheet.line((inner, start), (inner, y - sheet.paper(1.5)), THIN)


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
    words = f"{sheet.size(thread.major)} thread, at least {sheet.at_least(limits.major_min)}"
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
