"""Places on a section that its marks and their lettering share, as the page counts them."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.drawings.views.end_view import in_flute, polar
from tapmodel.shape.flute_section import face_angle, heel_angle, section_of
from tapmodel.shape.outlines.outline import Point

OUT = 1.13
"""Where lettering begins and the tap's turning is shown, in radii of the crests."""


def down(point: Point) -> Point:
    """A point of the drawings' view as the page counts it."""
    return round(point[0], 4) + 0.0, round(-point[1], 4) + 0.0


def outside(design: TapDesign, theta: float) -> Point:
    """Where lettering begins at an angle [deg]."""
    return down(polar(design, OUT * design.tap.thread.major / 2, theta))


def beyond(design: TapDesign) -> Point:
    """Outside, between the cutter's axis and the line that it is offset from."""
    flutes = design.tap.flutes
    far = OUT * design.tap.thread.major / 2
    return down(in_flute(design, far, flutes.offset / 2, flutes.count - 1))


def land_ends(design: TapDesign) -> tuple[float, float]:
    """Angles of the first land's edge and heel at the crests [deg]."""
    flutes, radius = design.tap.flutes, design.tap.thread.major / 2
    void = section_of(flutes)
    start = flutes.angles[0] + face_angle(void, radius)
    return start, flutes.angles[1] + heel_angle(void, radius)
