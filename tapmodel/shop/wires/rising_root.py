"""The root of a function that rises, by false position to the last bit.

A general root finder would cost more to load than the whole answer takes to compute.
"""

from collections.abc import Callable


def rising_root(function: Callable[[float], float], low: float, high: float) -> float:
    """Where `function`, rising from `low` to `high`, passes zero.

    The chord between the ends gives the next guess; the value at an end that stays twice running
    is halved (the Illinois rule), so that the ends close on the root from both sides.

    Args:
        function: rises throughout.
        low: where the search begins, any unit; returned if the function is not negative there.
        high: where it ends, with a positive value.
    """
    below, above = function(low), function(high)
    if below >= 0:
        return low
    rose = None
    while True:
        guess = high - above * (high - low) / (above - below)
        if not low < guess < high:
            guess = low + (high - low) / 2
        if not low < guess < high:
            return guess
        value = function(guess)
        if value < 0:
            above = above / 2 if rose is True else above
            low, below, rose = guess, value, True
        else:
            below = below / 2 if rose is False else below
            high, above, rose = guess, value, False
        if value == 0:
            return guess
