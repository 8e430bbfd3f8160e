"""Triangles without area, taken out of a closed mesh without opening it."""

import numpy as np
from numpy.typing import NDArray

from tapmodel.errors import KernelError
from tapmodel.stages import Stage

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Height over longest side below which a triangle has no direction of its own.
FLAT = 1e-10
_MOST_ROUNDS = 20


def heights(vertices: Floats, triangles: Indices) -> Floats:
    """Height over the longest side, per longest side; 0 for a flat triangle."""
    a, b, c = (vertices[triangles[:, k]] for k in range(3))
    longest = np.max([np.sum((p - q) ** 2, axis=1) for p, q in ((a, b), (b, c), (c, a))], axis=0)
    area = np.linalg.norm(np.cross(b - a, c - a), axis=1)
    return np.divide(area, longest, out=np.zeros_like(area), where=longest > 0)


def without_flat(vertices: Floats, triangles: Indices) -> tuple[Indices, Indices]:
    """The same surface without flat triangles.

    One with a repeated corner has only sides that its neighbours share, and is left out. One whose
    corners lie on a line is turned with its neighbour over the longest side: the same four
    corners, joined by the other diagonal. Two that lie back to back vanish together.

    Args:
        vertices: shape (n, 3) [mm].
        triangles: (m, 3), closed.

    Returns:
        The triangles kept, and for each its row in `triangles`.

    Raises:
        KernelError: when flat triangles lean on each other without end, or nothing is left.
    """
    rows = np.arange(len(triangles))
    kept = triangles.copy()
    for _ in range(_MOST_ROUNDS):
        a, b, c = kept.T
        whole = (a != b) & (b != c) & (c != a)
        rows, kept = rows[whole], kept[whole]
        flat = np.nonzero(heights(vertices, kept) < FLAT)[0]
        if len(flat) == 0 and len(kept) > 0:
            return kept, rows
        _turn_first_of_each_pair(vertices, kept, flat.tolist())
    raise KernelError(Stage.MESH, "its flat triangles lean on each other and could not be turned")


def _turn_first_of_each_pair(vertices: Floats, triangles: Indices, flat: list[int]) -> None:
    """Turn the longest side of each flat triangle whose neighbour was not turned yet."""
    owner = {
        (int(row[k]), int(row[(k + 1) % 3])): n for n, row in enumerate(triangles) for k in range(3)
    }
    touched: set[int] = set()
    for n in flat:
        corners = triangles[n].tolist()
        sides = [vertices[corners[k]] - vertices[corners[(k + 1) % 3]] for k in range(3)]
        k = int(np.argmax([float(side @ side) for side in sides]))
        start, stop, tip = corners[k], corners[(k + 1) % 3], corners[(k + 2) % 3]
        if (stop, start) not in owner:
            raise KernelError(Stage.MESH, "a flat triangle has no neighbour")
        other = owner[stop, start]
        if n in touched or other in touched:
            continue
        touched |= {n, other}
        (far,) = set(triangles[other].tolist()) - {start, stop}
        # Back to back, far is the tip, and both get a repeated corner.
        triangles[n] = (start, far, tip)
        triangles[other] = (far, stop, tip)
