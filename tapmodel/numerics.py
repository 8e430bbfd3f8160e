"""Roots, borders and extrema of functions of one argument, and different whole numbers.

No general library is loaded for the former: that would cost a third of a second, more than most
answers take to compute.
"""

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]

# A root is settled when a round moves it by less than this, relative above 1.
_SHARP = 5e-16
_MOST_ROUNDS = 60
_TINY = 1e-300
# So many halves of a bracket lie closer than the last bit of any number not much smaller than it.
_HALVINGS = 60
# So many times two thirds of a bracket are 3e-11 of it; next to an extremum nothing changes there.
_THIRDS = 60


def bracketed_roots(
    function: Callable[[Floats], Floats], low: Floats, high: Floats, within: float = _SHARP
) -> Floats:
    """Roots of many functions, each in its bracket, by Ridders' method on all of them together.

    The brackets halve at least with every round, so kinks only cost speed.

    Args:
        function: maps arguments to values, element by element, both (n,).
        low: one end of each bracket, (n,); where both ends have the same sign it is the answer.
        high: the other end, (n,).
        within: they are settled when a round moves none by more than this, relative above 1.

    Returns:
        The roots, (n,).

    Source: C. Ridders, IEEE Transactions on Circuits and Systems 26 (1979), from memory.
    """
    at_low, at_high = function(low), function(high)
    open_ = np.sign(at_low) * np.sign(at_high) <= 0
    open_ &= at_low != 0.0
    high, at_high = np.where(open_, high, low), np.where(open_, at_high, at_low)
    new = low
    for _ in range(_MOST_ROUNDS):
        middle, last_new = (low + high) / 2, new
        at_middle = function(middle)
        slope = np.sqrt(np.maximum(at_middle**2 - at_low * at_high, _TINY))
        new = middle + (middle - low) * np.sign(at_low - at_high) * at_middle / slope
        new = np.clip(new, low, high)
        if np.all(np.abs(new - last_new) <= within * np.maximum(np.abs(new), 1.0)):
            break
        at_new = function(new)
        low, at_low, high, at_high = _tightest(
            (low, middle, new, high), (at_low, at_middle, at_new, at_high)
        )
    return new


def _tightest(
    x: tuple[Floats, Floats, Floats, Floats], f: tuple[Floats, Floats, Floats, Floats]
) -> tuple[Floats, Floats, Floats, Floats]:
    """The tightest bracket out of low, middle, new and high: each end and its value."""
    (low, middle, new, high), (at_low, at_middle, at_new, at_high) = x, f
    first, last = np.minimum(middle, new), np.maximum(middle, new)
    swapped = new < middle
    at_first = np.where(swapped, at_new, at_middle)
    at_last = np.where(swapped, at_middle, at_new)
    below, above = (at_first > 0) == (at_low > 0), (at_last > 0) == (at_low > 0)
    return (
        np.where(below, np.where(above, last, first), low),
        np.where(below, np.where(above, at_last, at_first), at_low),
        np.where(below, np.where(above, high, last), first),
        np.where(below, np.where(above, at_high, at_last), at_first),
    )


def rising_root(
    function: Callable[[float], float], low: float, high: float, within: float = 0.0
) -> float:
    """Where `function`, rising from `low` to `high`, passes zero, by false position.

    The chord between the ends gives the next guess; the value at an end that stays twice running
    is halved (the Illinois rule), so that the ends close on the root from both sides.

    Args:
        function: rises throughout.
        low: where the search begins, any unit; returned if the function is not negative there.
        high: where it ends, with a positive value; returned if it has none greater than `within`.
        within: closeness of value or argument that will do; with 0 it is found to the last bit.

    Source: the Illinois rule, M. Dowell and P. Jarratt, BIT 11 (1971), from memory.
    """
    below, above = function(low), function(high)
    if below >= 0:
        return low
    if above <= within:
        return high
    rose = None
    while True:
        guess = (low * above - high * below) / (above - below)
        if not low < guess < high:
            guess = low + (high - low) / 2
        if not low < guess < high:
            return guess
        value = function(guess)
        if abs(value) <= within or high - low < within:
            return guess
        if value < 0:
            above = above / 2 if rose is True else above
            low, below, rose = guess, value, True
        else:
            below = below / 2 if rose is False else below
            high, above, rose = guess, value, False


def border(
    keeps: Callable[[float], bool], low: float, high: float, within: float = 0.0
) -> tuple[float, float]:
    """Between which two arguments something ceases to hold, by bisection.

    Args:
        keeps: holds up to some place between `low` and `high`, and nowhere beyond it.
        low: where it holds.
        high: where it does not.
        within: how far apart the two may be, relative above 1; with 0 they are brought as close as
            sixty halvings do.

    Returns:
        The last argument at which it was found to hold and the first at which it was not.
    """
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if high - low <= within * max(1.0, abs(high)) or not low < middle < high:
            break
        low, high = (middle, high) if keeps(middle) else (low, middle)
    return low, high


def borders(keeps: Callable[[Floats], Flags], low: Floats, high: Floats) -> Floats:
    """Where something ceases to hold, as `border` to the last bit, for each element, (n,).

    Args:
        keeps: tells of each argument whether it holds there.
        low: where it holds.
        high: where it does not.
    """
    # To see whether all are there already would cost more than the last rounds.
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        holds = keeps(middle)
        low, high = np.where(holds, middle, low), np.where(holds, high, middle)
    return (low + high) / 2


def lowest(function: Callable[[float], float], low: float, high: float) -> float:
    """Where `function` is least between `low` and `high`, up to which it falls and then rises.

    The argument is good to half the digits of the function's values, as is any that is found by
    comparing them.
    """
    for _ in range(_THIRDS):
        third = (high - low) / 3
        a, b = low + third, high - third
        low, high = (a, high) if function(a) > function(b) else (low, b)
    return (low + high) / 2


def distinct(numbers: NDArray[np.intp]) -> NDArray[np.intp]:
    """The different ones of whole numbers (any shape), rising.

    By sorting: numpy 2.4 alone would look them up in a table, which takes it 50 times as long.
    """
    rising = np.sort(numbers, axis=None)
    return rising[np.diff(rising, prepend=rising[:1] - 1) > 0]
