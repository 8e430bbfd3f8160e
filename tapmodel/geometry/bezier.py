"""Polynomial spans through samples of an exact curve: Bézier poles by interpolation.

A span of degree d through its Chebyshev-Lobatto nodes meets both ends exactly, so curves that
share an end share the point. Of the degrees offered, the one that needs the fewest poles to follow
the curve is taken: 3 or 4 for the nearly straight flank on a wall, 6 for a helix, 9 for a land.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from math import comb

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
Curve = Callable[[Indices, Floats], Floats]

# How closely a polynomial follows its curve [mm]: a thousandth of what anyone can measure.
CLOSE = 5e-8

# In a file a curve of one span up to this degree is left as it is; others get more knots, so many
# parts of its one span or of each of several (see `kernel/step/geometry.py`).
STRAIGHT_DEGREE = 6
PARTS, PARTS_OF_EACH = 3, 5

# Degrees offered, with how often spans may be halved for each before it is given up.
_DEGREES = ((3, 1), (4, 1), (5, 1), (6, 1), (7, 1), (8, 1), (9, 9))


@dataclass(frozen=True, slots=True)
class Spans:
    """Spans of several curves, in order of the curves and rising along each.

    Attributes:
        owner: (n,) number of the curve of each.
        ends: (n, 2) parameters.
        samples: (n, degree + 1, k) at `span_parameters`.
    """

    owner: Indices
    ends: Floats
    samples: Floats


@cache
def unit_nodes(degree: int) -> Floats:
    """Chebyshev-Lobatto nodes on [0, 1], shape (degree + 1,)."""
    steps = np.arange(degree + 1)
    return (1 - np.cos(np.pi * steps / degree)) / 2


def _bernstein(at: Floats, degree: int) -> Floats:
    """Weights of the poles at parameters of [0, 1], one row for each."""
    powers = np.arange(degree + 1)
    counts = np.array([comb(degree, k) for k in range(degree + 1)])
    return counts * at[:, None] ** powers * (1 - at[:, None]) ** (degree - powers)


@cache
def _poles_from_samples(degree: int) -> Floats:
    square = _bernstein(unit_nodes(degree), degree)
    return np.asarray(np.linalg.inv(square), dtype=np.float64)


@cache
def _between(degree: int) -> Floats:
    """Where a span is checked: half way between its nodes, where interpolation is worst."""
    nodes = unit_nodes(degree)
    return (nodes[:-1] + nodes[1:]) / 2


@cache
def _checks_from_samples(degree: int) -> Floats:
    return _bernstein(_between(degree), degree) @ _poles_from_samples(degree)


@cache
def _swept(degree: int) -> Floats:
    """Q with `x @ Q @ y` the integral of x dy over a span, from samples at its nodes."""
    nodes, weights = np.polynomial.legendre.leggauss(degree)
    at = (nodes + 1) / 2
    values = _bernstein(at, degree) @ _poles_from_samples(degree)
    less = _bernstein(at, degree - 1)
    slopes = degree * (less @ np.diff(_poles_from_samples(degree), axis=0))
    return np.asarray(values.T @ (slopes * (weights / 2)[:, None]), dtype=np.float64)


def swept_area(samples: Floats) -> float:
    """Area that a curve sweeps about the origin, counter-clockwise positive.

    The sum over the curves of a closed border is the area within, exact for the polynomials: sides
    that run nanometres apart do not confuse it, as they do a polygon.

    Args:
        samples: of its spans at their nodes, shape (n, degree + 1, 2).
    """
    matrix = _swept(samples.shape[1] - 1)
    x, y = samples[..., 0], samples[..., 1]
    return float(np.einsum("nj,jk,nk->", x, matrix - matrix.T, y)) / 2


def span_parameters(start: Floats, end: Floats, degree: int) -> Floats:
    """Parameters at which spans from `start` to `end` (shape (n,)) are sampled: (n, degree+1)."""
    return start[:, None] + (end - start)[:, None] * unit_nodes(degree)


def follow(  # noqa: PLR0913  (the last three are for one of two callers each)
    curve: Curve,
    owner: Indices,
    ends: Floats,
    least_degree: int = 3,
    *,
    close: float = CLOSE,
    eased: bool = False,
) -> Spans:
    """Spans that follow the curves within `close`, with as few poles as the degrees allow.

    Args:
        curve: samples (..., k) of the curve of each owner at parameters, shapes alike.
        owner: (n,) number of the curve that each given piece belongs to, rising.
        ends: (n, 2) ends of the pieces, beyond which no polynomial may reach.
        least_degree: of the degrees offered the first to try.
        close: to the curve [mm].
        eased: whether poles are counted as a file has them, where curves get more knots.
    """
    best: Spans | None = None
    fewest = np.inf
    for degree, halvings in _DEGREES:
        if degree < least_degree:
            continue
        once = Spans(owner, ends, sample(curve, owner, ends, degree))
        spans = _halved(curve, once, halvings, close)
        if spans is None:
            continue
        poles = _eased_poles(spans) if eased else _poles(spans)
        if poles < fewest:
            best, fewest = spans, poles
    if best is None:
        # Unreachable for smooth curves: nine halvings gain a factor of 2**63.
        return Spans(owner, ends, sample(curve, owner, ends, _DEGREES[-1][0]))
    return best


def sample(curve: Curve, owner: Indices, ends: Floats, degree: int) -> Floats:
    """Samples of spans for one degree, shape (n, degree + 1, k)."""
    return curve(*_broadcast(owner, span_parameters(ends[:, 0], ends[:, 1], degree)))


def _poles(spans: Spans) -> int:
    return len(spans.ends) * (spans.samples.shape[1] - 2)


def _eased_poles(spans: Spans) -> int:
    """Poles of the curves in a file: as `join` leaves them, and one more for every further part."""
    degree = spans.samples.shape[1] - 1
    counts = np.bincount(spans.owner)
    single, several = int(np.sum(counts == 1)), counts[counts > 1]
    alone = degree + 1 + (PARTS - 1 if degree > STRAIGHT_DEGREE else 0)
    joined = degree + PARTS_OF_EACH * several + (several - 1) * (degree - 2)
    return single * alone + int(np.sum(joined))


def _halved(curve: Curve, spans: Spans, halvings: int, close: float) -> Spans | None:
    degree = spans.samples.shape[1] - 1
    for count in range(halvings + 1):
        start, length = spans.ends[:, :1], spans.ends[:, 1:] - spans.ends[:, :1]
        exact = curve(*_broadcast(spans.owner, start + length * _between(degree)))
        checked = np.einsum("cq,nqk->nck", _checks_from_samples(degree), spans.samples)
        coarse = np.max(np.abs(checked - exact), axis=(1, 2)) > close
        if not np.any(coarse):
            return spans
        if count < halvings:
            spans = _split(curve, spans, coarse)
    return None


def _split(curve: Curve, spans: Spans, coarse: NDArray[np.bool_]) -> Spans:
    """Every coarse span in two halves."""
    degree = spans.samples.shape[1] - 1
    middle = spans.ends.mean(axis=1)
    keep = np.repeat(np.arange(len(coarse)), np.where(coarse, 2, 1))
    twin = keep[1:] == keep[:-1]
    second, first = np.concatenate([[False], twin]), np.concatenate([twin, [False]])
    owner, ends, samples = spans.owner[keep], spans.ends[keep], spans.samples[keep]
    ends[first, 1] = middle[keep][first]
    ends[second, 0] = middle[keep][second]
    new = first | second
    samples[new] = sample(curve, owner[new], ends[new], degree)
    return Spans(owner, ends, samples)


def _broadcast(owner: Indices, t: Floats) -> tuple[Indices, Floats]:
    return np.broadcast_to(owner[:, None], t.shape), t


def fit(samples: Floats) -> Floats:
    """Bézier poles of spans from their samples: (..., degree + 1, k) to the same."""
    degree = samples.shape[-2] - 1
    poles = np.einsum("pq,...qk->...pk", _poles_from_samples(degree), samples)
    poles[..., 0, :] = samples[..., 0, :]
    poles[..., -1, :] = samples[..., -1, :]
    return poles


def join(knots: Floats, spans: Floats) -> tuple[Floats, list[int]]:
    """One B-spline out of consecutive spans that meet smoothly: its poles and multiplicities.

    All curves of a tap have a continuous tangent, which the spans show within their closeness. The
    pole at an inner knot then lies on the line between its neighbours and is left out, and the knot
    gets multiplicity degree - 1; so that it stays where it is, both neighbours are moved to the
    mean tangent there.

    Args:
        knots: ends of the spans, shape (n + 1,).
        spans: Bézier poles, shape (n, degree + 1, k).

    Returns:
        Poles of shape (m, k) and a multiplicity for each knot.
    """
    count, order = spans.shape[:2]
    if count == 1:
        return spans[0], [order, order]
    length = np.diff(knots)[:, None]
    before = (spans[:-1, -1] - spans[:-1, -2]) / length[:-1]
    after = (spans[1:, 1] - spans[1:, 0]) / length[1:]
    tangent = (before + after) / 2
    poles = spans.copy()
    poles[:-1, -2] = spans[:-1, -1] - tangent * length[:-1]
    poles[1:, 1] = spans[1:, 0] + tangent * length[1:]
    inner = [span[1:-1] for span in poles]
    joined = np.concatenate([spans[0, :1], *inner, spans[-1, -1:]])
    return joined, [order, *[order - 2] * (count - 1), order]
