"""A number that is known between two others."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Band:
    """Least, likely and greatest, all three in one unit.

    Attributes:
        low, high: its ends.
        likely: with every assumption at its middle value.
    """

    low: float
    likely: float
    high: float
