"""The record of a triangle mesh, free of any kernel."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Mesh:
    """Triangles with shared corners.

    Attributes:
        vertices: shape (n, 3) [mm].
        triangles: (m, 3) vertex numbers, counter-clockwise seen from outside.
        face_of_triangle: (m,) number of the face in the order of the shell.
    """

    vertices: Floats
    triangles: Indices
    face_of_triangle: Indices


def open_sides(triangles: Indices) -> int:
    """How many sides are not run exactly once each way."""
    _, there, back = _sides(triangles)
    once, times = np.unique(there, return_counts=True)
    return int(np.sum(times != 1) + np.sum(~np.isin(back, once)))


def unmatched_sides(triangles: Indices) -> Indices:
    """The sides that no triangle runs the other way, (n, 2) vertex numbers."""
    sides, there, back = _sides(triangles)
    return sides[~np.isin(back, there)]


def _sides(triangles: Indices) -> tuple[Indices, Indices, Indices]:
    """All sides, (3m, 2), and a number for each the way it runs and the other way."""
    sides = triangles[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2)
    count = int(triangles.max()) + 1
    return sides, sides[:, 0] * count + sides[:, 1], sides[:, 1] * count + sides[:, 0]
