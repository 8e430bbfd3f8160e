"""Functions on the interval from -1 to 1 as sums of Chebyshev polynomials, many at once.

Source: J. C. Mason and D. C. Handscomb, Chebyshev Polynomials (2003), chapters 2 and 6, from
memory.
"""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

DEGREE = 16
"""Of the sums; functions are fitted one degree lower, so that their integrals have room."""

_ANGLES = (2 * np.arange(DEGREE) + 1) * np.pi / (2 * DEGREE)
NODES: Floats = np.cos(_ANGLES)
"""Where functions are looked at to be fitted, none at an end, (16,)."""


def _fit() -> Floats:
    weights = np.cos(np.outer(np.arange(DEGREE + 1), _ANGLES)) * 2 / DEGREE
    weights[0] /= 2
    weights[DEGREE] = 0.0
    return weights


def _integral() -> Floats:
    """Coefficients of the integral from -1 out of those of a function."""
    rise = np.zeros((DEGREE + 1, DEGREE + 1))
    for n in range(DEGREE):
        # T_n integrates to T_(n+1)/(2(n+1)) - T_(n-1)/(2(n-1)), T_0 to T_1, T_1 to T_2/4.
        rise[n + 1, n] += 1 / (2 * (n + 1)) if n else 1.0
        if n > 1:
            rise[n - 1, n] -= 1 / (2 * (n - 1))
    rise[0] -= (-1.0) ** np.arange(DEGREE + 1) @ rise
    return rise


def _derivative() -> Floats:
    """Coefficients of the derivative out of those of a function."""
    slopes = np.zeros((DEGREE + 1, DEGREE + 1))
    for n in range(1, DEGREE + 1):
        slopes[n - 1 :: -2, n] = 2 * n
    slopes[0] /= 2
    return slopes


FIT: Floats = _fit()
"""From values at the nodes to coefficients, (17, 16)."""
FIT_INTEGRAL: Floats = _integral() @ FIT
"""From values at the nodes to coefficients of the integral from -1, (17, 16)."""
DERIVATIVE: Floats = _derivative()
"""From coefficients to those of the derivative, (17, 17)."""


def polynomials(x: Floats) -> Floats:
    """All polynomials up to the degree at `x`; shape of `x` with 17 behind it.

    Each is made of two of the half degree, so that few steps make all.
    """
    values = np.empty((*x.shape, DEGREE + 1))
    values[..., 0], values[..., 1] = 1.0, x
    known = 1
    while known < DEGREE:
        twice = 2 * values[..., known : known + 1] * values[..., 1 : known + 1]
        values[..., known + 1 : 2 * known + 1] = twice - values[..., known - 1 :: -1][..., :known]
        known *= 2
    return values
