"""The cross-section through the full thread: rake, hook, land, core and flutes."""

import math

from tapmodel.design.flute_section import face_angle, heel_angle, section_of
from tapmodel.design.outline import Point
from tapmodel.design.section import full_thread_height, section_outline
from tapmodel.design.tap_design import TapDesign
from tapmodel.export.dxf_document import CENTRE, HIDDEN, PHANTOM, THIN, VISIBLE
from tapmodel.report.drawings.end_view import (
    SEEN,
    in_flute,
    on_face,
    placed_loop,
    polar,
    polygon,
)
from tapmodel.report.drawings.lettering import degrees, fitting_scale, mm, scale_text, size
from tapmodel.report.drawings.sheet import Drawing, Sheet
from tapmodel.words import Hand

_VIEW = 85.0  # of the section on paper, at most [mm]


def draw(design: TapDesign) -> Drawing:
    """Section seen on the cutting end, first flute on top, with its angles and widths."""
    sheet = Sheet(
        "cross-section",
        "Cross-section through the full thread",
        fitting_scale(design.thread.major, _VIEW),
    )
    _section(sheet, design)
    _circles(sheet, design)
    _rake(sheet, design)
    _land(sheet, design)
    _cutter(sheet, design)
    _captions(sheet, design)
    return sheet.finished()


def _section(sheet: Sheet, design: TapDesign) -> None:
    for loop in section_outline(design, full_thread_height(design)).loops:
        pieces = placed_loop(loop)
        sheet.hatch(polygon(pieces), spacing=2.4)
        sheet.pieces(pieces, VISIBLE)


def _circles(sheet: Sheet, design: TapDesign) -> None:
    radius, core = design.thread.major / 2, design.flutes.core_diameter / 2
    over = radius + sheet.paper(3)
    sheet.circle((0.0, 0.0), radius, PHANTOM)
    sheet.circle((0.0, 0.0), core, HIDDEN)
    sheet.line((-over, 0.0), (over, 0.0), CENTRE)
    sheet.line((0.0, -over), (0.0, over), CENTRE)
    low = _lowest(design) - sheet.paper(5)
    words = size(design.thread.major)
    below = (0.0, low - sheet.paper(3)), "centre"
    sheet.linear(((-radius, 0.0), (radius, 0.0)), (0.0, low), words, below)


def _lowest(design: TapDesign) -> float:
    """Of the section and the cutter that is drawn in it [mm]."""
    flutes = design.flutes
    _, y = in_flute(design, flutes.centre_radius, flutes.offset, flutes.count - 1)
    return min(-design.thread.major / 2, y - flutes.cutter_diameter / 2)


def _side(design: TapDesign) -> float:
    return 1.0 if design.thread.hand is Hand.RIGHT else -1.0


def _rake(sheet: Sheet, design: TapDesign) -> None:
    """Angle between the radius through the crest edge and the face's tangent there."""
    edge, flutes = on_face(design, design.thread.major / 2), design.flutes
    reach = sheet.paper(24)
    radial = math.degrees(math.atan2(-edge[1], -edge[0]))
    # the face's tangent inwards lies towards the land by the rake
    tangent = radial + _side(design) * flutes.rake_crest
    inner, along = (_from(edge, angle, reach) for angle in (radial, tangent))
    out = _from(edge, radial + 180, sheet.paper(6))
    sheet.line(out, inner, THIN)
    sheet.line(edge, along, THIN)
    ends = (inner, along) if (tangent - radial) > 0 else (along, inner)
    base = _from(edge, radial, sheet.paper(19))
    words = f"rake {degrees(flutes.rake_crest)}"
    aside = sheet.paper(sheet.width(words) / 2 + 3)
    at = (edge[0] - _side(design) * aside, design.thread.major / 2 + sheet.paper(8))
    if flutes.rake_crest != 0:
        sheet.angular(edge, ends, base, words, at)
    else:
        sheet.text(at, words, "centre")


def _from(point: Point, angle: float, length: float) -> Point:
    turned = math.radians(angle)
    return point[0] + length * math.cos(turned), point[1] + length * math.sin(turned)


def _land(sheet: Sheet, design: TapDesign) -> None:
    """Of the first land, at the major diameter."""
    flutes, radius = design.flutes, design.thread.major / 2
    void = section_of(flutes)
    start = flutes.angles[0] + face_angle(void, radius)
    end = flutes.angles[1] + heel_angle(void, radius)
    first, last = polar(design, radius, start), polar(design, radius, end)
    # the view turns the sense of theta round
    ends = (last, first) if _side(design) > 0 else (first, last)
    middle = (start + end) / 2
    base = polar(design, radius + sheet.paper(7), middle)
    words = f"land {degrees(flutes.land_angle)}"
    x, y = polar(design, radius + sheet.paper(10), middle)
    half = sheet.paper(sheet.width(words)) / 2
    sheet.angular((0.0, 0.0), ends, base, words, (x + math.copysign(half, x), y))


def _cutter(sheet: Sheet, design: TapDesign) -> None:
    """Cutter's circle in the last flute, where the view is free of other dimensions."""
    flutes = design.flutes
    last = flutes.count - 1
    centre = in_flute(design, flutes.centre_radius, flutes.offset, last)
    sheet.circle(centre, flutes.cutter_diameter / 2, PHANTOM)
    cross = sheet.paper(1.5)
    sheet.line((centre[0] - cross, centre[1]), (centre[0] + cross, centre[1]), THIN)
    sheet.line((centre[0], centre[1] - cross), (centre[0], centre[1] + cross), THIN)


def _captions(sheet: Sheet, design: TapDesign) -> None:
    flutes, relief = design.flutes, design.relief
    left = design.thread.major / 2 + sheet.paper(28)
    lines = [
        "rake of the face:",
        f"   at the crest (hook) {degrees(flutes.rake_crest)}",
        f"   at the pitch line {degrees(flutes.rake_pitch)}",
        f"   at the root {degrees(flutes.rake_root)}",
        f"chordal hook {degrees(flutes.chordal_hook)}",
        f"land {degrees(flutes.land_angle)}, {mm(flutes.land_width)} wide",
        f"core ⌀{mm(flutes.core_diameter)} (dashed)",
        f"cutter ⌀{mm(flutes.cutter_diameter)} (double chain)",
        f"one flute {mm(flutes.area, 2)} mm²",
        "drop at the heel:",
        f"   {relief.thread.applies_to.value} {mm(relief.thread.heel_drop)}",
        f"   chamfer {mm(relief.chamfer.heel_drop)}",
        f"{design.thread.hand.value}-hand tap",
    ]
    sheet.lines_of_text((left, sheet.paper(14)), lines)
    low = _lowest(design) - sheet.paper(14)
    z = mm(full_thread_height(design), 2)
    words = f"section {z} behind the cutting end, {SEEN}; scale {scale_text(sheet.scale)}"
    sheet.text((0.0, low), words, "centre")
