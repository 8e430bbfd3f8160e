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
    inside = [
        [m for m, other in enumerate(polygons) if m != n and contains(other, polygon[0])]
        for n, polygon in enumerate(polygons)
    ]
    faces: dict[int, list[int]] = {n: [] for n, around in enumerate(inside) if not len(around) % 2}
    for n, around in enumerate(inside):
        if len(around) % 2:
            # A hole belongs to the cycle around it that is itself most deeply nested.
            faces[max(around, key=lambda m: len(inside[m]))].append(n)
    return list(faces.items())
