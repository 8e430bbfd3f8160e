"""The chips that the teeth of a tap take, tooth by tooth along each thread."""

import math

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.cleared import cleared
from tapmodel.prediction.chips.edge import CuttingEdge
from tapmodel.prediction.chips.extent import bounds_of, thickness_of, width_of
from tapmodel.prediction.chips.finished import finished_area
from tapmodel.prediction.chips.pieces import Pieces, pieces_of
from tapmodel.prediction.chips.record import Chips, Tooth
from tapmodel.prediction.chips.rows import rows_of
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]

LEAST_SHARE = 1e-12
"""A chip of less than this share of the finished thread is none: a wedge a millionth of it long,
left by the last digits of numbers that meant no chip."""

# Heights are told apart as on the drawing of the teeth [digits after the point, mm].
_DIGITS = 6
# Of turns: a crest so little in front of the front stands on it.
_ON_FRONT = 1e-9


def chips_of(tap: Tap, drill: float) -> Chips:
    """The chips of a tap in a hole drilled to diameter `drill` [mm].

    Each of several threads is cut by all lands, whose teeth stand a land's share of the lead one
    behind the other along it. The edge alone cuts: what rubs behind it takes no chip. The tap's
    thread is taken to be long enough to finish its work.

    Source: derived here.
    """
    edge, wall = CuttingEdge(tap), drill / 2
    if wall >= edge.top:
        return Chips((), 0.0, 0.0, 0.0, 0.0)
    teeth = _teeth(edge, pieces_of(edge, wall))
    thicknesses = [tooth.thickness for tooth in teeth]
    return Chips(
        teeth=teeth,
        area_sum=math.fsum(tooth.area for tooth in teeth),
        area_expected=tap.thread.starts * finished_area(edge, wall),
        thickness_min=min(thicknesses),
        thickness_max=max(thicknesses),
    )


def _teeth(edge: CuttingEdge, pieces: Pieces) -> tuple[Tooth, ...]:
    rows = rows_of(edge, pieces)
    done = cleared(pieces, rows.heights.ravel())
    area, moment = (
        np.diff(part.reshape(rows.heights.shape), axis=1).ravel()
        for part in (done.area, done.moment)
    )
    bounds = bounds_of(pieces, done.corners, rows.heights)
    height, land = rows.heights[:, 1:].ravel(), rows.lands[:, 1:].ravel()
    cuts = np.nonzero(area > LEAST_SHARE * np.max(done.area))[0]
    order = cuts[np.lexsort((land[cuts], np.round(height[cuts], _DIGITS)))]
    turn = np.floor(height / edge.tap.thread.pitch + _ON_FRONT)
    whole = (column[order].astype(int).tolist() for column in (land, turn))
    sizes = (thickness_of(bounds, edge), width_of(bounds, edge))
    radius = moment[order] / area[order]
    columns = (*(column[order].tolist() for column in (height, area, *sizes)), radius.tolist())
    return tuple(Tooth(*values) for values in zip(*whole, *columns, strict=True))
