"""The faces of a solid's flutes: the arcs of their floors, and the straight walls that cut.

Each is read from points of the faces; where those of all flutes do not agree, nothing is told.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import sqrt

import numpy as np
from numpy.typing import NDArray

from tapmodel import precision
from tapmodel.shape.flute_section import FluteSection
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

Floats = NDArray[np.float64]

_SAME = 2 * precision.FOREIGN_FACE
_FITTED = 5  # points of a face that show whether they lie on a circle, or in a plane
_BELOW = 0.95  # of the root's radius, under which nothing is but the flutes
_UPRIGHT = 0.05  # of the pitch, the least height of a flat face that is looked at


@dataclass(frozen=True, slots=True)
class Floors:
    """The arcs of the floors of all flutes, which agree.

    Attributes:
        ball: their radius [mm].
        away: of their middles from the axis [mm].
        middles: x and y of each, (n, 2) [mm].
    """

    ball: float
    away: float
    middles: Floats


def floors_seen(tap: Tap, faces: Sequence[Floats]) -> Floors | None:
    """The floors of the flutes; None where none are made out, or not the same.

    Args:
        tap: the tap, which tells where to look.
        faces: points of each face of a solid whose axis is z, (n, 3) [mm].

    Source: derived here.
    """
    found = np.array(list(_floors(tap, faces)))
    if not len(found) or (np.ptp(found[:, :2], axis=0) > _SAME).any():
        return None
    ball, away = np.median(found[:, :2], axis=0).tolist()
    return Floors(ball, away, found[:, 2:])


def _floors(tap: Tap, faces: Sequence[Floats]) -> Iterator[tuple[float, float, float, float]]:
    """Of each floor the radius of its arc, how far its middle is from the axis, x and y [mm]."""
    root = _BELOW * tap.thread.minor / 2
    for points in faces:
        x, y, z = points[:, 0], points[:, 1], points[:, 2]
        lowest = float(np.hypot(x, y).min())
        if len(points) < _FITTED or lowest > root or np.ptp(z) < tap.thread.pitch:
            continue
        # x² + y² = 2 a x + 2 b y + c on the circle about (a, b)
        rows = np.stack([2 * x, 2 * y, np.ones_like(x)], axis=1)
        a, b, _ = np.linalg.lstsq(rows, x**2 + y**2)[0].tolist()
        radii = np.hypot(x - a, y - b)
        ball, away = float(radii.mean()), float(np.hypot(a, b))
        # the axis lies outside the arc of a flute, inside every other round face
        if np.ptp(radii) <= precision.FOREIGN_FACE and ball < away < tap.thread.major:
            yield ball, away, a, b


def section_seen(tap: Tap, faces: Sequence[Floats], floors: Floors) -> FluteSection | None:
    """One flute, by the straight wall of its cutting face; None where no such wall is seen.

    A straight wall touches the arc of its flute's floor, so it stands a ball's radius away from
    the arc's middle; how far the axis is from it is the cutter's offset and that radius.

    Args:
        tap: the tap, whose hand tells which wall cuts.
        faces: points of each face, (n, 3) [mm].
        floors: that were seen.

    Source: derived here.
    """
    offsets: list[float] = []
    for normal, distance in _flats(tap, faces):
        for side in (1, -1):
            n, d = side * normal, side * distance
            touched = np.abs(d - floors.middles @ n - floors.ball) <= _SAME
            # the cutter comes from outside, along its wall
            along = np.array([n[1], -n[0]]) * (1 if tap.thread.hand is Hand.RIGHT else -1)
            outwards = floors.middles @ along > 0
            offsets += [d - floors.ball] * int(np.count_nonzero(touched & outwards))
    if not offsets or np.ptp(offsets) > _SAME:
        return None
    offset = float(np.median(offsets))
    if abs(offset) >= floors.away:
        return None
    return FluteSection(floors.ball, offset, sqrt(floors.away**2 - offset**2))


def _flats(tap: Tap, faces: Sequence[Floats]) -> Iterator[tuple[Floats, float]]:
    """Normal across the axis, and distance from it, of each flat face that stands along it."""
    for points in faces:
        across, z = points[:, :2], points[:, 2]
        # of a single tooth, where the arc reaches up to the root
        upright = np.ptp(z) > _UPRIGHT * tap.thread.pitch
        if len(points) < _FITTED or not upright or z.min() > tap.blank.thread_length:
            continue
        middle = across.mean(axis=0)
        normal = np.linalg.svd(across - middle)[2][1]
        if float(np.ptp(across @ normal)) <= precision.FOREIGN_FACE:
            yield normal, float(middle @ normal)
