"""Cross-section of the finished thread above the drilled wall, sliced along the radius.

The teeth's chips are integrated across, over the radius; here the profile's own lines and arcs
are summed along the axis, so the two agree only if both are right.
"""

import math

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.edge import CuttingEdge
from tapmodel.prediction.chips.ridge import half_width
from tapmodel.shape.profile import Segment, profile_radius

Floats = NDArray[np.float64]

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(24)


def finished_area(edge: CuttingEdge, wall: float) -> float:
    """Area of one finished thread above the radius `wall` [mm²].

    Without relief of the flanks it is that of lines and arcs. With it the edge lies lower by the
    drop, which differs a little from crest to wall where the face has a rake: that part is
    integrated over w.

    Source: derived here.
    """
    level = wall + float(edge.thread_drop(np.array(wall)))
    area = math.fsum(area_above(part, level) for part in edge.parts)
    return area + _lowered(edge, wall) if edge.flanks_relieved else area


def area_above(part: Segment, level: float) -> float:
    """Area between a part of the profile and a straight line at the radius `level` [mm²].

    Source: derived here: trapezium or triangle, or a segment of a circle and what lies under it.
    """
    width = part.end - part.start
    if part.is_arc:
        return _under_arc(part, level)
    low, high = sorted((part.start_radius - level, part.end_radius - level))
    if high <= 0:
        return 0.0
    return width * (low + high) / 2 if low >= 0 else width * high**2 / (2 * (high - low))


def _under_arc(part: Segment, level: float) -> float:
    radius, half, centre = abs(part.arc), (part.end - part.start) / 2, part.arc_centre
    away = abs(level - centre)
    below = math.copysign(1.0, part.arc) * (level - centre) < 0
    chord = math.sqrt(radius**2 - away**2) if away < radius else 0.0
    if part.arc > 0:
        reach = half if below else min(half, chord)
        return 2 * (_quarter(radius, reach) - (level - centre) * reach)
    if below:
        return 0.0
    reach = min(half, chord)
    return 2 * (
        (centre - level) * (half - reach) - _quarter(radius, half) + _quarter(radius, reach)
    )


def _quarter(radius: float, reach: float) -> float:
    """Area under an arc from its middle to `reach`."""
    height = math.sqrt(radius**2 - reach**2)
    return (reach * height + radius**2 * math.asin(reach / radius)) / 2


def _lowered(edge: CuttingEdge, wall: float) -> float:
    """By how much less than at the wall relief lowers the edge further out, over one thread."""
    crest, _, root, _ = edge.parts
    radii = np.array([wall, *edge.joints(wall, edge.top)])
    drops = edge.thread_drop(radii)
    reached = half_width(edge.parts, radii + drops)
    # A flat root lies level with every width of it.
    ends = np.unique([0.0, crest.end, root.start, *reached])
    ends = ends[ends <= reached[0]]
    middle, half = (ends[1:] + ends[:-1])[:, None] / 2, np.diff(ends)[:, None] / 2
    slices = edge.radius_at(profile_radius(edge.parts, middle + half * _NODES))
    return 2 * float(np.sum(half * _WEIGHTS * (drops[0] - edge.thread_drop(slices))))
