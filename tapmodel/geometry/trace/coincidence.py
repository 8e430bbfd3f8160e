"""Points that are one and the same but for rounding."""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


def labels(points: Floats, closeness: float) -> Indices:
    """Numbers of places, from 0, equal for points that coincide; shape (n,).

    Points coincide when along every axis a chain of points of the same place joins them, none
    farther from the next than the closeness: near points never differ, whatever the order.

    Args:
        points: shape (n, d) [mm].
        closeness: largest step of a chain along an axis [mm].
    """
    label: Indices = np.zeros(len(points), dtype=np.intp)
    count = 0
    # A place parted along one axis may have held a chain along another together.
    while (found := int(label.max(initial=-1)) + 1) > count:
        count = found
        for along in points.T:
            label = _parted(along, label, closeness)
    return label


def _parted(along: Floats, label: Indices, closeness: float) -> Indices:
    """Every place parted where it has a gap along one axis."""
    order = np.lexsort((along, label))
    gap = (np.diff(along[order]) > closeness) | (np.diff(label[order]) != 0)
    parted = np.empty_like(label)
    parted[order] = np.concatenate([[0], np.cumsum(gap)])
    return parted
