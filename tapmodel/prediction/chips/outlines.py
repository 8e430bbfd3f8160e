"""Outlines of the chips of one thread, lying one on the other as they are cut, for a picture."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.cleared import cleared
from tapmodel.prediction.chips.edge import CuttingEdge
from tapmodel.prediction.chips.extent import bounds_of
from tapmodel.prediction.chips.pieces import pieces_of
from tapmodel.prediction.chips.rows import rows_of
from tapmodel.prediction.chips.teeth import LEAST_SHARE
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]

# Points are one where they lie closer than this share of the pitch.
_ONE_POINT = 1e-9


@dataclass(frozen=True, slots=True)
class ChipOutline:
    """The outline of a chip.

    Attributes:
        land: number of the land that cuts it, from 0.
        height: z of the middle of the tooth's crest at the cutting edge [mm].
        points: round it, w along the axis from the middle of the thread, then the radius, (n, 2);
            the last is joined to the first [mm].
    """

    land: int
    height: float
    points: Floats


def chip_outlines(tap: Tap, drill: float) -> tuple[ChipOutline, ...]:
    """Outlines of the chips of the first thread, in the order in which they are cut.

    Flanks and cones are drawn by points; between those lie straight lines, which leave an arc or
    a bent edge by less than a thousandth of its length.

    Args:
        tap: that cuts.
        drill: diameter of the hole [mm].

    Source: derived here.
    """
    edge, wall = CuttingEdge(tap), drill / 2
    if wall >= edge.top:
        return ()
    pieces = pieces_of(edge, wall)
    rows = rows_of(edge, pieces)
    heights, lands = rows.heights[:1], rows.lands[0]
    done = cleared(pieces, heights[0])
    bounds = bounds_of(pieces, done.corners, heights)
    area, touching = np.diff(done.area), _ONE_POINT * tap.thread.pitch
    return tuple(
        ChipOutline(
            int(lands[tooth + 1]),
            float(heights[0, tooth + 1]),
            _round(bounds.radius[tooth], bounds.front[tooth], bounds.rear[tooth], touching),
        )
        for tooth in np.nonzero(area > LEAST_SHARE * np.max(done.area))[0].tolist()
    )


def _round(radius: Floats, front: Floats, rear: Floats, touching: float) -> Floats:
    """Up along the front of a chip and down along its rear."""
    here = np.nonzero(rear - front > -touching)[0]
    here = here[np.argsort(radius[here], kind="stable")]
    up = np.stack([front[here], radius[here]], axis=1)
    down = np.stack([np.maximum(rear, front)[here], radius[here]], axis=1)[::-1]
    points = np.concatenate([up, down])
    apart = np.max(np.abs(points - np.roll(points, 1, axis=0)), axis=1) > touching
    return points[apart]
