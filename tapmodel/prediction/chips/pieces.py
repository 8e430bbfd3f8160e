"""The edge cut into pieces on which all its laws are smooth, each law a polynomial there."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.chebyshev import FIT, FIT_INTEGRAL, NODES, polynomials
from tapmodel.prediction.chips.edge import CuttingEdge

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

HALF, CONE, LEAN, RADIUS = range(4)
"""Columns of `values`: half the thread, the cone's edge, how that leans, and the radius."""
INTEGRALS = 4
"""The first of six columns: integrals over the radius of 1, `half`, `cone`, then each times it."""

# Pieces shorter than this share of the pitch are none.
_SHORT = 1e-9
# Looks at a piece, closer at its ends, where what rises or falls may turn.
_LOOKS: Floats = -np.cos(np.linspace(0.0, np.pi, 33))
_LOOKS_AT: Floats = polynomials(_LOOKS)
# Rises by less than this share of the pitch are noise.
_FLAT = 1e-13


@dataclass(frozen=True, slots=True)
class Pieces:
    """K pieces of the edge, in rising order; on each, cone + half and cone - half run one way.

    Attributes:
        laws: coefficients of ten laws on the whole piece that a part was taken of, (K, 17, 10).
        start, end: where the part begins and ends on it, (K,), within -1 and 1.
        looks: places on the part, rising, its ends among them, (K, 33).
        seen: the first four laws there, (K, 33, 4).
    """

    laws: Floats
    start: Floats
    end: Floats
    looks: Floats
    seen: Floats


def pieces_of(edge: CuttingEdge, wall: float) -> Pieces:
    """Pieces of the edge from the drilled wall at radius `wall` [mm] to the crest.

    Towards the top of a rounded crest and the bottom of a rounded root the profile stands upright
    as a root does at zero; there the pieces are laid out by the root of the distance.

    Source: derived here.
    """
    ends = _ends(edge, wall)
    low, high = ends[:-1], ends[1:]
    map_ = _layout(edge, low, high)
    laws = _laws(edge, map_)
    seen: Floats = _LOOKS_AT @ laws[..., :INTEGRALS]
    turns = _turns(seen, _FLAT * edge.tap.thread.pitch)
    if all(len(places) == 0 for places in turns):
        flat = np.ones(len(low))
        return Pieces(laws, -flat, flat, np.broadcast_to(_LOOKS, seen.shape[:2]), seen)
    return _parted(laws, turns)


def _ends(edge: CuttingEdge, wall: float) -> Floats:
    ends = np.array([wall, *edge.joints(wall, edge.top), edge.top])
    apart = np.diff(ends) > _SHORT * edge.tap.thread.pitch
    return np.array([*ends[:-1][apart], edge.top])


def _layout(edge: CuttingEdge, low: Floats, high: Floats) -> Floats:
    """Coefficients of the radius in powers of x, (3, K): it rises from `low` to `high`."""
    slack = _SHORT * edge.tap.thread.pitch
    crest, _, root, _ = edge.parts
    map_ = np.array([(low + high) / 2, (high - low) / 2, np.zeros_like(low)])
    if crest.is_arc:
        arc = low > edge.crest_start - slack
        _by_root(map_, arc, edge.top, edge.top - low, edge.top - high)
    if root.is_arc:
        arc = (high < edge.root_end + slack) & (low > edge.bottom - slack)
        _by_root(map_, arc, edge.bottom, low - edge.bottom, high - edge.bottom)
    return map_


def _by_root(map_: Floats, arc: NDArray[np.bool_], at: float, first: Floats, last: Floats) -> None:
    """Lay the pieces `arc` out by the root of the distance from `at`, from `first` to `last`."""
    sign = np.where(last > first, 1.0, -1.0)
    begin, end = np.sqrt(np.maximum(first, 0.0)), np.sqrt(np.maximum(last, 0.0))
    middle, half = (begin + end) / 2, (end - begin) / 2
    rooted = np.array([at + sign * middle**2, sign * 2 * middle * half, sign * half**2])
    map_[:, arc] = rooted[:, arc]


def _laws(edge: CuttingEdge, map_: Floats) -> Floats:
    base, slope, bend = map_[:, :, None]
    radii = base + (slope + bend * NODES) * NODES
    half, (cone, lean) = edge.half(radii), edge.cone(radii)
    ones = np.ones_like(radii)
    values = np.stack([half, cone, lean, radii], axis=-1)
    flat = np.stack([ones, half, cone], axis=-1) * (slope + 2 * bend * NODES)[..., None]
    integrands = np.concatenate([flat, flat * radii[..., None]], axis=-1)
    return np.concatenate([FIT @ values, FIT_INTEGRAL @ integrands], axis=-1)


def _turns(seen: Floats, flat: float) -> list[list[float]]:
    """Places on each piece where cone + half or cone - half turns, in rising order."""
    found: list[list[float]] = []
    bounds = [seen[..., CONE] + seen[..., HALF], seen[..., CONE] - seen[..., HALF]]
    steps = [np.diff(bound, axis=1) for bound in bounds]
    mixed = [np.any(step > flat, axis=1) & np.any(step < -flat, axis=1) for step in steps]
    for piece in range(len(seen)):
        places: list[float] = []
        for bound, step, both in zip(bounds, steps, mixed, strict=True):
            if both[piece]:
                places += _turns_of(bound[piece], step[piece], flat)
        found.append(sorted(places))
    return found


def _turns_of(bound: Floats, step: Floats, flat: float) -> list[float]:
    """The top or bottom of the parabola through the three looks about each turn."""
    moving = np.nonzero(np.abs(step) > flat)[0]
    places: list[float] = []
    for before, after in zip(moving[:-1].tolist(), moving[1:].tolist(), strict=True):
        if step[before] * step[after] < 0:
            x, y = _LOOKS[[before, after, after + 1]], bound[[before, after, after + 1]]
            first, last = (y[1] - y[0]) / (x[1] - x[0]), (y[2] - y[1]) / (x[2] - x[1])
            bend = (last - first) / (x[2] - x[0])
            places.append(float((x[0] + x[1]) / 2 - first / (2 * bend)))
    return places


def _parted(laws: Floats, turns: list[list[float]]) -> Pieces:
    ends = [[-1.0, *places, 1.0] for places in turns]
    piece = np.array([number for number, at in enumerate(ends) for _ in at[1:]])
    start = np.array([x for at in ends for x in at[:-1]])
    end = np.array([x for at in ends for x in at[1:]])
    looks = (start + end)[:, None] / 2 + (end - start)[:, None] / 2 * _LOOKS
    laws = laws[piece]
    return Pieces(laws, start, end, looks, polynomials(looks) @ laws[..., :INTEGRALS])
