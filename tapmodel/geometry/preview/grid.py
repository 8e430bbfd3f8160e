"""A closed mesh out of columns of points that go once round the axis, with both ends capped."""

# pyright: reportUnknownMemberType=false, reportUnknownArgumentType=false
# The binding of the mesh booleans leaves the shapes of its arrays open.

from dataclasses import dataclass

import manifold3d
import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Points of a column nearer than this share of its height become one: no slivers there.
_SAME = 1e-7
# Points on the rim of a centre.
_RIM_POINTS = 48


@dataclass(frozen=True, slots=True)
class Centre:
    """A 60-degree centre in an end face, and the diameter of its rim, 0 for none [mm]."""

    rim: float = 0.0

    @property
    def depth(self) -> float:
        """From the face to the tip [mm]."""
        return self.rim / 2 / float(np.tan(np.radians(30.0)))


def closed_mesh(points: Floats, shift: int, bottom: Centre, top: Centre) -> tuple[Floats, Indices]:
    """Vertices and triangles of the body whose side the columns run up.

    Rows may rest on one another in some columns and part in others: where they rest they share
    one vertex.

    Args:
        points: shape (columns, rows, 3), columns in the sense of growing angle, rows upwards;
            the first and the last row each lie in one plane square to the axis [mm].
        shift: row of the first column that continues row 0 of the last; the rows of the first
            column below it rest on one another.
        bottom: centre in the lower face.
        top: centre in the upper face.

    Returns:
        Vertices (n, 3) [mm] and triangles (m, 3), counter-clockwise seen from outside.
    """
    columns, rows = points.shape[:2]
    overlap = _SAME * float(np.ptp(points[..., 2]))
    moved = np.linalg.norm(np.diff(points, axis=1), axis=2) > overlap
    new = np.concatenate([np.ones((columns, 1), dtype=np.bool_), moved], axis=1)
    number = np.cumsum(new).reshape(new.shape) - 1
    vertices = points[new]
    onward = number[:1, np.minimum(np.arange(rows) + shift, rows - 1)]
    side = _side(np.concatenate([number, onward]))
    vertices, floor = _cap(vertices, number[:, 0], bottom.rim, bottom.depth)
    vertices, ceiling = _cap(vertices, number[:, -1], top.rim, -top.depth)
    return vertices, np.concatenate([side, floor[:, ::-1], ceiling])


def _side(number: Indices) -> Indices:
    a, b, c, d = number[:-1, :-1], number[1:, :-1], number[1:, 1:], number[:-1, 1:]
    halves = np.stack([np.stack([a, b, c], axis=-1), np.stack([a, c, d], axis=-1)])
    triangles = halves.reshape(-1, 3)
    one, two, three = triangles.T
    return triangles[(one != two) & (two != three) & (three != one)]


def _cap(
    vertices: Floats, ring: Indices, rim_diameter: float, rise: float
) -> tuple[Floats, Indices]:
    """The vertices with those of the centre, and the triangles of the face seen from above."""
    outline = vertices[ring, :2]
    if rim_diameter == 0:
        return vertices, ring[_triangles([outline])]
    angles = -2 * np.pi * np.arange(_RIM_POINTS) / _RIM_POINTS
    rim = rim_diameter / 2 * np.stack([np.cos(angles), np.sin(angles)], axis=-1)
    height = float(vertices[ring[0], 2])
    first = np.arange(_RIM_POINTS) + len(vertices)
    tip = np.full(_RIM_POINTS, len(vertices) + _RIM_POINTS)
    added = np.column_stack([rim, np.full(_RIM_POINTS, height)])
    vertices = np.concatenate([vertices, added, [[0.0, 0.0, height + rise]]])
    face = np.concatenate([ring, first])[_triangles([outline, rim])]
    pit = np.stack([np.roll(first, -1), first, tip], axis=-1)
    return vertices, np.concatenate([face, pit])


def _triangles(outlines: list[Floats]) -> Indices:
    """Triangles between closed outlines, the holes clockwise, by the number of the point."""
    return np.asarray(manifold3d.triangulate(outlines), dtype=np.intp)
