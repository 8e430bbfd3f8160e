"""The drive square: seen from the rear, and from the side."""

import math

from tapmodel.design.section import section_outline
from tapmodel.design.tap_design import TapDesign
from tapmodel.export.dxf_document import CENTRE, HIDDEN, THIN, VISIBLE
from tapmodel.report.drawings.lettering import fitting_scale, mm, scale_text, size
from tapmodel.report.drawings.sheet import Drawing, Sheet

_VIEW = 42.0  # of the shank on paper, at most [mm]


def draw(design: TapDesign) -> Drawing:
    """End view with flats and corners, side view with the length."""
    sheet = Sheet("square", "The square", fitting_scale(design.blank.shank_diameter, _VIEW))
    _end_view(sheet, design)
    _side_view(sheet, design)
    return sheet.finished()


def corners(design: TapDesign) -> float:
    """Width over the corners, which end at the shank's surface where they reach it [mm]."""
    blank = design.blank
    return min(math.sqrt(2) * blank.square_across_flats, blank.shank_diameter)


def _end_view(sheet: Sheet, design: TapDesign) -> None:
    blank = design.blank
    radius, side = blank.shank_diameter / 2, blank.square_across_flats / 2
    middle = blank.square_start + (blank.square_length - blank.rear_chamfer) / 2
    shape = section_outline(design, middle).loops[0]
    sheet.pieces(shape, VISIBLE)
    sheet.circle((0.0, 0.0), radius, VISIBLE)
    if blank.rear_centre > 0:
        sheet.circle((0.0, 0.0), blank.rear_centre / 2, VISIBLE)
    over = radius + sheet.paper(3)
    sheet.line((-over, 0.0), (over, 0.0), CENTRE)
    sheet.line((0.0, -over), (0.0, over), CENTRE)
    low = -radius - sheet.paper(8)
    text = (0.0, low + sheet.paper(2.5)), "centre"
    ends = ((-side, -side * 0.6), (side, -side * 0.6))
    sheet.linear(ends, (0.0, low), f"{mm(2 * side)} across flats", text)
    corner = corners(design) / 2 / math.sqrt(2)
    elbow = (corner + sheet.paper(10), radius + sheet.paper(3))
    words = f"{size(corners(design))} over corners"
    sheet.leader((corner, corner), elbow, words)
    sheet.text((0.0, low - sheet.paper(5)), "seen on the square", "centre")


def _side_view(sheet: Sheet, design: TapDesign) -> None:
    blank = design.blank
    radius, side = blank.shank_diameter / 2, blank.square_across_flats / 2
    left = radius + sheet.paper(50)
    back, end = left + sheet.paper(22), left + sheet.paper(22) + blank.square_length
    upper = [(left, radius), (back, radius), (back, side), (end, side), (end, 0.0)]
    sheet.path(upper, VISIBLE)
    sheet.path([(x, -y) for x, y in upper], VISIBLE)
    wave = [
        (left + sheet.paper(0.8) * math.sin(n * math.pi / 4), radius * (n / 8 - 1))
        for n in range(17)
    ]
    sheet.path(wave, THIN)
    sheet.line((back, -side), (end, side), THIN)
    sheet.line((back, side), (end, -side), THIN)
    sheet.line((left - sheet.paper(3), 0.0), (end + sheet.paper(3), 0.0), CENTRE)
    if blank.rear_centre > 0:
        rim = blank.rear_centre / 2
        tip = end - rim / math.tan(math.radians(30))
        sheet.path([(end, rim), (tip, 0.0), (end, -rim)], HIDDEN)
    low = -radius - sheet.paper(8)
    text = ((back + end) / 2, low + sheet.paper(2.5)), "centre"
    sheet.linear(((back, -side), (end, -side)), (back, low), mm(blank.square_length), text)
    words = f"{size(blank.shank_diameter)} shank"
    at = left + sheet.paper(10)
    high = radius + sheet.paper(4)
    sheet.line((at, radius), (at, high), THIN)
    sheet.across(((at, -radius), (at, radius)), words, ((at + sheet.paper(1.5), high), "left"))
    words = f"scale {scale_text(sheet.scale)}"
    sheet.text(((left + end) / 2, low - sheet.paper(5)), words, "centre")
