"""Which cycle of edges bounds a face from outside, and which are holes in it."""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


def signed_area(polygon: Floats) -> float:
    """Area enclosed by the closed polygon (n, 2), positive when counter-clockwise."""
    x, y = polygon[:, 0], polygon[:, 1]
    return float(np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y)) / 2


def contains(polygon: Floats, point: Floats) -> bool:
    """Whether the closed polygon (n, 2) surrounds a point, by crossing number."""
    x, y = polygon[:, 0], polygon[:, 1]
    x2, y2 = np.roll(x, -1), np.roll(y, -1)
    spans = (y > point[1]) != (y2 > point[1])
    rise = np.where(spans, y2 - y, 1.0)
    crossing = x + (point[1] - y) * (x2 - x) / rise
    return bool(np.sum(spans & (crossing > point[0])) % 2)


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
