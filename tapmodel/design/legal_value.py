"""Writing the nearest legal value: rounded into the legal side, so that it can be typed in."""

import math

BINARY_NOISE = 1e-6
"""In units of the last digit: a value this close to a round one is meant to be it."""


def floor_text(value: float, digits: int = 3) -> str:
    """The value rounded down to `digits` decimals, for an upper limit.

    Source: rule of this program.
    """
    scale = 10**digits
    return f"{math.floor(value * scale + BINARY_NOISE) / scale:.{digits}f}"


def ceil_text(value: float, digits: int = 3) -> str:
    """The value rounded up to `digits` decimals, for a lower limit.

    Source: rule of this program.
    """
    scale = 10**digits
    return f"{math.ceil(value * scale - BINARY_NOISE) / scale:.{digits}f}"
