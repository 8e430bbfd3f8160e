"""The chips that the teeth of a tap take, tooth by tooth along each thread.

A back taper is left out: at 0.1 mm in 100 mm the flanks in a chamfer of 6 mm stand out by 3 µm of
radius at the most, which makes a chip wider by a few thousandths.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.cleared import Cleared, cleared
from tapmodel.prediction.chips.edge import CuttingEdge
from tapmodel.prediction.chips.extent import bounds_of, thickness_of, width_of
from tapmodel.prediction.chips.finished import finished_area
from tapmodel.prediction.chips.pieces import Pieces, pieces_of
from tapmodel.prediction.chips.record import Chips, Tooth
from tapmodel.prediction.chips.rows import Rows, rows_of
from tapmodel.tap.tap import Tap, TapThread

Floats = NDArray[np.float64]

LEAST_SHARE = 1e-12
"""A chip of less than this share of the finished thread is none: a wedge a millionth of it long,
left by the last digits of numbers that meant no chip."""

LEAST_OF_REST = 1e-10
"""The same of a tap that follows another, whose chips are differences of two such areas."""

# Heights are told apart as on the drawing of the teeth [digits after the point, mm].
_DIGITS = 6
# Of turns: a crest so little in front of the front stands on it.
_ON_FRONT = 1e-9


@dataclass(frozen=True, slots=True)
class _Cuts:
    """What the neighbouring teeth of each row have between them, (C,).

    Attributes:
        area, moment: [mm²], [mm³].
        thickness, width: [mm].
        most: area that all teeth have cleared together [mm²].
    """

    area: Floats
    moment: Floats
    thickness: Floats
    width: Floats
    most: float


def chips_of(tap: Tap, drill: float, before: TapThread | None = None) -> Chips:
    """The chips of a tap in a hole drilled to diameter `drill` [mm].

    Each of several threads is cut by all lands, whose teeth stand a land's share of the lead one
    behind the other along it. The edge alone cuts: what rubs behind it takes no chip. The tap's
    thread is taken to be long enough to finish its work.

    Of a tap that follows another the chips are what the same edges would take of solid metal less
    what of that lies in the thread cut before: exact in area and radius. Where a chip is parted so
    into strips along both flanks its width is that of the strips together; its greatest thickness
    is that of the whole one, as the cones lie equally far apart everywhere.

    Args:
        tap: that cuts.
        drill: diameter of the hole [mm].
        before: thread that a tap before it has left there, inside that of `tap`; see
            `tapmodel.prediction.part.earlier`. Where its flanks are relieved they are taken to fall
            off from its edge as those of `tap` do.

    Source: derived here.
    """
    edge, wall = CuttingEdge(tap), drill / 2
    if wall >= edge.top:
        return Chips((), 0.0, 0.0, 0.0, 0.0)
    left = None if before is None or before.major <= drill else CuttingEdge(tap, before)
    teeth = _teeth(edge, left, wall)
    thicknesses = [tooth.thickness for tooth in teeth]
    done = 0.0 if left is None else finished_area(left, wall)
    return Chips(
        teeth=teeth,
        area_sum=math.fsum(tooth.area for tooth in teeth),
        area_expected=tap.thread.starts * (finished_area(edge, wall) - done),
        thickness_min=min(thicknesses, default=0.0),
        thickness_max=max(thicknesses, default=0.0),
    )


def _teeth(edge: CuttingEdge, left: CuttingEdge | None, wall: float) -> tuple[Tooth, ...]:
    pieces = pieces_of(edge, wall)
    rows = rows_of(edge, pieces)
    cuts = _cuts(edge, pieces, rows)
    least = LEAST_SHARE
    if left is not None:
        cuts = _without(cuts, _cuts(left, pieces_of(left, wall), rows))
        least = LEAST_OF_REST
    height, land = rows.heights[:, 1:].ravel(), rows.lands[:, 1:].ravel()
    takes = np.nonzero(cuts.area > least * cuts.most)[0]
    order = takes[np.lexsort((land[takes], np.round(height[takes], _DIGITS)))]
    turn = np.floor(height / edge.tap.thread.pitch + _ON_FRONT)
    whole = (column[order].astype(int).tolist() for column in (land, turn))
    radius = cuts.moment[order] / cuts.area[order]
    sizes = (height, cuts.area, cuts.thickness, cuts.width)
    columns = (*(column[order].tolist() for column in sizes), radius.tolist())
    return tuple(Tooth(*values) for values in zip(*whole, *columns, strict=True))


def _cuts(edge: CuttingEdge, pieces: Pieces, rows: Rows) -> _Cuts:
    """The chips of teeth that find the hole as it was drilled."""
    done: Cleared = cleared(pieces, rows.heights.ravel())
    area, moment = (
        np.diff(part.reshape(rows.heights.shape), axis=1).ravel()
        for part in (done.area, done.moment)
    )
    bounds = bounds_of(pieces, done.corners, rows.heights)
    most = float(np.max(done.area))
    return _Cuts(area, moment, thickness_of(bounds, edge), width_of(bounds, edge), most)


def _without(cuts: _Cuts, gone: _Cuts) -> _Cuts:
    """The chips less what of them is gone."""
    area = cuts.area - gone.area
    width = cuts.width - np.maximum(gone.width, 0.0)
    # A tooth whose cone passes the crest of the gap has strips that overlap along the cone.
    with np.errstate(divide="ignore", invalid="ignore"):
        least = np.where(cuts.thickness > 0, area / cuts.thickness, 0.0)
    width = np.maximum(width, least)
    return _Cuts(area, cuts.moment - gone.moment, cuts.thickness, width, cuts.most)
