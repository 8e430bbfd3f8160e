"""Which cycle of edges bounds a face from outside, and which are holes in it."""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


def contains(polygon: Floats, point: Floats) -> bool:
    """Whether the closed polygon (n, 2) surrounds a point, by crossing number."""
    return bool(inside(point[None], polygon, np.roll(polygon, -1, axis=0))[0])


def inside(points: Floats, start: Floats, end: Floats) -> NDArray[np.bool_]:
    """Whether points (n, 2) lie within closed borders, by crossing number.

    Args:
        points: (n, 2).
        start: of the sides of the borders, (m, 2), in any order.
        end: of the same sides, (m, 2).
    """
    y = points[:, 1, None]
    spans = (start[:, 1] > y) != (end[:, 1] > y)
    rise = np.where(spans, end[:, 1] - start[:, 1], 1.0)
    x = start[:, 0] + (y - start[:, 1]) / rise * (end[:, 0] - start[:, 0])
    return np.sum(spans & (x > points[:, 0, None]), axis=1) % 2 == 1


def nested(polygons: list[Floats]) -> list[tuple[int, list[int]]]:
    """Faces out of cycles: the number of each outer cycle with those of its holes.

    Args:
        polygons: the cycles in the surface's parameters, each (n, 2).
    """
    if len(polygons) == 1:
        return [(0, [])]
    around = _around(polygons)
    faces: dict[int, list[int]] = {n: [] for n, outer in enumerate(around) if not len(outer) % 2}
    for n, outer in enumerate(around):
        if len(outer) % 2:
            # A hole belongs to the cycle around it that is itself most deeply nested.
            faces[max(outer, key=lambda m: len(around[m]))].append(n)
    return list(faces.items())


def _around(polygons: list[Floats]) -> list[list[int]]:
    """For each cycle the numbers of those that surround it.

    Most of some thousand cycles on one carrier lie one behind the other, so only those are asked
    whose box holds the point, and they are found in the order of their boxes.
    """
    low, high = (np.array([side(p, axis=0) for p in polygons]) for side in (np.min, np.max))
    extent = np.maximum(high.max(axis=0) - low.min(axis=0), np.finfo(float).tiny)
    axis = int(np.argmin(np.sum(high - low, axis=0) / extent))
    order = np.argsort(low[:, axis])
    begins: Floats = low[order, axis]
    furthest: Floats = np.maximum.accumulate(high[order, axis])
    found: list[list[int]] = []
    for n, polygon in enumerate(polygons):
        point = polygon[0]
        place = float(polygon[0][axis])
        first = int(np.searchsorted(furthest, place))
        near = order[first : np.searchsorted(begins, place, side="right")]
        held = np.all((low[near] <= point) & (point <= high[near]), axis=1)
        asked: list[int] = sorted(near[held].tolist())
        found.append([m for m in asked if m != n and contains(polygons[m], point)])
    return found
