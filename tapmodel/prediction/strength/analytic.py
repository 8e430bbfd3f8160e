"""The other half of an analytic function of which one half is known on the edge of a region.

f = u + iv is analytic in the region, u known on its edge. With a + ib for
`dt eta'(t)/(eta(t) - eta(s))` Cauchy's integral of f at a node s of the edge gives
`v(s) - (1/pi) int b v dt = -(1/pi) PV int a u dt`. Both sums run over the nodes as they are: on
the left the row sum is known, pi, the angle that the region fills seen from its edge, which
stands for the term of the node itself; on the right `a (u(t) - u(s))` is smooth.
"""

import math

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Complexes = NDArray[np.complex128]


def conjugate(places: Complexes, steps: Complexes, known: Floats, slope: Floats) -> Floats:
    """Imaginary parts on an edge of functions whose real parts there are given.

    Their mean over the nodes is set to nothing.

    Args:
        places: nodes on the whole edge with the region at its left, and on that of a hole,
            shape (n,).
        steps: derivative of `places` by the node's number.
        known: real parts, shape (n, k).
        slope: derivative of `known` by the node's number.

    Returns:
        Imaginary parts, shape (n, k).

    Source: derived here from Cauchy's formula.
    """
    kernel = _kernel(places, steps, places)
    across, along = kernel.real, kernel.imag
    matrix = _matrix(along, along.sum(axis=1))
    matrix += 1 / len(places)
    return np.asarray(np.linalg.solve(matrix, _right(across, known, slope)), np.float64)


def conjugate_mirrored(places: Complexes, steps: Complexes, known: Floats, slope: Floats) -> Floats:
    """As `conjugate`, for an edge that is its own image in the real axis.

    Args:
        places: nodes on the upper half of the edge, from the real axis to the real axis.
        steps: derivative of `places` by the node's number.
        known: real parts, alike in both halves, shape (n, k).
        slope: derivative of `known` by the node's number.

    Returns:
        Imaginary parts on the upper half, shape (n, k); opposite on the other.

    Source: derived here from Cauchy's formula.
    """
    kernel = _kernel(places, steps, places)
    image = -np.conj(steps)[None, :] / (np.conj(places)[None, :] - places[:, None])
    across, along = kernel.real + image.real, kernel.imag - image.imag
    matrix = _matrix(along, kernel.imag.sum(axis=1) + image.imag.sum(axis=1))
    return np.asarray(np.linalg.solve(matrix, _right(across, known, slope)), np.float64)


def _kernel(places: Complexes, steps: Complexes, seen_from: Complexes) -> Complexes:
    """Cauchy's kernel without the term of a node itself."""
    apart = places[None, :] - seen_from[:, None]
    np.fill_diagonal(apart, 1.0)
    kernel = steps[None, :] / apart
    np.fill_diagonal(kernel, 0.0)
    return kernel


def _matrix(along: Floats, seen: Floats) -> Floats:
    """The left side, times 1; `seen` is the angle under which a node sees all others."""
    matrix = along * (-1 / math.pi)
    own = np.einsum("ii->i", matrix)
    own += seen / math.pi
    return matrix


def _right(across: Floats, known: Floats, slope: Floats) -> Floats:
    # A product by the library of linear algebra would wake its threads for nothing.
    summed = np.einsum("ij,jk->ik", across, known) - known * across.sum(axis=1)[:, None]
    return (summed + slope) * (-1 / math.pi)
