"""A limit of the hole's thread as lines: what its limits state, no rounding that they do not."""

import math

from tapmodel.designing.record import TapDesign
from tapmodel.shape.outlines.outline import Point
from tapmodel.shape.profile import segments

Side = tuple[Point, Point]


def hole_lines(design: TapDesign, pitch_diameter: float, minor: float) -> tuple[Side, ...]:
    """Two grooves of the hole and the bore between them, as (z, radius) about a root of the tap.

    Flanks go through `pitch_diameter`, from the bore to where the tap ends. Where the tap is
    rounded the hole is too, by an arc that its limits do not state: there the flanks end at the
    height at which the tap's do, and the bore within the tap's root.

    Args:
        design: tap and hole.
        pitch_diameter: of the hole [mm].
        minor: diameter of the bore [mm].
    """
    thread, bore = design.tap.thread, minor / 2
    crest, flank, root, _ = segments(thread)
    slope = math.tan(math.radians(thread.flank_angle))
    quarter = thread.pitch / 4
    top = flank.start_radius if crest.arc else max(design.hole.major_min, thread.major) / 2
    high = min(top, pitch_diameter / 2 + quarter / slope)  # the flanks may meet before they end
    rounded = root.arc != 0 and bore < flank.end_radius
    low = flank.end_radius if rounded else bore
    narrow, wide = (quarter - (radius - pitch_diameter / 2) * slope for radius in (high, low))
    floor = thread.pitch / 2 - wide
    if rounded:
        floor = math.sqrt(max(root.arc**2 - (root.arc_centre - bore) ** 2, 0.0))
    lines: list[Side] = [((-floor, bore), (floor, bore))]
    for middle in (-thread.pitch / 2, thread.pitch / 2):
        lines.append(((middle - wide, low), (middle - narrow, high)))
        lines.append(((middle + narrow, high), (middle + wide, low)))
        if not crest.arc:
            lines.append(((middle - narrow, high), (middle + narrow, high)))
    return tuple(lines)
