"""Lines of equal carbon in a tooth, mirrored about its middle."""

from typing import cast

import numpy as np
from contourpy import LineType, contour_generator

from tapmodel.prediction.heat.record import Tooth
from tapmodel.report.drawings.charts.stress_lines import Floats, StressLine

LEVELS = (0.3, 0.4, 0.6, 0.8, 0.9, 1.0)
"""Carbon [mass %] along which lines are drawn."""

_SHORT = 0.08
"""Lines shorter than this share of the pitch are left out."""


def carbon_lines(tooth: Tooth) -> list[StressLine]:
    """Lines of equal carbon, the least carbon first; x along the axis from the middle of a crest.

    Source: traced on the grid on which the carbon was computed, straight between its nodes.
    """
    grid = tooth.found.grid
    absent = grid.rows < 0
    # Where a row has no more nodes its last one stands in, and is masked.
    x, y = (grid.nodes[grid.rows, side] for side in (0, 1))
    carbon = np.ma.array(tooth.found.carbon[grid.rows], mask=absent)
    traced = contour_generator(x, y, carbon, line_type=LineType.Separate)
    found: list[StressLine] = []
    for level in LEVELS:
        # Of this kind they are points alone, (n, 2).
        for half in cast("list[Floats]", traced.lines(level)):
            found += _whole(level, half, tooth.pitch)
    return [line for line in found if line.length > _SHORT * tooth.pitch]


def surface_of(tooth: Tooth) -> Floats:
    """Crest, flanks and half a root at either side, from left to right, shape (n, 2) [mm]."""
    grid = tooth.found.grid
    half = grid.nodes[grid.surface]
    half = half[np.argsort(half[:, 0], kind="stable")]
    return np.concatenate([(half * [-1.0, 1.0])[:0:-1], half])


def _whole(level: float, half: Floats, pitch: float) -> list[StressLine]:
    """A line and its mirror image, as one where they meet on the middle of the crest."""
    close = 1e-6 * pitch
    if half[-1, 0] < close:
        half = half[::-1]
    mirrored = (half * [-1.0, 1.0])[::-1]
    if half[0, 0] < close:
        closed = bool(half[-1, 0] < close)
        points = np.concatenate([mirrored[:-1], half[: len(half) - closed]])
        return [StressLine(level, points, closed)]
    closed = bool(np.all(half[0] == half[-1]))
    sides = (half, mirrored)
    return [StressLine(level, side[:-1] if closed else side, closed) for side in sides]
