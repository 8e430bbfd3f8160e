"""The cross-section through the full thread: rake, hook, land, core and flutes."""

import math

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, HIDDEN, PHANTOM, THIN, VISIBLE
from tapmodel.report.drawings.canvas import LINE, Caption, Key
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import degrees, fitting_scale
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.drawings.views.end_view import (
    SEEN,
    in_flute,
    on_face,
    placed_loop,
    polar,
    polygon,
)
from tapmodel.report.drawings.views.relief_view import enlarged_land
from tapmodel.report.units import Units
from tapmodel.shape.flute_section import face_angle, heel_angle, section_of
from tapmodel.shape.outlines.outline import Point
from tapmodel.shape.outlines.section import full_thread_height, section_outline
from tapmodel.words import Hand

_VIEW = 92.0  # of the section on paper, at most [mm]
_ACROSS = 107.0  # of it and the ball of the cutter on paper, at most [mm]
_OVER = 4.0  # by which lines stand out of it on paper [mm]


def draw(design: TapDesign, units: Units = Units.MM) -> Drawing:
    """Section seen on the cutting end, first flute on top, with its angles and widths."""
    across = fitting_scale(_across(design), _ACROSS)
    scale = min(fitting_scale(design.tap.thread.major, _VIEW), across)
    sheet = Sheet("cross-section", "Cross-section through the full thread", scale, units)
    _section(sheet, design)
    _circles(sheet, design)
    right = max(_rake(sheet, design), _land(sheet, design), _cutter(sheet, design))
    _captions(sheet, design, right + sheet.paper(3))
    return sheet.finished()


def _section(sheet: Sheet, design: TapDesign) -> None:
    for loop in section_outline(design.tap, full_thread_height(design.tap)).loops:
        pieces = placed_loop(loop)
        sheet.hatch(polygon(pieces), spacing=2.4)
        sheet.pieces(pieces, VISIBLE)


def _circles(sheet: Sheet, design: TapDesign) -> None:
    radius, core = design.tap.thread.major / 2, design.tap.flutes.core_diameter / 2
    over = radius + sheet.paper(_OVER)
    sheet.circle((0.0, 0.0), radius, PHANTOM)
    sheet.circle((0.0, 0.0), core, HIDDEN)
    sheet.line((-over, 0.0), (over, 0.0), CENTRE)
    sheet.line((0.0, -over), (0.0, over), CENTRE)
    (_, y), ball = _ball(design)
    low = min(-radius, y - ball) - sheet.paper(_OVER + 4)
    below = (0.0, low - sheet.paper(3.2)), "centre"
    sheet.linear(
        ((-radius, 0.0), (radius, 0.0)), (0.0, low), sheet.size(design.tap.thread.major), below
    )


def _side(design: TapDesign) -> float:
    return 1.0 if design.tap.thread.hand is Hand.RIGHT else -1.0


def _rake(sheet: Sheet, design: TapDesign) -> float:
    """Angle between the radius through the crest edge and the face's tangent there.

    Returns the right end of its lettering [mm].
    """
    radius = design.tap.thread.major / 2
    edge = on_face(design, radius)
    reach = min(sheet.paper(24), 0.75 * radius)
    radial = math.degrees(math.atan2(-edge[1], -edge[0]))
    # the face's tangent inwards lies towards the land by the rake
    tangent = radial + _side(design) * design.figures.rake_crest
    inner, along = (_from(edge, angle, reach) for angle in (radial, tangent))
    out = _from(edge, radial + 180, sheet.paper(5))
    sheet.line(out, inner, THIN)
    sheet.line(edge, along, THIN)
    ends = (inner, along) if (tangent - radial) > 0 else (along, inner)
    base = _from(edge, radial, 0.8 * reach)
    words = f"rake {degrees(design.figures.rake_crest)}"
    half = sheet.paper(sheet.width(words) / 2)
    at = (edge[0] - _side(design) * (half + sheet.paper(3)), radius + sheet.paper(6))
    if design.figures.rake_crest != 0:
        sheet.angular(edge, ends, base, words, at)
    else:
        sheet.text(at, words, "centre")
    return at[0] + half


def _from(point: Point, angle: float, length: float) -> Point:
    turned = math.radians(angle)
    return point[0] + length * math.cos(turned), point[1] + length * math.sin(turned)


def _land(sheet: Sheet, design: TapDesign) -> float:
    """Of the first land, at the major diameter; returns the right end of its lettering [mm]."""
    flutes, radius = design.tap.flutes, design.tap.thread.major / 2
    void = section_of(flutes)
    start = flutes.angles[0] + face_angle(void, radius)
    end = flutes.angles[1] + heel_angle(void, radius)
    first, last = polar(design, radius, start), polar(design, radius, end)
    # the view turns the sense of theta round
    ends = (last, first) if _side(design) > 0 else (first, last)
    middle = (start + end) / 2
    base = polar(design, radius + sheet.paper(6), middle)
    words = f"land {degrees(design.figures.land_angle)}"
    x, y = polar(design, radius + sheet.paper(8), middle)
    half = sheet.paper(sheet.width(words)) / 2
    at = (x + math.copysign(half, x), y)
    sheet.angular((0.0, 0.0), ends, base, words, at)
    return at[0] + half


def _ball(design: TapDesign) -> tuple[Point, float]:
    """Middle and radius of the cutter's ball in the last flute, off the other dimensions [mm]."""
    flutes = design.tap.flutes
    middle = in_flute(design, flutes.centre_radius, flutes.offset, flutes.count - 1)
    return middle, flutes.cutter_diameter / 2


def _across(design: TapDesign) -> float:
    """Width of section and ball together [mm]."""
    ((x, _), ball), radius = _ball(design), design.tap.thread.major / 2
    return max(radius, x + ball) - min(-radius, x - ball)


def _cutter(sheet: Sheet, design: TapDesign) -> float:
    """Ball of the cutter as it mills, its axis through the ball; returns its right end [mm]."""
    flutes, ((x, y), ball) = design.tap.flutes, _ball(design)
    over = ball + sheet.paper(_OVER / 2)
    inner, outer = (
        in_flute(design, flutes.centre_radius + along, flutes.offset, flutes.count - 1)
        for along in (-over, over)
    )
    sheet.circle((x, y), ball, PHANTOM)
    sheet.line(inner, outer, CENTRE)
    return max(x + ball, outer[0])


def _cut_words(sheet: Sheet, height: str) -> tuple[str, ...]:
    words = f"cut {height} behind it", sheet.scale_told
    return words if sheet.wanted is Units.BOTH else ("; ".join(words),)


def _cutter_told(sheet: Sheet, size: str) -> tuple[Caption, ...]:
    kind = "double chain: cutter"
    if sheet.wanted is Units.BOTH:
        return ((Key(PHANTOM, kind),), f"   {size}")
    return ((Key(PHANTOM, f"{kind} {size}"),),)


def _captions(sheet: Sheet, design: TapDesign, beside: float) -> None:
    """Numbers, and the lands with their drop enlarged, right of everything else."""
    flutes, p = design.tap.flutes, sheet.paper
    left = max(design.tap.thread.major / 2 + p(_OVER + 3), beside)
    height = sheet.mm(full_thread_height(design.tap), 2)
    lines: list[Caption] = [
        f"rake at the crest (hook) {degrees(design.figures.rake_crest)}",
        f"   at the pitch line {degrees(design.figures.rake_pitch)}",
        f"   at the drilled wall {degrees(design.rake_at_wall)}",
        f"   at the root, not cutting {degrees(design.figures.rake_root)}",
        f"chordal hook {degrees(design.figures.chordal_hook)}",
        f"land {degrees(design.figures.land_angle)}, {sheet.mm(design.figures.land_width)} wide",
        (Key(HIDDEN, f"dashed: core ⌀{sheet.mm(flutes.core_diameter)}"),),
        *_cutter_told(sheet, f"⌀{sheet.mm(flutes.cutter_diameter)}"),
        f"{design.tap.thread.hand.value}-hand tap, {SEEN},",
        *_cut_words(sheet, height),
    ]
    top = design.tap.thread.major / 2 + p(7)
    sheet.lines_of_text((left, top), lines)
    below = top - p(LINE * len(lines) + 2)
    for relief in design.reliefs:
        below = enlarged_land(sheet, design, relief, (left, below)) - p(4)
