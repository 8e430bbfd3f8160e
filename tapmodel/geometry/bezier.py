"""Polynomial spans through samples of an exact curve: Bézier poles by interpolation.

Degree 7 through Chebyshev-Lobatto nodes reproduces a helix over 50 degrees at radius 10 mm to
some 1e-9 mm; both ends of a span are met exactly, so curves that share an end share the point.
"""

from collections.abc import Callable
from functools import cache
from math import comb

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

DEGREE = 7
# How closely a polynomial follows its curve [mm]: far below the kernel's confusion of 1e-7.
CLOSE = 3e-9
_HALVINGS = 8


@cache
def unit_nodes() -> Floats:
    """Chebyshev-Lobatto nodes on [0, 1], shape (DEGREE + 1,)."""
    steps = np.arange(DEGREE + 1)
    return (1 - np.cos(np.pi * steps / DEGREE)) / 2


def _bernstein(at: Floats) -> Floats:
    """Weights of the poles at parameters of [0, 1], one row for each."""
    powers = np.arange(DEGREE + 1)
    counts = np.array([comb(DEGREE, k) for k in range(DEGREE + 1)])
    return counts * at[:, None] ** powers * (1 - at[:, None]) ** (DEGREE - powers)


@cache
def _poles_from_samples() -> Floats:
    return np.asarray(np.linalg.inv(_bernstein(unit_nodes())), dtype=np.float64)


@cache
def _between() -> Floats:
    """Where a span is checked: between the outer and between the middle nodes."""
    nodes = unit_nodes()
    return (nodes[:-1] + nodes[1:])[[0, DEGREE // 2, DEGREE - 1]] / 2


@cache
def _checks_from_samples() -> Floats:
    return _bernstein(_between()) @ _poles_from_samples()


def span_parameters(start: Floats, end: Floats) -> Floats:
    """Parameters at which spans from `start` to `end` (shape (n,)) are sampled: (n, DEGREE+1)."""
    return start[:, None] + (end - start)[:, None] * unit_nodes()


def refined(
    curve: Callable[[NDArray[np.intp], Floats], Floats], owner: NDArray[np.intp], knots: Floats
) -> tuple[NDArray[np.intp], Floats, Floats]:
    """Halve spans until their polynomials follow the curve within `CLOSE`.

    Args:
        curve: samples (..., k) of the curve of each owner at parameters, shapes (n, m) alike.
        owner: (n,) number of the curve that each span belongs to.
        knots: (n, 2) ends of the spans.

    Returns:
        Owners (m,), ends (m, 2) and samples (m, DEGREE + 1, k) of the spans, in the same order
        and rising along each curve.
    """
    samples = curve(*_broadcast(owner, span_parameters(knots[:, 0], knots[:, 1])))
    for _ in range(_HALVINGS):
        start, length = knots[:, :1], knots[:, 1:] - knots[:, :1]
        exact = curve(*_broadcast(owner, start + length * _between()))
        miss = np.abs(np.einsum("cq,nqk->nck", _checks_from_samples(), samples) - exact)
        coarse = np.max(miss, axis=(1, 2)) > CLOSE
        if not np.any(coarse):
            break
        middle = knots.mean(axis=1)
        parts = np.where(coarse, 2, 1)
        keep = np.repeat(np.arange(len(parts)), parts)
        second = np.concatenate([[False], keep[1:] == keep[:-1]])
        first = np.concatenate([keep[1:] == keep[:-1], [False]])
        owner, knots = owner[keep], knots[keep].copy()
        knots[first, 1] = middle[keep][first]
        knots[second, 0] = middle[keep][second]
        samples = samples[keep]
        new = first | second
        samples[new] = curve(*_broadcast(owner[new], span_parameters(knots[new, 0], knots[new, 1])))
    return owner, knots, samples


def _broadcast(owner: NDArray[np.intp], t: Floats) -> tuple[NDArray[np.intp], Floats]:
    return np.broadcast_to(owner[:, None], t.shape), t


def fit(samples: Floats) -> Floats:
    """Bézier poles of spans from samples at `span_parameters`: (..., DEGREE+1, k) to the same."""
    poles = np.einsum("pq,...qk->...pk", _poles_from_samples(), samples)
    poles[..., 0, :] = samples[..., 0, :]
    poles[..., -1, :] = samples[..., -1, :]
    return poles


def join(knots: Floats, spans: Floats) -> tuple[Floats, list[int]]:
    """One B-spline out of consecutive spans that meet smoothly: its poles and multiplicities.

    The pole at an inner knot lies between its neighbours when the curve has a continuous tangent
    there (all curves of a tap do), so it is left out and the knot gets multiplicity DEGREE - 1.

    Args:
        knots: shape (n + 1,), the ends of the spans.
        spans: shape (n, DEGREE + 1, k).

    Returns:
        Poles of shape (m, k) and a multiplicity for each knot.
    """
    rows = [spans[0]]
    for span in spans[1:]:
        rows[-1] = rows[-1][:-1]
        rows.append(span[1:])
    inner = [DEGREE - 1] * (len(knots) - 2)
    return np.concatenate(rows), [DEGREE + 1, *inner, DEGREE + 1]
