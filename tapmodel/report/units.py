"""Numbers as text in the reader's units. Limits are rounded into their zone, never out of it."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from tapmodel.report.blocks import Angle, Length, Quantity

MM_PER_INCH = 25.4
"""Exact by definition (international yard and pound agreement, 1959)."""

_LAST_DIGIT_NOISE = 1e-6
"""Share of the last digit by which a limit may lie off a printed value and still be that value."""


class Units(StrEnum):
    """Units of length on the sheet."""

    MM = "mm"
    INCH = "inch"
    BOTH = "both"


class Paper(StrEnum):
    """Size of the sheet."""

    A4 = "A4"
    LETTER = "Letter"


class Projection(StrEnum):
    """Where the views of a drawing stand to each other: ISO 5456-2, first or third angle."""

    FIRST = "first"
    THIRD = "third"


@dataclass(frozen=True, slots=True)
class Look:
    """How a reader wants the papers: size, units of the text, and how views stand."""

    paper: Paper = Paper.A4
    units: Units = Units.MM
    projection: Projection = Projection.FIRST


def shown(quantity: Quantity, units: Units = Units.MM) -> tuple[str, ...]:
    """The text of a quantity, one for each unit that is wanted: mm first."""
    if isinstance(quantity, Length):
        return _lengths(quantity, units, round)
    if isinstance(quantity, Angle):
        return (f"{_plain(quantity.degrees, quantity.digits)}°",)
    return (quantity.text,)


def shown_low(limit: Length, units: Units = Units.MM) -> tuple[str, ...]:
    """A lower limit, rounded up where it has to be rounded."""
    return _lengths(limit, units, lambda steps: math.ceil(steps - _LAST_DIGIT_NOISE))


def shown_high(limit: Length, units: Units = Units.MM) -> tuple[str, ...]:
    """An upper limit, rounded down where it has to be rounded."""
    return _lengths(limit, units, lambda steps: math.floor(steps + _LAST_DIGIT_NOISE))


def _lengths(length: Length, units: Units, to_step: Callable[[float], int]) -> tuple[str, ...]:
    texts: list[str] = []
    if units is not Units.INCH:
        texts.append(f"{_stepped(length.mm, length.digits, to_step)} mm")
    if units is not Units.MM:
        texts.append(f"{_stepped(length.mm / MM_PER_INCH, length.digits + 1, to_step)} in")
    return tuple(texts)


def _stepped(value: float, digits: int, to_step: Callable[[float], int]) -> str:
    return _plain(to_step(value * 10**digits) / 10**digits, digits)


def _plain(value: float, digits: int) -> str:
    # Adding 0 turns the minus zero of a rounded value into plain zero.
    return f"{round(value, digits) + 0.0:.{digits}f}"
