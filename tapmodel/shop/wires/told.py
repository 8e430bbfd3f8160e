"""Lengths of refusals in both units, the reader's first."""

import math

from tapmodel.spec.designations.reading.inches import MM
from tapmodel.words import Units

_NOISE = 1e-6
"""Share of the last digit that a length may miss it by and still be it."""


def length_told(length: float, units: Units) -> str:
    """A length [mm], to the nearest of the last digit."""
    return _both([f"{length:.4f} mm", f"{length / float(MM):.5f} in"], units)


def span_told(low: float, high: float, units: Units) -> str:
    """From one length up to another [mm], rounded into the range."""
    texts = [
        f"{_up(low / unit, digits)} to {_down(high / unit, digits)} {name}"
        for unit, digits, name in ((1.0, 4, "mm"), (float(MM), 5, "in"))
    ]
    return _both(texts, units)


def _both(texts: list[str], units: Units) -> str:
    first, behind = reversed(texts) if units is Units.INCH else texts
    return f"{first} ({behind})"


def _up(value: float, digits: int) -> str:
    return f"{math.ceil(value * 10**digits - _NOISE) / 10**digits:.{digits}f}"


def _down(value: float, digits: int) -> str:
    return f"{math.floor(value * 10**digits + _NOISE) / 10**digits:.{digits}f}"
