"""How many flutes a solid has, counted on its triangles in sections at several heights."""

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.causes.misplaced import shank_middle
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]

_HEIGHTS = (0.237, 0.513, 0.871)
"""Shares of the way from the chamfer's end to the thread's, or to the end of the full depth."""


def flutes_seen(tap: Tap, points: Floats, triangles: Floats) -> int | None:
    """Number of flutes below the thread; None where sections tell none, or not the same.

    Args:
        tap: the tap, whose thread, chamfer and shank tell where to look.
        points: of the solid's faces, on the exact surfaces, shape (n, 3) [mm].
        triangles: of its faces, (m, 3, 3) [mm].
    """
    front = float(triangles[:, :, 2].min())
    middle = shank_middle(tap, points, front)
    if middle is None:
        return None
    placed = triangles - np.array([*middle, front])
    begin, end = tap.chamfer_length, min(tap.blank.thread_length, tap.flutes.full_depth_length)
    # three quarters of the way from the axis, or from the core, to the roots of the thread
    radius = (max(tap.flutes.core_diameter, 0.0) + 3 * tap.thread.minor) / 8
    walls = {_walls(placed, begin + share * (end - begin), radius) for share in _HEIGHTS}
    (first, *others) = walls
    return first // 2 if not others and first and first % 2 == 0 else None


def _walls(triangles: Floats, z: float, radius: float) -> int:
    """How often the section of the triangles at a height crosses a circle about the axis."""
    below = triangles[:, :, 2] < z
    crossed = triangles[below.any(axis=1) & ~below.all(axis=1)]
    ends: list[Floats] = []
    for first, second in ((0, 1), (1, 2), (2, 0)):
        a, b = crossed[:, first], crossed[:, second]
        parts = (a[:, 2] < z) != (b[:, 2] < z)
        share = (z - a[:, 2]) / np.where(parts, b[:, 2] - a[:, 2], 1.0)
        at = a + share[:, None] * (b - a)
        ends.append(np.where(parts, np.hypot(at[:, 0], at[:, 1]), np.nan))
    radii = np.stack(ends, axis=1)
    return int(np.count_nonzero((np.nanmin(radii, 1) < radius) != (np.nanmax(radii, 1) < radius)))
