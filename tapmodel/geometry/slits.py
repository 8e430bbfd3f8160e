"""Triangles that the kernel leaves out where two corners of a face lie within its own tolerance.

A face whose border has a side of some 50 nm is meshed as if that side had no length, while the
faces beside it keep it: the mesh has a slit of three sides there, as narrow as that side.
"""

import numpy as np

from tapmodel.geometry.triangles import Floats, Indices, unmatched_sides

WIDEST = 1e-4
"""Width below which a slit is closed [mm]; a wider hole is a fault of the mesh, and stays one."""


def slits(vertices: Floats, triangles: Indices) -> Indices:
    """Triangles that close the slits of three sides, (n, 3), running as their neighbours ask.

    Args:
        vertices: (n, 3) [mm].
        triangles: (m, 3) vertex numbers.
    """
    # By the corner in which an open side ends: the slit runs against the sides that it closes.
    following = {int(b): int(a) for a, b in unmatched_sides(triangles)}
    found: list[tuple[int, int, int]] = []
    for first, second in following.items():
        third = following.get(second, -1)
        closes = following.get(third) == first and first == min(first, second, third)
        if closes and _width(vertices[[first, second, third]]) < WIDEST:
            found.append((first, second, third))
    return np.array(found, dtype=np.intp).reshape(-1, 3)


def _width(corners: Floats) -> float:
    """Least height of a triangle [mm]."""
    along = np.roll(corners, -1, axis=0) - corners
    area = np.linalg.norm(np.cross(along[0], along[1]))
    return float(area / np.linalg.norm(along, axis=1).max())
