"""Outlines of the chips of one thread, lying one on the other as they are cut, for a picture."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.cleared import cleared
from tapmodel.prediction.chips.edge import CuttingEdge
from tapmodel.prediction.chips.extent import Bounds, bounds_of
from tapmodel.prediction.chips.leftover import Gap, gap_of, outside
from tapmodel.prediction.chips.pieces import pieces_of
from tapmodel.prediction.chips.rows import rows_of
from tapmodel.prediction.chips.teeth import LEAST_OF_REST, LEAST_SHARE
from tapmodel.tap.tap import Tap, TapThread

Floats = NDArray[np.float64]

# Points are one where they lie closer than this share of the pitch.
_ONE_POINT = 1e-9


@dataclass(frozen=True, slots=True)
class ChipOutline:
    """The outline of a chip.

    Attributes:
        land: number of the land that cuts it, from 0.
        height: z of the middle of the tooth's crest at the cutting edge [mm].
        parts: round each part of it, w along the axis from the middle of the thread, then the
            radius, (n, 2); the last is joined to the first [mm]. Only what follows another tap
            has several: strips along both flanks of the thread that it finds.
    """

    land: int
    height: float
    parts: tuple[Floats, ...]


def gap_before(tap: Tap, drill: float, before: TapThread | None) -> Gap | None:
    """The thread that the tap before has left in the first groove; None where it left none.

    Args:
        tap: that follows.
        drill: diameter of the hole [mm].
        before: thread of the tap that went before, None where none did.

    Source: as `chips_of`.
    """
    if before is None or before.major <= drill:
        return None
    return gap_of(pieces_of(CuttingEdge(tap, before), drill / 2))


def chip_outlines(
    tap: Tap, drill: float, before: TapThread | None = None
) -> tuple[ChipOutline, ...]:
    """Outlines of the chips of the first thread, in the order in which they are cut.

    Flanks and cones are drawn by points; between those lie straight lines, which leave an arc or
    a bent edge by less than a thousandth of its length.

    Args:
        tap: that cuts.
        drill: diameter of the hole [mm].
        before: thread that a tap before it has left there, whose chips are no longer in the way.

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
    area, least, touching = np.diff(done.area), LEAST_SHARE, _ONE_POINT * tap.thread.pitch
    gap = gap_before(tap, drill, before)
    if gap is not None and before is not None:
        gone = cleared(pieces_of(CuttingEdge(tap, before), wall), heights[0])
        area, least = area - np.diff(gone.area), LEAST_OF_REST
    return tuple(
        ChipOutline(
            int(lands[tooth + 1]),
            float(heights[0, tooth + 1]),
            _parts(bounds, tooth, gap, touching),
        )
        for tooth in np.nonzero(area > least * np.max(done.area))[0].tolist()
    )


def _parts(bounds: Bounds, tooth: int, gap: Gap | None, touching: float) -> tuple[Floats, ...]:
    """The outline of a chip, or those of what the tap before has left of it."""
    radius, front, rear = (line[tooth] for line in (bounds.radius, bounds.front, bounds.rear))
    here = np.nonzero(rear - front > -touching)[0]
    here = here[np.argsort(radius[here], kind="stable")]
    radius, front, rear = radius[here], front[here], np.maximum(rear, front)[here]
    if gap is not None:
        parts = outside((radius, front, rear), gap, touching)
        return tuple(_apart(part, touching) for part in parts)
    up, down = np.stack([front, radius], axis=1), np.stack([rear, radius], axis=1)[::-1]
    return (_apart(np.concatenate([up, down]), touching),)


def _apart(points: Floats, touching: float) -> Floats:
    """Points without those that lie on the one before."""
    apart = np.max(np.abs(points - np.roll(points, 1, axis=0)), axis=1) > touching
    return points[apart]
