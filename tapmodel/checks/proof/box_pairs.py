"""Which of many boxes overlap: trees of boxes walked against each other, level by level."""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
Level = tuple[Floats, Floats]
Tree = list[Level]
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
    for one, other in _walk(levels, levels, alike=True):
        apart = one != other
        i, j = order[one[apart]], order[other[apart]]
        yield np.minimum(i, j), np.maximum(i, j)


def boxes_around(points: Floats, low: Floats, high: Floats) -> tuple[Indices, Indices]:
    """Pairs of a point and a box that holds it.

    Args:
        points: shape (m, 3).
        low: least corner of each box, shape (n, 3).
        high: greatest corner, same shape.

    Returns:
        Numbers of the points and of the boxes, each pair once.
    """
    rows, order = _along_curve(points), _along_curve(low + high)
    strewn, boxes = _tree(points[rows], points[rows]), _tree(low[order], high[order])
    # both walks begin at one node and end together
    depth = max(len(strewn), len(boxes))
    strewn, boxes = ([tree[0]] * (depth - len(tree)) + tree for tree in (strewn, boxes))
    found = [(rows[one], order[other]) for one, other in _walk(strewn, boxes, alike=False)]
    none = np.zeros(0, dtype=np.intp)
    return (
        np.concatenate([none, *(one for one, _ in found)]),
        np.concatenate([none, *(other for _, other in found)]),
    )


def _walk(first: Tree, second: Tree, *, alike: bool) -> Iterator[tuple[Indices, Indices]]:
    """Overlapping leaves of two trees of equal depth, each pair once if they are `alike`."""
    top = np.zeros(1, dtype=np.intp)
    waiting = [(0, top, top)]
    while waiting:
        level, one, other = waiting.pop()
        if level == len(first) - 1:
            yield one, other
            continue
        boxes = first[level + 1], second[level + 1]
        for start in range(0, one.size, AT_ONCE):
            part = slice(start, start + AT_ONCE)
            waiting.append((level + 1, *_children(boxes, one[part], other[part], alike=alike)))


def _children(
    boxes: tuple[Level, Level], one: Indices, other: Indices, *, alike: bool
) -> tuple[Indices, Indices]:
    """Overlapping pairs among the children of each pair of nodes; `alike`: first <= second."""
    (low_one, high_one), (low_other, high_other) = boxes
    first = (2 * one[:, None] + np.array([0, 0, 1, 1])).ravel()
    second = (2 * other[:, None] + np.array([0, 1, 0, 1])).ravel()
    keep = (first < len(low_one)) & (second < len(low_other))
    if alike:
        keep &= first <= second
    first, second = first[keep], second[keep]
    for axis in range(low_one.shape[1]):
        near = low_one[first, axis] <= high_other[second, axis]
        near &= low_other[second, axis] <= high_one[first, axis]
        first, second = first[near], second[near]
    return first, second


def _tree(low: Floats, high: Floats) -> Tree:
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
