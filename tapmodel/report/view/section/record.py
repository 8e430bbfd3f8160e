"""Marks of the cutting edge on a section, as records.

Places are (x, y) of the page's section [mm], y downwards; it is seen on the cutting end, the first
flute on top, as `report/drawings/views/cross_section.py` draws it.
"""

from dataclasses import dataclass

from tapmodel.shape.outlines.outline import Point


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
    """A circle about the tap's axis.

    Attributes:
        kind: that of a line in `EdgeMarks.lines`.
        diameter: [mm].
    """

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
