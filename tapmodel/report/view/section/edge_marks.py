"""Marks of the cutting edge on the section: angles, widths and circles, as the drawing has them."""

import math

from tapmodel.designing.record import TapDesign
from tapmodel.report.drawings.views.end_view import in_flute, on_face, on_heel, polar
from tapmodel.report.units import Units
from tapmodel.report.view.section.lettering import legend, names
from tapmodel.report.view.section.places import OUT, down, land_ends
from tapmodel.report.view.section.record import (
    Circle,
    CutterMark,
    EdgeMarks,
    LandMark,
    RakeMark,
)
from tapmodel.shape.flute_section import crest_edge_angle
from tapmodel.shape.outlines.outline import Point
from tapmodel.shape.outlines.section import full_thread_height
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand, ReliefKind

_RAKE_LINES = 0.6
"""Length of the lines that enclose the rake, in radii of the crests."""

_ARC = 0.8
"""Radius of the arc between them, in their length."""

_BESIDE = 1.06
"""Where the arc over the land stands, in radii of the crests."""

_TURNING = (196.0, 222.0)
"""Of the arrow, from the top towards the heel of the first land [deg]."""

_STEPS = 8


def crest_height(tap: Tap) -> float:
    """A height in the full thread where the first land's cutting edge lies at the crest [mm].

    So what is marked at the crest is on the metal of the section. The nearest to the middle of the
    full thread, or that middle where the thread is too short.
    """
    thread, middle = tap.thread, full_thread_height(tap)
    turn = tap.flutes.angles[0] + crest_edge_angle(tap.flutes, thread.major)
    crest = thread.first_z + thread.lead * turn / 360
    found = crest + thread.pitch * round((middle - crest) / thread.pitch)
    low, high = _heights(tap)
    return found if low <= found <= high else middle


def edge_marks(design: TapDesign, units: Units) -> EdgeMarks:
    """The marks of a design, lettered in `units`."""
    thread = design.tap.thread
    return EdgeMarks(
        heights=_heights(design.tap),
        standing=round(crest_height(design.tap), 4),
        rake=_rake(design),
        land=_land(design),
        cutter=_cutter(design),
        margin=_margin(design),
        circles=(
            Circle("crest", thread.major),
            Circle("drill", design.drill),
            Circle("core", design.tap.flutes.core_diameter),
        ),
        turning=_turning(design),
        names=tuple(names(design, units)),
        lines=tuple(legend(design, units)),
    )


def _heights(tap: Tap) -> tuple[float, float]:
    return tap.chamfer_length, min(tap.blank.thread_length, tap.flutes.full_depth_length)


def _side(design: TapDesign) -> float:
    return 1.0 if design.tap.thread.hand is Hand.RIGHT else -1.0


def _from(point: Point, angle: float, length: float) -> Point:
    turned = math.radians(angle)
    return point[0] + length * math.cos(turned), point[1] + length * math.sin(turned)


def _rake(design: TapDesign) -> RakeMark:
    radius = design.tap.thread.major / 2
    reach = _RAKE_LINES * radius
    edge = on_face(design, radius)
    radial = math.degrees(math.atan2(-edge[1], -edge[0]))
    # the face's tangent inwards lies towards the land by the rake
    tangent = radial + _side(design) * design.figures.rake_crest
    ends = [_from(edge, angle, reach) for angle in (radial, tangent)]
    first, last = (_from(edge, angle, _ARC * reach) for angle in (radial, tangent))
    arc = _arc(first, last, _ARC * reach, clockwise=tangent < radial) if tangent != radial else ""
    return RakeMark(
        edge=down(edge),
        radial=down(ends[0]),
        tangent=down(ends[1]),
        out=down(_from(edge, radial + 180, (OUT - 1) * radius)),
        arc=arc,
    )


def _arc(start: Point, end: Point, radius: float, *, clockwise: bool, large: bool = False) -> str:
    """Path from point to point of the drawings' view along a circle."""
    (x, y), (to_x, to_y) = down(start), down(end)
    return (
        f"M{x:g} {y:g}A{radius:.4f} {radius:.4f} 0 {int(large)} {int(clockwise)} {to_x:g} {to_y:g}"
    )


def _along(design: TapDesign, radius: float, start: float, end: float) -> str:
    """Path of an arc about the axis, behind a cutting edge."""
    return _arc(
        polar(design, radius, start),
        polar(design, radius, end),
        radius,
        clockwise=_side(design) > 0,
        large=end - start > 180,
    )


def _land(design: TapDesign) -> LandMark:
    radius = design.tap.thread.major / 2
    start, end = land_ends(design)
    edge, heel = on_face(design, radius), on_heel(design, radius, 1)
    arc = _along(design, _BESIDE * radius, start, end) if end > start else ""
    return LandMark(arc, down(edge), down(heel))


def _margin(design: TapDesign) -> str:
    relief = design.tap.relief.thread
    if relief.kind is not ReliefKind.CON_ECCENTRIC:
        return ""
    start, end = land_ends(design)
    reach = min(start + relief.margin_angle, end)
    return _along(design, design.tap.thread.major / 2, start, reach) if reach > start else ""


def _cutter(design: TapDesign) -> CutterMark:
    flutes = design.tap.flutes
    last, ball = flutes.count - 1, flutes.cutter_diameter / 2
    # At the crests: what is lettered further out stands clear of it.
    far = design.tap.thread.major / 2

    def at(u: float, t: float) -> Point:
        return down(in_flute(design, u, t, last))

    low = flutes.centre_radius - OUT * ball
    return CutterMark(
        centre=at(flutes.centre_radius, flutes.offset),
        radius=ball,
        axis=(at(low, flutes.offset), at(far, flutes.offset)),
        radial=(at(0.0, 0.0), at(far, 0.0)),
    )


def _turning(design: TapDesign) -> tuple[Point, ...]:
    """Cutting, the tap turns towards its cutting faces: against the angle of the view."""
    radius = OUT * design.tap.thread.major / 2
    first, last = _TURNING
    return tuple(
        down(polar(design, radius, last - (last - first) * step / _STEPS))
        for step in range(_STEPS + 1)
    )
