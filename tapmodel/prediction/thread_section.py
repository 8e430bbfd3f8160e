"""The section of a thread above a hole, across the helix in the axial plane."""

import math

import numpy as np

from tapmodel.shape.profile import Segment, profile_radius, segments
from tapmodel.tap.tap import TapThread

_OFFSETS = 4000
"""Places in a pitch at which a profile is summed up."""


def section_above(thread: TapThread, bore: float) -> float:
    """Section of the thread above the hole of diameter `bore` [mm], all starts together [mm²].

    Source: derived here, exact for lines and arcs.
    """
    return thread.starts * sum(area_above(piece, bore / 2) for piece in segments(thread))


def moment_above(thread: TapThread, bore: float) -> float:
    """First moment of that section about the axis, all starts together [mm³].

    Source: derived here, summed up over the profile; good to a millionth.
    """
    offsets = thread.pitch * (np.arange(_OFFSETS) + 0.5) / _OFFSETS
    radii = profile_radius(segments(thread), offsets)
    above = np.maximum(radii**2 - (bore / 2) ** 2, 0.0) / 2
    return thread.starts * float(np.mean(above)) * thread.pitch


def area_above(piece: Segment, floor: float) -> float:
    """Between a piece of the profile and the radius `floor` [mm], as far as it lies above [mm²].

    Source: derived here: a trapezium or triangle, or a segment of a circle and what lies under it.
    """
    if piece.is_arc:
        return _arc_area(piece, floor)
    low, high = sorted((piece.start_radius - floor, piece.end_radius - floor))
    if high <= 0:
        return 0.0
    width = piece.end - piece.start
    return width * (low + high) / 2 if low >= 0 else width * high**2 / (high - low) / 2


def _arc_area(piece: Segment, floor: float) -> float:
    """A crest's arc stands above the floor in its middle, a root's at its ends."""
    radius, half, centre = abs(piece.arc), (piece.end - piece.start) / 2, piece.arc_centre
    lean = (floor - centre) / math.copysign(radius, piece.arc)
    meets = radius * math.sqrt(1 - lean**2) if -1 < lean < 1 else 0.0
    if piece.arc > 0:
        reach = half if piece.start_radius >= floor else meets if lean < 1 else 0.0
        return 2 * (_under_arc(radius, reach) - (floor - centre) * reach)
    if piece.start_radius <= floor:
        return 0.0
    inner = meets if lean < 1 else 0.0
    under = _under_arc(radius, half) - _under_arc(radius, inner)
    return 2 * ((centre - floor) * (half - inner) - under)


def _under_arc(radius: float, reach: float) -> float:
    """Between a chord through the centre and the arc, from the middle to `reach` [mm²]."""
    away = min(reach / radius, 1.0)
    return radius**2 / 2 * (math.asin(away) + away * math.sqrt(1 - away**2))
