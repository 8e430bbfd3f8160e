"""A flank of the tap enlarged, and beside it that of the least and of the largest hole."""

import math

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, HIDDEN, THIN, VISIBLE
from tapmodel.report.drawings.lettering import fitting_scale, scale_text
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.shape.outlines.outline import Point

RADIUS = 9.0
"""Of the detail on paper [mm]."""

_APART = 6.3  # from the tap's flank to the furthest other on paper, at most [mm]
_LEAST = 1.0  # radius of the circle about the place on paper [mm]
_LETTER = 2.6  # from that circle to the middle of its letter on paper [mm]
_TURNS = 24  # of the detail's rim that bounds the hatching, in straight pieces


def flank_detail(sheet: Sheet, design: TapDesign, centre: Point) -> None:
    """Mark a place on a flank of the picture and draw it enlarged about `centre` [mm].

    The three flanks lie so near to each other that at the scale of the thread form the tap's wide
    line covers all. Nothing where they can be told apart there.
    """
    thread, p = design.tap.thread, sheet.paper
    apart = [_apart(design, limit) for limit in (design.hole.pitch_min, design.hole.pitch_max)]
    scale = fitting_scale(max(map(abs, apart)), _APART)
    if scale <= sheet.scale:
        return
    place = thread.pitch / 4, 0.0
    seen = max(RADIUS * sheet.scale / scale, _LEAST)
    aside = p((seen + _LETTER) * math.sqrt(0.5))
    sheet.circle(place, p(seen), THIN)
    sheet.text((place[0] - aside, aside), "A", "centre")
    sheet.circle(centre, p(RADIUS), THIN)
    sheet.text((centre[0], centre[1] + p(RADIUS + 2.6)), f"A {scale_text(scale)}", "centre")
    lean = math.radians(thread.flank_angle)
    metal = _chord(sheet, centre, lean, 0.0)
    # the other way than in the picture, whose lines would lie along the flanks
    sheet.hatch([*metal, *_rim(sheet, centre, lean)], -45.0, 2.4)
    over = p(RADIUS)
    sheet.line((centre[0] - over, centre[1]), (centre[0] + over, centre[1]), CENTRE)
    sheet.path(metal, VISIBLE)
    for distance, layer in zip(apart, (THIN, HIDDEN), strict=True):
        sheet.path(_chord(sheet, centre, lean, distance * scale), layer)


def _apart(design: TapDesign, pitch_diameter: float) -> float:
    """How far a flank of the hole stands off the tap's, towards the groove [mm]."""
    lean = math.radians(design.tap.thread.flank_angle)
    return (pitch_diameter - design.tap.thread.pitch_diameter) / 2 * math.sin(lean)


def _chord(sheet: Sheet, centre: Point, lean: float, distance: float) -> list[Point]:
    """The part of a flank within the detail, `distance` mm on paper off its middle."""
    half = math.sqrt(max(RADIUS**2 - distance**2, 0.0))
    return [
        (
            centre[0] + sheet.paper(along * math.sin(lean) - distance * math.cos(lean)),
            centre[1] + sheet.paper(along * math.cos(lean) + distance * math.sin(lean)),
        )
        for along in (half, -half)
    ]


def _rim(sheet: Sheet, centre: Point, lean: float) -> list[Point]:
    """The rim on the side of the metal, from the lower end of the flank to the upper one."""
    turns = (-math.pi / 2 - lean + math.pi * n / _TURNS for n in range(1, _TURNS))
    radius = sheet.paper(RADIUS)
    return [
        (centre[0] + radius * math.cos(turn), centre[1] + radius * math.sin(turn)) for turn in turns
    ]
