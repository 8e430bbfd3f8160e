"""First or third angle: where a view seen from one side stands, and the sign that says so.

In first angle a view seen from the left stands to the right of the view it belongs to, in third
angle to the left of it. The sign is a frustum whose small end is to the left, with the view on
that end placed by the same rule.

Source: ISO 5456-2, ISO 128-3 (from memory).
"""

from dataclasses import dataclass

from tapmodel.export.dxf.document import CENTRE, VISIBLE
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import Projection
from tapmodel.shape.outlines.outline import Point

SMALL, LARGE, LENGTH, GAP = 3.0, 6.0, 6.0, 4.0
"""Diameters and length of the frustum, and what is between its views, on paper [mm]."""

WIDTH = LENGTH + GAP + LARGE


def side_of(seen_from: float, projection: Projection) -> float:
    """Where a view stands: -1 to the left, +1 to the right of the main view.

    Args:
        seen_from: -1 for a view from the left, +1 for one from the right.
        projection: first or third angle.
    """
    return seen_from if projection is Projection.THIRD else -seen_from


@dataclass(frozen=True, slots=True)
class Sign:
    """Sign of a projection in mm on paper about its own middle, y upwards.

    Attributes:
        frustum: corners of the frustum.
        centre: of the two circles.
        lines: centre lines.
    """

    frustum: tuple[Point, ...]
    centre: Point
    lines: tuple[tuple[Point, Point], ...]


def sign(projection: Projection) -> Sign:
    """The frustum with the view on its small, left end."""
    way = side_of(-1.0, projection)
    left = -way * (GAP + LARGE) / 2 - LENGTH / 2
    x = way * (LENGTH + GAP) / 2
    corners = (
        (left, -SMALL / 2),
        (left + LENGTH, -LARGE / 2),
        (left + LENGTH, LARGE / 2),
        (left, SMALL / 2),
    )
    over = 1.2
    lines = (
        ((left - over, 0.0), (left + LENGTH + over, 0.0)),
        ((x - LARGE / 2 - over, 0.0), (x + LARGE / 2 + over, 0.0)),
        ((x, -LARGE / 2 - over), (x, LARGE / 2 + over)),
    )
    return Sign(corners, (x, 0.0), lines)


def draw_sign(sheet: Sheet, at: Point, projection: Projection) -> None:
    """Draw the sign with its middle at `at`."""
    shape = sign(projection)

    def placed(point: Point) -> Point:
        return at[0] + sheet.paper(point[0]), at[1] + sheet.paper(point[1])

    sheet.path([placed(point) for point in shape.frustum], VISIBLE, closed=True)
    for diameter in (SMALL, LARGE):
        sheet.circle(placed(shape.centre), sheet.paper(diameter / 2), VISIBLE)
    for start, end in shape.lines:
        sheet.line(placed(start), placed(end), CENTRE)


def sign_svg(projection: Projection) -> str:
    """The sign alone as a picture, in mm."""
    shape, half = sign(projection), (WIDTH / 2 + 1.5, LARGE / 2 + 1.5)
    corners = " ".join(f"{x:g},{-y:g}" for x, y in shape.frustum)
    x, y = shape.centre
    circles = "".join(
        f'<circle cx="{x:g}" cy="{-y:g}" r="{diameter / 2:g}"/>' for diameter in (SMALL, LARGE)
    )
    lines = "".join(
        f'<path stroke-width="0.18" stroke-dasharray="2 0.5 0.3 0.5" '
        f'd="M{a[0]:g} {-a[1]:g}L{b[0]:g} {-b[1]:g}"/>'
        for a, b in shape.lines
    )
    width, height = 2 * half[0], 2 * half[1]
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:g}mm" height="{height:g}mm" '
        f'viewBox="{-half[0]:g} {-half[1]:g} {width:g} {height:g}" '
        f'fill="none" stroke="black" stroke-width="0.35">'
        f'<polygon points="{corners}"/>{circles}{lines}</svg>'
    )
