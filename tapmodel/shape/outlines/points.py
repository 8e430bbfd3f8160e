"""Points along an outline, close enough that chords between them stay within a given distance."""

import math

import numpy as np
from numpy.typing import NDArray

from tapmodel.shape.outlines.outline import Arc, Loop, Outline

Floats = NDArray[np.float64]


def outline_points(outline: Outline, chord: float) -> list[Floats]:
    """Each loop of an outline as points, shape (n, 2) [mm]; the last point is not the first again.

    Args:
        outline: of a section; loops in their order and sense.
        chord: largest distance between an arc and the chords that follow it [mm].
    """
    return [_loop_points(loop, chord) for loop in outline.loops]


def _loop_points(loop: Loop, chord: float) -> Floats:
    points: list[tuple[float, float]] = []
    for piece in loop:
        points.append(piece.start)
        if isinstance(piece, Arc):
            points += _inside_arc(piece, chord)
    return np.array(points)


def _inside_arc(arc: Arc, chord: float) -> list[tuple[float, float]]:
    widest = 2 * math.acos(max(1 - chord / arc.radius, 0.0))
    turn = arc.end_angle - arc.start_angle
    count = max(1, math.ceil(abs(math.radians(turn)) / widest))
    return [arc.at(arc.start_angle + turn * n / count) for n in range(1, count)]
