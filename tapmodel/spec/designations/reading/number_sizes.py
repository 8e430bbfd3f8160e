"""Number sizes of the Unified threads, and whether a bare whole number means one or inches."""

from fractions import Fraction

NUMBERS = (0, 1, 2, 3, 4, 5, 6, 8, 10, 12)

# A bare whole number: (most threads per inch listed for that size in inches, fewest listed for
# that number size). Between the two either could be meant. Nothing over 6 inches is listed.
_BETWEEN = {
    0: (0, 0),
    1: (32, 64),
    2: (20, 56),
    3: (20, 48),
    4: (16, 40),
    5: (16, 40),
    6: (16, 32),
    8: (0, 32),
    10: (0, 24),
    12: (0, 24),
}


def number_diameter(number: int) -> Fraction:
    """Diameter of a number size [in]: 0.060 and 0.013 more for each number.

    Source: ASME B1.1 (from memory); agrees with every number size read.
    """
    return Fraction(60 + 13 * number, 1000)


def means_number(whole: int, tpi: float) -> bool | None:
    """Whether a bare whole number with these threads per inch is a number size.

    None where it could be either: 2-56 is No. 2, 2-12 is two inches, 2-32 is neither in the series.
    """
    if whole not in _BETWEEN:
        return False
    finest_inch, coarsest_number = _BETWEEN[whole]
    if tpi <= finest_inch:
        return False
    return True if tpi >= coarsest_number else None


def number_of(diameter: Fraction) -> int | None:
    """The number size of a diameter [in], if it is one."""
    return next((n for n in NUMBERS if number_diameter(n) == diameter), None)
