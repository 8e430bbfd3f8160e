"""Places for points: evenly strewn fractions, and polar coordinates."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]
# Additive recurrence of lowest discrepancy in two dimensions, after the real root of x^3 = x + 1.
_STEP = 1.3247179572447460 ** -np.arange(1.0, 3.0)


def strewn(*shape: int) -> tuple[Floats, Floats]:
    """Two arrays of fractions between 0 and 1, evenly strewn over the square, always the same."""
    count = int(np.prod(shape))
    both = (0.5 + np.arange(1, count + 1)[:, None] * _STEP) % 1.0
    return both[:, 0].reshape(shape), both[:, 1].reshape(shape)


def polar(radius: ArrayLike, degrees: ArrayLike, z: ArrayLike) -> Floats:
    """Points (n, 3) of polar coordinates, broadcast and made flat."""
    r, turn, height = np.broadcast_arrays(radius, np.radians(degrees), z)
    return np.stack([r * np.cos(turn), r * np.sin(turn), height], axis=-1).reshape(-1, 3)
