"""Marks of the cutting edge on the section: angles, widths and circles, as the drawing has them.

Places are (x, y) of the page's section [mm], y downwards; it is seen on the cutting end, the first
flute on top, as `report/drawings/views/cross_section.py` draws it.
"""

import math
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length, Quantity, small_length
from tapmodel.report.drawings.lettering import degrees, drawn_in
from tapmodel.report.drawings.views.end_view import in_flute, on_face, on_heel, polar
from tapmodel.report.tools import cutter_of, drill_of
from tapmodel.report.units import Units, shown
from tapmodel.shape.figures import ReliefFigures
from tapmodel.shape.flute_section import crest_edge_angle, face_angle, heel_angle, section_of
from tapmodel.shape.outlines.outline import Point
from tapmodel.shape.outlines.section import full_thread_height
from tapmodel.tap.tap import Relief, Tap
from tapmodel.words import Hand, ReliefKind

_RAKE_LINES = 0.6
"""Length of the lines that enclose the rake, in radii of the crests."""

_ARC = 0.8
"""Radius of the arc between them, in their length."""

_BESIDE = 1.06
"""Where the arc over the land stands, in radii of the crests."""

_OUT = 1.13
"""Where lettering begins and the tap's turning is shown, in radii of the crests."""

_TURNING = (196.0, 222.0)
"""Of the arrow, from the top towards the heel of the first land [deg]."""

_STEPS = 8


@dataclass(frozen=True, slots=True)
class Name:
    """What a mark is called, its number, and where both stand: outside, in that direction.

    Attributes:
        key: of the mark.
        label: its name.
        text: its number with the unit.
        at: from where the lettering goes on outwards.
    """

    key: str
    label: str
    text: str
    at: Point


@dataclass(frozen=True, slots=True)
class RakeMark:
    """Rake at the crest: between the radial line and the face's tangent.

    Attributes:
        edge: the cutting edge at the crest.
        radial, tangent: ends of the two lines that leave it inwards.
        out: end of the radial line outside.
        arc: path of the arc between them; empty for a rake of 0.
    """

    edge: Point
    radial: Point
    tangent: Point
    out: Point
    arc: str


@dataclass(frozen=True, slots=True)
class LandMark:
    """Width of the first land at the crests.

    Attributes:
        arc: path of an arc over it.
        edge, heel: the ends of the land.
    """

    arc: str
    edge: Point
    heel: Point


@dataclass(frozen=True, slots=True)
class CutterMark:
    """The cutter as it mills the last flute.

    Attributes:
        centre, radius: of its ball.
        axis: the cutter's own axis.
        radial: a line through the tap's axis that is parallel to it.
    """

    centre: Point
    radius: float
    axis: tuple[Point, Point]
    radial: tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle about the tap's axis; its kind is that of a line in `EdgeMarks.lines`."""

    kind: str
    diameter: float


@dataclass(frozen=True, slots=True)
class Line:
    """What a kind of line means, or a number without one.

    Attributes:
        kind: "crest", "core", "drill", "cutter", or empty for a number alone.
        label: what it is.
        text: its number.
    """

    kind: str
    label: str
    text: str


@dataclass(frozen=True, slots=True)
class EdgeMarks:
    """Everything that is marked on a section through the thread.

    Attributes:
        heights: between which the marks of edge, land and cutter hold [mm].
        standing: height at which sections of taps are compared, see `crest_height` [mm].
        rake, land, cutter: on the section.
        margin: path along the land as far as nothing drops behind the edge; empty without.
        circles: about the axis, at every height.
        turning: points of an arrow in the direction in which the tap turns as it cuts.
        names: lettering on the section.
        lines: a legend below it, with what else is told of the edge.
    """

    heights: tuple[float, float]
    standing: float
    rake: RakeMark
    land: LandMark
    cutter: CutterMark
    margin: str
    circles: tuple[Circle, ...]
    turning: tuple[Point, ...]
    names: tuple[Name, ...]
    lines: tuple[Line, ...]


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
        names=tuple(_names(design, units)),
        lines=tuple(_lines(design, units)),
    )


def _heights(tap: Tap) -> tuple[float, float]:
    return tap.chamfer_length, min(tap.blank.thread_length, tap.flutes.full_depth_length)


def _side(design: TapDesign) -> float:
    return 1.0 if design.tap.thread.hand is Hand.RIGHT else -1.0


def _down(point: Point) -> Point:
    """A point of the drawings' view as the page counts it."""
    return round(point[0], 4) + 0.0, round(-point[1], 4) + 0.0


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
        edge=_down(edge),
        radial=_down(ends[0]),
        tangent=_down(ends[1]),
        out=_down(_from(edge, radial + 180, (_OUT - 1) * radius)),
        arc=arc,
    )


def _arc(start: Point, end: Point, radius: float, *, clockwise: bool, large: bool = False) -> str:
    """Path from point to point of the drawings' view along a circle."""
    (x, y), (to_x, to_y) = _down(start), _down(end)
    return (
        f"M{x:g} {y:g}A{radius:.4f} {radius:.4f} 0 {int(large)} {int(clockwise)} {to_x:g} {to_y:g}"
    )


def _land_ends(design: TapDesign) -> tuple[float, float]:
    """Angles of the first land's edge and heel at the crests [deg]."""
    flutes, radius = design.tap.flutes, design.tap.thread.major / 2
    void = section_of(flutes)
    start = flutes.angles[0] + face_angle(void, radius)
    return start, flutes.angles[1] + heel_angle(void, radius)


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
    start, end = _land_ends(design)
    edge, heel = on_face(design, radius), on_heel(design, radius, 1)
    arc = _along(design, _BESIDE * radius, start, end) if end > start else ""
    return LandMark(arc, _down(edge), _down(heel))


def _margin(design: TapDesign) -> str:
    relief = design.tap.relief.thread
    if relief.kind is not ReliefKind.CON_ECCENTRIC:
        return ""
    start, end = _land_ends(design)
    reach = min(start + relief.margin_angle, end)
    return _along(design, design.tap.thread.major / 2, start, reach) if reach > start else ""


def _cutter(design: TapDesign) -> CutterMark:
    flutes = design.tap.flutes
    last, ball = flutes.count - 1, flutes.cutter_diameter / 2
    far = _OUT * design.tap.thread.major / 2

    def at(u: float, t: float) -> Point:
        return _down(in_flute(design, u, t, last))

    low = flutes.centre_radius - _OUT * ball
    return CutterMark(
        centre=at(flutes.centre_radius, flutes.offset),
        radius=ball,
        axis=(at(low, flutes.offset), at(far, flutes.offset)),
        radial=(at(0.0, 0.0), at(far, 0.0)),
    )


def _turning(design: TapDesign) -> tuple[Point, ...]:
    """Cutting, the tap turns towards its cutting faces: against the angle of the view."""
    radius = _OUT * design.tap.thread.major / 2
    first, last = _TURNING
    return tuple(
        _down(polar(design, radius, last - (last - first) * step / _STEPS))
        for step in range(_STEPS + 1)
    )


def _names(design: TapDesign, units: Units) -> list[Name]:
    radius, flutes = design.tap.thread.major / 2, design.tap.flutes
    start, end = _land_ends(design)
    # as on drawings, two numbers would leave room for neither
    units = drawn_in(units)

    def out(theta: float) -> Point:
        return _down(polar(design, _OUT * radius, theta))

    names = [
        Name("rake", "rake", degrees(design.figures.rake_crest), out(flutes.angles[0])),
        Name(
            "land", "land", _text(Length(design.figures.land_width), units), out((start + end) / 2)
        ),
        Name("offset", "offset", _text(Length(flutes.offset), units), _beyond(design)),
    ]
    drop = design.figures.thread_relief.heel_drop
    if drop > 0:
        told = _text(small_length(drop), units)
        names.append(Name("drop", "heel drops", told, out(end)))
    return names


def _beyond(design: TapDesign) -> Point:
    """Outside, between the cutter's axis and the line that it is offset from."""
    flutes = design.tap.flutes
    far = _OUT * design.tap.thread.major / 2
    return _down(in_flute(design, far, flutes.offset / 2, flutes.count - 1))


def _lines(design: TapDesign, units: Units) -> list[Line]:
    flutes, figures = design.tap.flutes, design.figures
    land = f"{degrees(figures.land_angle)}, {_text(Length(figures.land_width), units)} wide"
    return [
        Line("", "rake at the crest (hook)", degrees(figures.rake_crest)),
        Line("", "rake at the pitch line", degrees(figures.rake_pitch)),
        Line("", "rake at the drilled wall", degrees(design.rake_at_wall)),
        Line("", "chordal hook", degrees(figures.chordal_hook)),
        Line("", "land", land),
        *(_relief(one, units) for one in design.reliefs),
        Line("crest", "crests", f"⌀{_text(Length(design.tap.thread.major), units)}"),
        Line("drill", "tap drill", f"⌀{_text(drill_of(design.drill), units)}"),
        Line("core", "core (web)", f"⌀{_text(Length(flutes.core_diameter), units)}"),
        Line("cutter", "cutter", f"⌀{_text(cutter_of(flutes.cutter_diameter), units)}"),
    ]


def _relief(pair: tuple[Relief, ReliefFigures], units: Units) -> Line:
    """Kind of a relief, its margin or its angle, and what it drops."""
    relief, figures = pair
    label = f"relief of the {relief.applies_to.value}"
    if relief.kind is ReliefKind.CONCENTRIC:
        return Line("", label, "concentric, no drop")
    drop = f"drop {_text(small_length(figures.heel_drop), units)} at the heel"
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        angle = f"none over {degrees(relief.margin_angle)}"
    else:
        angle = f"{degrees(figures.edge_angle)} at the edge"
    return Line("", label, f"{relief.kind.value}, {angle}, {drop}")


def _text(quantity: Quantity, units: Units) -> str:
    return " = ".join(shown(quantity, units))
