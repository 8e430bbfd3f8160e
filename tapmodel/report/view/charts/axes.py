"""Scales of the page's charts, with the numbers that are written at them."""

import math
from dataclasses import dataclass

_NOISE = 1e-9
"""Share of a step by which a mark may lie beyond the end of a scale."""


@dataclass(frozen=True, slots=True)
class Tick:
    """A round number of a scale.

    Attributes:
        at: where it stands, in the unit of the scale.
        text: as it is written.
    """

    at: float
    text: str


@dataclass(frozen=True, slots=True)
class Axis:
    """A straight scale.

    Attributes:
        title: what it counts, with its unit.
        low, high: its ends, in that unit.
        ticks: rising.
    """

    title: str
    low: float
    high: float
    ticks: tuple[Tick, ...]


def axis_of(title: str, low: float, high: float, most: int) -> Axis:
    """A scale from `low` to `high` with at most so many steps; one of no length gets one of 1."""
    if not high > low:
        low, high = low - 0.5, high + 0.5
    step, numbers = _rounded(low, high, most)
    return Axis(title, low, high, tuple(Tick(at, _text(at, step)) for at in numbers))


def round_numbers(low: float, high: float, most: int) -> list[float]:
    """Multiples of 1, 2 or 5 times a power of ten between two ends, at most `most` steps.

    Args:
        low: the one end.
        high: the other, above it.
        most: steps that there may be.
    """
    return _rounded(low, high, most)[1]


def _rounded(low: float, high: float, most: int) -> tuple[float, list[float]]:
    """The step between round numbers, and the numbers."""
    power = 10.0 ** math.floor(math.log10((high - low) / most))
    step = next(n * power for n in (1, 2, 5, 10) if n * power * most >= (high - low) * (1 - _NOISE))
    first, last = math.ceil(low / step - _NOISE), math.floor(high / step + _NOISE)
    return step, [number * step for number in range(first, last + 1)]


def _text(value: float, step: float) -> str:
    """With the decimals of the step: at 18.05 and 18.1 three digits would say 18.1 twice."""
    places = max(0, -math.floor(math.log10(step) + _NOISE))
    text = f"{abs(value):.{places}f}"
    text = text.rstrip("0").rstrip(".") if places else text
    return f"−{text}" if value < 0 and text != "0" else text
