"""The axis of a chart: where its values stand, and the round numbers written at it."""

import math
from dataclasses import dataclass

from tapmodel.report.drawings.sheet import Sheet

_NOISE = 1e-9
"""Share of a step by which the last mark may lie beyond the end of an axis."""


@dataclass(frozen=True, slots=True)
class Axis:
    """A straight scale.

    Attributes:
        zero: where 0 stands [mm of the drawing].
        unit: length of 1, negative where values grow to the left or downwards.
    """

    zero: float
    unit: float

    def at(self, value: float) -> float:
        """Where a value stands [mm of the drawing]."""
        return self.zero + self.unit * value


def marks(high: float, most: int) -> list[float]:
    """Round numbers from 0 to `high`, by steps of 1, 2 or 5 times a power of ten.

    Args:
        high: end of the axis, above 0.
        most: steps that there may be.
    """
    power = 10.0 ** math.floor(math.log10(high / most))
    step = next(s for s in (power, 2 * power, 5 * power, 10 * power) if s * most >= high)
    return [n * step for n in range(math.floor(high / step + _NOISE) + 1)]


def figure(value: float, digits: int = 3) -> str:
    """A number to so many digits, never with an exponent: "0.0234", "12.5", "4320"."""
    if value == 0:
        return "0"
    rounded = float(f"{value:.{digits - 1}e}")
    places = digits - 1 - math.floor(math.log10(abs(rounded)))
    return f"{rounded:.{max(places, 0)}f}"


def marked(value: float) -> str:
    """A round number as an axis shows it."""
    text = figure(value)
    return text.rstrip("0").rstrip(".") if "." in text else text


def spaced(sheet: Sheet, high: float, length: float, most: int) -> list[float]:
    """Marks of a level axis, as many as can be written beside each other.

    Args:
        sheet: lettered on.
        high: end of the axis.
        length: of the axis on paper [mm].
        most: steps that there may be.
    """
    for steps in range(most, 1, -1):
        found = marks(high, steps)
        widest = max(sheet.width(marked(mark)) for mark in found)
        if widest + 2.0 < length * found[1] / high:
            return found
    return marks(high, 1)
