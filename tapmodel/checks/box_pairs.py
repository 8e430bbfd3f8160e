"""Which of many boxes overlap: a tree of boxes walked against itself, level by level."""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
AT_ONCE = 20_000  # pairs of nodes taken at a time: what they lead to stays in the cache


def overlapping_pairs(low: Floats, high: Floats) -> Iterator[tuple[Indices, Indices]]:
    """Pairs i < j of boxes that overlap or touch, in batches.

    Args:
        low: least corner of each box, shape (n, k), k >= 3 directions of measuring.
        high: greatest corner, same shape.

    Yields:
        Two index arrays of equal length; every pair comes once.
    """
    order = _along_curve((low + high)[:, :3])
    levels = _tree(low[order], high[order])
    top = np.zeros(1, dtype=np.intp)
    waiting = [(0, top, top)]
    while waiting:
        level, one, other = waiting.pop()
        if level == len(levels) - 1:
            apart = one != other
            i, j = order[one[apart]], order[other[apart]]
            yield np.minimum(i, j), np.maximum(i, j)
            continue
        for start in range(0, one.size, AT_ONCE):
            part = slice(start, start + AT_ONCE)
            waiting.append((level + 1, *_children(levels[level + 1], one[part], other[part])))


def _children(
    boxes: tuple[Floats, Floats], one: Indices, other: Indices
) -> tuple[Indices, Indices]:
    """Overlapping pairs among the children of each pair of nodes, first <= second."""
    low, high = boxes
    first = (2 * one[:, None] + np.array([0, 0, 1, 1])).ravel()
    second = (2 * other[:, None] + np.array([0, 1, 0, 1])).ravel()
    keep = (first <= second) & (second < len(low))
    first, second = first[keep], second[keep]
    for axis in range(low.shape[1]):
        near = low[first, axis] <= high[second, axis]
        near &= low[second, axis] <= high[first, axis]
        first, second = first[near], second[near]
    return first, second


def _tree(low: Floats, high: Floats) -> list[tuple[Floats, Floats]]:
    """Boxes of the levels, one node first, the given boxes last; node i holds 2i and 2i + 1."""
    levels = [(low, high)]
    while len(low) > 1:
        starts = np.arange(0, len(low), 2)
        low, high = np.minimum.reduceat(low, starts), np.maximum.reduceat(high, starts)
        levels.append((low, high))
    return levels[::-1]


def _along_curve(centres: Floats) -> Indices:
    """Order of points along a Morton curve, so that neighbours in order are near in space."""
    span = np.maximum(np.ptp(centres, axis=0).max(), 1e-300)
    cells = ((centres - centres.min(axis=0)) / span * 1023).astype(np.int64)
    code = np.zeros(len(centres), dtype=np.int64)
    for bit in range(10):
        for axis in range(3):
            code |= ((cells[:, axis] >> bit) & 1) << (3 * bit + axis)
    return np.argsort(code, kind="stable")
