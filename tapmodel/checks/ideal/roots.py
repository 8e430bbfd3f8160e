"""Roots of many bracketed functions at once."""

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


def bracketed_root(function: Callable[[Floats], Floats], low: Floats, high: Floats) -> Floats:
    """Root of each element's function by Ridders' method, to about 1e-13 of argument or value.

    The bracket halves at least with every step, so kinks only cost speed.

    Args:
        function: maps an array of arguments to an array of values, element by element.
        low: one end of each bracket; where both ends have the same sign the answer is `low`,
            shape (n,).
        high: the other end, same shape.

    Returns:
        The roots, shape (n,).
    """
    f_low, f_high = function(low), function(high)
    high = np.where(f_low * f_high <= 0, high, low)
    f_high = np.where(high == low, f_low, f_high)
    for _ in range(48):
        middle = (low + high) / 2
        f_middle = function(middle)
        root = np.sqrt(np.maximum(f_middle**2 - f_low * f_high, 0.0))
        step = (middle - low) * np.sign(f_low - f_high) * f_middle
        guess = middle + np.divide(step, root, out=np.zeros_like(step), where=root > 0)
        f_guess = function(guess)
        low, f_low, high, f_high = _narrowed(
            (low, middle, guess, high), (f_low, f_middle, f_guess, f_high)
        )
        if np.all((np.abs(high - low) < 1e-13) | (np.minimum(abs(f_low), abs(f_high)) < 1e-14)):
            break
    return np.where(np.abs(f_low) <= np.abs(f_high), low, high)


def _narrowed(
    x: tuple[Floats, Floats, Floats, Floats], f: tuple[Floats, Floats, Floats, Floats]
) -> tuple[Floats, Floats, Floats, Floats]:
    """The narrowest of the brackets that the four arguments, ends included, offer."""
    args, values = np.stack(x), np.stack(f)
    order = np.argsort(args, axis=0)
    args, values = np.take_along_axis(args, order, 0), np.take_along_axis(values, order, 0)
    change = np.signbit(values[:-1]) != np.signbit(values[1:])
    # a value of exactly 0 is the root itself: the bracket shrinks to it
    nearest: Indices = np.asarray(np.abs(values).argmin(axis=0))
    each: Indices = np.arange(nearest.size)
    hit = values[nearest, each] == 0.0
    at: Indices = np.where(hit, nearest, change.argmax(axis=0))
    after: Indices = np.where(hit, at, at + 1)
    return args[at, each], values[at, each], args[after, each], values[after, each]
