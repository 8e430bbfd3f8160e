"""The drive square: from the side, and seen from the rear where the projection puts that view."""

import math

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, HIDDEN, THIN, VISIBLE
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import fitting_scale
from tapmodel.report.drawings.projection import draw_sign, side_of
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.drawings.views.end_view import moved
from tapmodel.report.units import Projection, Units
from tapmodel.shape.outlines.outline import Point
from tapmodel.shape.outlines.section import section_outline

_VIEW = 30.0  # of the shank and of the square's length on paper, at most [mm]
_SHANK = 9.0  # length of shank that is shown on paper [mm]


def draw(design: TapDesign, projection: Projection, units: Units = Units.MM) -> Drawing:
    """Side view with the length, end view with flats and corners."""
    blank = design.tap.blank
    largest = max(blank.shank_diameter, blank.square_length)
    sheet = Sheet("square", "The square", fitting_scale(largest, _VIEW), units)
    _side_view(sheet, design)
    way = side_of(1.0, projection)
    beside = _beside(sheet, design)
    x = blank.square_length + beside if way > 0 else -sheet.paper(_SHANK) - beside
    _end_view(sheet, design, (x, 0.0))
    middle = (x + blank.square_length / 2) / 2
    low = -blank.shank_diameter / 2 - sheet.paper(18.5)
    draw_sign(sheet, (middle - sheet.paper(14), low), projection)
    sheet.text((middle, low), sheet.scale_told)
    return sheet.finished()


def _beside(sheet: Sheet, design: TapDesign) -> float:
    """From the end of the side view to the middle of the other, clear of its words [mm]."""
    blank, p = design.tap.blank, sheet.paper
    shank = p(sheet.width(_shank_words(sheet, design)) + 8 - _SHANK) - blank.square_length
    below = sheet.width(_flats_words(sheet, design)) + sheet.width(_length_words(sheet, design))
    return max(
        blank.shank_diameter / 2 + max(p(14), shank), p(below / 2 + 2) - blank.square_length / 2
    )


def _shank_words(sheet: Sheet, design: TapDesign) -> str:
    return f"{sheet.size(design.tap.blank.shank_diameter)} shank"


def _flats_words(sheet: Sheet, design: TapDesign) -> str:
    return f"{sheet.mm(design.tap.blank.square_across_flats)} across flats"


def _length_words(sheet: Sheet, design: TapDesign) -> str:
    return sheet.length(design.tap.blank.square_length)


def corners(design: TapDesign) -> float:
    """Width over the corners, which end at the shank's surface where they reach it [mm]."""
    blank = design.tap.blank
    return min(math.sqrt(2) * blank.square_across_flats, blank.shank_diameter)


def _end_view(sheet: Sheet, design: TapDesign, centre: Point) -> None:
    blank, x = design.tap.blank, centre[0]
    radius, side = blank.shank_diameter / 2, blank.square_across_flats / 2
    middle = blank.square_start + (blank.square_length - blank.rear_chamfer) / 2
    sheet.pieces(moved(section_outline(design.tap, middle).loops[0], centre), VISIBLE)
    sheet.circle(centre, radius, VISIBLE)
    if blank.rear_centre > 0:
        sheet.circle(centre, blank.rear_centre / 2, VISIBLE)
    over = radius + sheet.paper(2.5)
    sheet.line((x - over, 0.0), (x + over, 0.0), CENTRE)
    sheet.line((x, -over), (x, over), CENTRE)
    low = -radius - sheet.paper(8)
    text = (x, low - sheet.paper(3.4)), "centre"
    ends = ((x - side, -side * 0.6), (x + side, -side * 0.6))
    sheet.linear(ends, (x, low), _flats_words(sheet, design), text)
    high = radius + sheet.paper(8.2)
    corner = corners(design) / 2 / math.sqrt(2)
    words = f"{sheet.size(corners(design))} over corners"
    sheet.arrow((x + corner, high - sheet.paper(2)), (x + corner, corner))
    sheet.text((x, high), words, "centre")


def _side_view(sheet: Sheet, design: TapDesign) -> None:
    """A short length of the shank, broken off, and the square with a flat towards the eye."""
    blank = design.tap.blank
    radius, side = blank.shank_diameter / 2, blank.square_across_flats / 2
    left, end = -sheet.paper(_SHANK), blank.square_length
    upper = [(left, radius), (0.0, radius), (0.0, side), (end, side), (end, 0.0)]
    sheet.path(upper, VISIBLE)
    sheet.path([(x, -y) for x, y in upper], VISIBLE)
    sheet.line((0.0, -side), (0.0, side), VISIBLE)
    wave = [
        (left + sheet.paper(0.8) * math.sin(n * math.pi / 4), radius * (n / 8 - 1))
        for n in range(17)
    ]
    sheet.path(wave, THIN)
    sheet.line((0.0, -side), (end, side), THIN)
    sheet.line((0.0, side), (end, -side), THIN)
    sheet.line((left - sheet.paper(2.5), 0.0), (end + sheet.paper(2.5), 0.0), CENTRE)
    if blank.rear_centre > 0:
        rim = blank.rear_centre / 2
        tip = end - rim / math.tan(math.radians(30))
        sheet.path([(end, rim), (tip, 0.0), (end, -rim)], HIDDEN)
    low = -radius - sheet.paper(8)
    text = (end / 2, low - sheet.paper(3.4)), "centre"
    sheet.linear(((0.0, -side), (end, -side)), (0.0, low), _length_words(sheet, design), text)
    at, high = left + sheet.paper(4), radius + sheet.paper(4)
    words = _shank_words(sheet, design)
    sheet.line((at, radius), (at, high), THIN)
    sheet.across(((at, -radius), (at, radius)), words, ((at + sheet.paper(1.5), high), "left"))
