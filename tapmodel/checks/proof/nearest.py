"""The triangles near points: where to look for the points on a solid."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.proof.box_pairs import boxes_around

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Near:
    """Pairs of a point and a triangle near it, the nearest first.

    Attributes:
        point, triangle: numbers, (n,).
        weights: of the triangle's corners, at a place of it near the point, (n, 3).
        distance: from the point to that place, (n,) [mm].
    """

    point: Indices
    triangle: Indices
    weights: Floats
    distance: Floats


def near_triangles(points: Floats, corners: Floats, reach: float) -> Near:
    """The triangles about each point.

    Args:
        points: shape (m, 3) [mm].
        corners: of the triangles, (n, 3, 3) [mm].
        reach: boxes about the triangles are widened by so much [mm].
    """
    low, high = corners.min(axis=1) - reach, corners.max(axis=1) + reach
    point, triangle = boxes_around(points, low, high)
    weights = _weights(points[point], corners[triangle])
    place = np.einsum("nk,nkd->nd", weights, corners[triangle])
    distance = np.linalg.norm(points[point] - place, axis=1)
    order = np.argsort(distance, kind="stable")
    return Near(point[order], triangle[order], weights[order], distance[order])


def _weights(points: Floats, corners: Floats) -> Floats:
    """Weights of the foot of each point in the plane of its triangle, drawn into the triangle.

    The place is not the nearest of all, but near it: within the triangle and at most some of its
    sides away.
    """
    a, b = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    away = points - corners[:, 0]
    aa, ab, bb = (np.einsum("nd,nd->n", *pair) for pair in ((a, a), (a, b), (b, b)))
    pa, pb = np.einsum("nd,nd->n", away, a), np.einsum("nd,nd->n", away, b)
    square = aa * bb - ab * ab
    flat = square <= 1e-14 * aa * bb
    square = np.where(flat, 1.0, square)
    second = np.where(flat, 1 / 3, (bb * pa - ab * pb) / square)
    third = np.where(flat, 1 / 3, (aa * pb - ab * pa) / square)
    weights = np.maximum(np.stack([1 - second - third, second, third], axis=1), 0.0)
    return weights / weights.sum(axis=1, keepdims=True)
