"""What is cleared of a thread up to a tooth: everything under its profile and its cone."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.chebyshev import DERIVATIVE, polynomials
from tapmodel.prediction.chips.pieces import CONE, HALF, INTEGRALS, Pieces

Floats = NDArray[np.float64]

# Newton's steps from a guess between two of 33 looks.
_STEPS = 5
# A step after which the next would change nothing: each squares what is left.
_SETTLED = 1e-8
_TINY = 1e-300


@dataclass(frozen=True, slots=True)
class Cleared:
    """What Q teeth of one thread have cleared, each with all before it.

    Attributes:
        area: between the drilled wall, profile and cone, (Q,) [mm²].
        moment: of that area about the axis, (Q,) [mm³].
        corners: the first four laws of the pieces where the cone meets one of the two flanks, or
            an end of the piece if it does not, (Q, 2K, 4).
    """

    area: Floats
    moment: Floats
    corners: Floats


def cleared(pieces: Pieces, heights: Floats) -> Cleared:
    """What teeth with their crests at `heights` (Q,) [mm] have cleared.

    At a radius the thread is cleared from the cone or its front flank, whichever lies farther
    back, to its rear flank. So a piece has up to three parts: where the cone lies before both
    flanks all is cleared, where it lies between them what is behind it, else nothing.

    Source: derived here.
    """
    place = _crossings(pieces, heights)
    found: Floats = polynomials(place) @ pieces.laws[:, None]
    rising = _rising(pieces)
    first, last = _at(pieces, pieces.start), _at(pieces, pieces.end)
    whole = (last - first)[:, None]
    before, behind = (
        found[..., INTEGRALS:] - first[:, None, None],
        last[:, None, None] - (found[..., INTEGRALS:]),
    )
    full = np.where(rising[:, 0, None, None], before[:, 0], behind[:, 0])
    none = np.where(rising[:, 1, None, None], behind[:, 1], before[:, 1])
    behind_cone = whole - full - none
    area, moment = (
        np.sum(_width(full[..., n : n + 3], behind_cone[..., n : n + 3], heights), axis=0)
        for n in (0, 3)
    )
    corners = np.moveaxis(found[..., :INTEGRALS], 2, 0).reshape(len(heights), -1, INTEGRALS)
    return Cleared(area, moment, corners)


def _width(full: Floats, behind_cone: Floats, heights: Floats) -> Floats:
    """Integral of the cleared width out of those of 1, half and cone."""
    one, half, cone = np.moveaxis(behind_cone, -1, 0)
    return 2 * full[..., 1] + half - cone + heights * one


def _at(pieces: Pieces, place: Floats) -> Floats:
    """The integrals at one place of each piece, (K, 6)."""
    return (polynomials(place)[:, None] @ pieces.laws[..., INTEGRALS:])[:, 0]


def _bounds(values: Floats) -> Floats:
    """Heights at which the cone meets the front, then the rear flank, on the second axis."""
    cone, half = values[..., CONE], values[..., HALF]
    return np.stack([cone + half, cone - half], axis=1)


def _rising(pieces: Pieces) -> NDArray[np.bool_]:
    """Whether the two bounds rise with the radius, (K, 2)."""
    ends = _bounds(pieces.seen[:, [0, -1]])
    return ends[..., 1] >= ends[..., 0]


def _crossings(pieces: Pieces, heights: Floats) -> Floats:
    """Places on the pieces where the bounds reach `heights`, or the nearer end, (K, 2, Q)."""
    place, low, high = _guesses(_bounds(pieces.seen), pieces.looks, heights)
    half, cone = pieces.laws[:, :, HALF], pieces.laws[:, :, CONE]
    laws = np.stack([cone + half, cone - half], axis=1)
    both = np.stack([laws, laws @ DERIVATIVE.T], axis=-1)
    for _ in range(_STEPS):
        found: Floats = polynomials(place) @ both
        slope = found[..., 1]
        # Where a bound turns its slope is nothing; the looks there lie close enough.
        step = (found[..., 0] - heights) / np.where(np.abs(slope) > _TINY, slope, np.inf)
        last, place = place, np.minimum(np.maximum(place - step, low), high)
        if np.max(np.abs(place - last)) < _SETTLED:
            break
    return place


def _guesses(seen: Floats, looks: Floats, heights: Floats) -> tuple[Floats, Floats, Floats]:
    """Places where bounds seen at `looks` reach `heights`, each with the looks before and after."""
    found = np.empty((3, *seen.shape[:2], len(heights)))
    for k, side in np.ndindex(*seen.shape[:2]):
        bound, at = seen[k, side], looks[k]
        if bound[-1] < bound[0]:
            bound, at = bound[::-1], at[::-1]
        bound = np.maximum.accumulate(bound)
        place = np.searchsorted(bound, heights)
        found[0, k, side] = np.interp(heights, bound, at)
        found[1, k, side] = at[np.maximum(place - 1, 0)]
        found[2, k, side] = at[np.minimum(place, len(at) - 1)]
    return found[0], np.minimum(found[1], found[2]), np.maximum(found[1], found[2])
