"""Self-intersection of a triangle mesh: pairs of triangles that run through each other.

Two triangles have no common point inside both exactly when some direction parts them, and for
triangles it is enough to try their normals, the cross products of their sides and, when both lie
in one plane, the directions square to their sides in it. So one test serves all pairs: triangles
that merely share a side or a corner are parted with depth 0, while a fold back onto a neighbour,
a fin through the wall and an overlap within a plane are not parted at all.
"""

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.proof.box_pairs import overlapping_pairs

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
TOUCH = 1e-9  # depth, relative to the size of the mesh, up to which triangles only touch
SLANTS = np.array([[1, 1, 0], [1, -1, 0], [1, 0, 1], [1, 0, -1], [0, 1, 1], [0, 1, -1]], float)


def self_intersections(vertices: Floats, faces: Indices) -> int:
    """Number of pairs of triangles that intersect deeper than touching.

    Args:
        vertices: shape (n, 3) [mm].
        faces: shape (m, 3), indices of corners; triangles too thin to be run through
            deeper than touching are left out.

    Returns:
        How many pairs.

    Source: derived here, theorem of separating axes.
    """
    corners = np.asarray(vertices, dtype=np.float64)[faces]
    size = float(np.ptp(corners.reshape(-1, 3), axis=0).max())
    depth = TOUCH * size
    longest = np.linalg.norm(np.roll(corners, -1, axis=1) - corners, axis=2).max(axis=1)
    normals = _normals(corners)
    area = np.linalg.norm(normals, axis=1)
    sound = area > depth * longest
    corners, normals = corners[sound], normals[sound] / area[sound, None]
    # measuring along slants too keeps long slanting triangles from meeting all others
    reach = corners @ np.vstack([np.eye(3), SLANTS]).T
    found = 0
    for i, j in overlapping_pairs(reach.min(axis=1), reach.max(axis=1)):
        below, above = _heights(corners[i, 0], normals[i], corners[j])
        flat = (below >= -depth) & (above <= depth)
        found += _left_in_plane(corners[i[flat]], corners[j[flat]], depth)
        across = (below < -depth) & (above > depth)
        i_across, j_across = i[across], j[across]
        below, above = _heights(corners[j_across, 0], normals[j_across], corners[i_across])
        across = (below < -depth) & (above > depth)
        found += _left_across(corners[i_across[across]], corners[j_across[across]], depth)
    return found


def _left_across(one: Floats, other: Floats, depth: float) -> int:
    """How many pairs, each triangle crossing the other's plane, no side's product parts."""
    for i in range(3):
        for j in range(3):
            left = ~_parted(np.cross(_side(one, i), _side(other, j)), one, other, depth)
            one, other = one[left], other[left]
    return len(one)


def _left_in_plane(one: Floats, other: Floats, depth: float) -> int:
    """How many pairs of triangles in a common plane no direction in that plane parts."""
    for i in range(3):
        for triangle in (0, 1):
            sides = (one, other)[triangle]
            left = ~_parted(np.cross(_side(sides, i), _normals(sides)), one, other, depth)
            one, other = one[left], other[left]
    return len(one)


def _side(triangles: Floats, i: int) -> Floats:
    return triangles[:, (i + 1) % 3] - triangles[:, i]


def _normals(triangles: Floats) -> Floats:
    return np.cross(triangles[:, 1] - triangles[:, 0], triangles[:, 2] - triangles[:, 0])


def _heights(foot: Floats, normal: Floats, triangles: Floats) -> tuple[Floats, Floats]:
    """Least and greatest height of each triangle's corners over a plane of its own."""
    height = np.einsum("ncx,nx->nc", triangles, normal)
    height -= np.einsum("nx,nx->n", foot, normal)[:, None]
    return height.min(axis=1), height.max(axis=1)


def _parted(direction: Floats, one: Floats, other: Floats, depth: float) -> NDArray[np.bool_]:
    """Whether the triangles' shadows on the direction overlap by no more than `depth`."""
    length = np.linalg.norm(direction, axis=1)
    a, b = (np.einsum("ncx,nx->nc", t, direction) for t in (one, other))
    overlap = np.minimum(a.max(axis=1) - b.min(axis=1), b.max(axis=1) - a.min(axis=1))
    return (length > 0.0) & (overlap <= depth * length)
