"""Inches for the standards that are written in them: conversion and the rounding they print."""

from decimal import ROUND_HALF_EVEN, Decimal

MM = 25.4
"""Millimetres in an inch, exactly."""


def inches(millimetres: float) -> float:
    """A size in inches, free of the noise of binary fractions.

    Source: the inch is 25.4 mm by definition.
    """
    return round(millimetres / MM, 7)


def threads_per_inch(pitch: float) -> float:
    """Threads per inch of a pitch [mm], free of the noise of binary fractions.

    Source: the inch is 25.4 mm by definition.
    """
    return round(MM / pitch, 6)


def printed(value: float, places: int) -> float:
    """A value rounded as the American standards print it: a half goes to the even digit.

    The value counts with six places, which is how the standards carry their tolerances.

    Source: ASME B1.1-2019, rounding of tolerances to six places, as read in Machinery's Handbook
    31st ed. p. 1996; halves to even as the limits of 1/4-20 and 6-32 show, derived here.
    """
    exact = Decimal(f"{value:.6f}")
    return float(exact.quantize(Decimal(1).scaleb(-places), ROUND_HALF_EVEN))
