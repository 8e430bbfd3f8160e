"""Steps that settings and sizes are rounded to: the usual ones, finer where the thread is finer."""

import math

FINEST = 0.001
"""No step is finer than this [mm]: nobody sets or measures less in a shop."""

_ROUND = (0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, FINEST)


def step_for(usual: float, most: float) -> float:
    """The usual step [mm], or the coarsest of 1, 2, 5 and their tenths that is at most `most`.

    Source: rule of this program.
    """
    if usual <= most:
        return usual
    return next((step for step in _ROUND if step <= most * (1 + 1e-9)), FINEST)


def down(value: float, step: float) -> float:
    """The next whole step at or below a value [mm].

    Source: rule of this program.
    """
    return round(math.floor(round(value / step, 6)) * step, 6)


def up(value: float, step: float) -> float:
    """The next whole step at or above a value [mm].

    Source: rule of this program.
    """
    return round(math.ceil(round(value / step, 6)) * step, 6)
