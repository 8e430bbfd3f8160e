"""The teeth that follow each other along each thread."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.edge import CuttingEdge
from tapmodel.prediction.chips.pieces import CONE, HALF, Pieces

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Rows:
    """One row of teeth for each start, in the order in which they come along its thread.

    The first of a row cuts nothing yet; the last, or one before it, has finished the thread.

    Attributes:
        heights: z of the crests at the cutting edge, (starts, n) [mm].
        lands: numbers of their lands, (starts, n).
    """

    heights: Floats
    lands: Indices


def rows_of(edge: CuttingEdge, pieces: Pieces) -> Rows:
    """The teeth of a tap that meet the pieces of its edge with their cones.

    Along one thread each land is followed by the next, a land's share of the lead farther back.

    Source: derived here.
    """
    thread, count = edge.tap.thread, edge.tap.flutes.count
    step = thread.lead / count
    begin = thread.first_z + edge.advance * math.radians(edge.crest_edge)
    start = begin + thread.pitch * np.arange(thread.starts)[:, None]
    cone, half = pieces.seen[..., CONE], pieces.seen[..., HALF]
    first = np.floor((np.min(cone - half) - start) / step)
    last = np.ceil((np.max(cone + half) - start) / step)
    numbers = first + np.arange(int(np.max(last - first)) + 1)
    return Rows(start + step * numbers, numbers.astype(np.intp) % count)
