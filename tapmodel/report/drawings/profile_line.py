"""The thread's axial profile as a line of points, arcs divided finely enough to look round."""

import math
from itertools import pairwise

import numpy as np

from tapmodel.shape.outlines.outline import Point
from tapmodel.shape.profile import segments
from tapmodel.tap.tap import TapThread

_ARC_PIECES = 16


def profile_line(thread: TapThread, start: float, end: float) -> list[Point]:
    """Whole pitches as (z, radius), a crest's middle at `start`, up to `end` at least [mm]."""
    line: list[Point] = []
    for turn in range(math.ceil((end - start) / thread.pitch)):
        for part in segments(thread):
            count = _ARC_PIECES if part.arc else 1
            offsets = np.linspace(part.start, part.end, count + 1)[:-1]
            radii = part.radius(offsets)
            shift = start + turn * thread.pitch
            line += [(shift + float(w), float(r)) for w, r in zip(offsets, radii, strict=True)]
    return line


def height_at(line: list[Point], x: float) -> float:
    """Ordinate of a line of points at the abscissa x."""
    (x0, y0), (x1, y1) = next((a, b) for a, b in pairwise(line) if a[0] <= x <= b[0])
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


def between(line: list[Point], low: float, high: float) -> list[Point]:
    """The part of a line of points between two abscissae."""
    found: list[Point] = []
    for (x0, y0), (x1, y1) in pairwise(line):
        start, end = max(x0, low), min(x1, high)
        if start < end:
            slope = (y1 - y0) / (x1 - x0)
            found += [(start, y0 + slope * (start - x0)), (end, y0 + slope * (end - x0))]
    return found
