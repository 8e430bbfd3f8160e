"""Sharp edges of a closed mesh, told from the noise of facets too narrow to be seen.

Where faces meet a mesh has facets micrometres wide, whose normals lie wherever their corners'
small deviations turn them. The angle at an edge is therefore taken between the nearest facets on
either side that are wide enough.
"""

import numpy as np
from numpy.typing import NDArray

from tapmodel.report.pictures.view import Floats, Integers

SHARP = 25.0
"""Angle [deg] above which pictures and page draw the side between two facets as an edge."""

NARROW = 1e-3
"""Width below which a facet has no say, of the mesh's width across its axis."""

_STEPS = 8  # narrow facets that are stepped over, at most


def creases(vertices: Floats, triangles: Integers, angle: float) -> Integers:
    """Pairs of vertex numbers (k, 2) between facets that meet at more than `angle`.

    Args:
        vertices: (n, 3) [mm].
        triangles: (m, 3) vertex numbers, of a closed mesh.
        angle: between the normals [deg].
    """
    sides, twin = _sides(triangles)
    lengths = np.linalg.norm(vertices[sides[:, 1]] - vertices[sides[:, 0]], axis=1)
    corners = vertices[triangles]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    area = np.linalg.norm(normals, axis=1)
    wide = area > NARROW * np.ptp(vertices[:, :2]) * lengths.reshape(-1, 3).max(axis=1)
    normals /= np.maximum(area, np.finfo(float).tiny)[:, None]
    once = np.flatnonzero(np.arange(len(sides)) < twin)
    here, beyond = (_seen(side, twin, lengths, wide) for side in (once, twin[once]))
    facing = np.einsum("ij,ij->i", normals[here], normals[beyond])
    return sides[once[facing < np.cos(np.radians(angle))]]


def _sides(triangles: Integers) -> tuple[Integers, NDArray[np.intp]]:
    """Sides of all triangles (3m, 2), and to each the number of the same side run backwards."""
    sides = np.stack([triangles, np.roll(triangles, -1, axis=1)], axis=2).reshape(-1, 2)
    most = int(triangles.max()) + 1
    forwards, backwards = sides @ [most, 1], sides @ [1, most]
    order = np.argsort(forwards)
    return sides, order[np.searchsorted(forwards, backwards, sorter=order)]


def _seen(
    side: NDArray[np.intp], twin: NDArray[np.intp], lengths: Floats, wide: NDArray[np.bool_]
) -> NDArray[np.intp]:
    """Triangle that stands at a side: its own, or the first wide one across those that are not."""
    for _ in range(_STEPS):
        first = side - side % 3
        one, other = first + (side + 1) % 3, first + (side + 2) % 3
        over = twin[np.where(lengths[one] > lengths[other], one, other)]
        side = np.where(wide[side // 3], side, over)
    return side // 3
