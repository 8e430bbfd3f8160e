"""Cross-section of the finished thread above the drilled wall, sliced along the radius.

The teeth's chips are integrated across, over the radius; here the profile's own lines and arcs
are summed along the axis, so the two agree only if both are right.
"""

import math

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.edge import CuttingEdge
from tapmodel.prediction.chips.ridge import half_width
from tapmodel.prediction.thread_section import area_above
from tapmodel.shape.profile import profile_radius

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


def _lowered(edge: CuttingEdge, wall: float) -> float:
    """By how much less than at the wall relief lowers the edge further out, over one thread."""
    crest, _, root, _ = edge.parts
    radii = np.array([wall, *edge.joints(wall, edge.top)])
    drops = edge.thread_drop(radii)
    reached = half_width(edge.parts, radii + drops)
    # A flat root lies level with every width of it.
    ends = np.array(sorted({0.0, crest.end, root.start, *reached}))
    ends = ends[ends <= reached[0]]
    middle, half = (ends[1:] + ends[:-1])[:, None] / 2, np.diff(ends)[:, None] / 2
    slices = edge.radius_at(profile_radius(edge.parts, middle + half * _NODES))
    return 2 * float(np.sum(half * _WEIGHTS * (drops[0] - edge.thread_drop(slices))))
