"""Sizes in inches as designations write them: 7/16, 1 1/2, 1-1/2, 0.4375, .25, 2.

Kept as exact fractions of an inch; turned into mm by exactly 25.4 at the end.
"""

from fractions import Fraction

from tapmodel.spec.designations.reading.suffixes import plain

MM = Fraction(254, 10)
"""Millimetres in an inch, exactly."""

SIZE = (
    r"[0-9]{1,2}[ -][0-9]{1,2}/[0-9]{1,2}|[0-9]{1,2}/[0-9]{1,2}|[0-9]{0,2}\.[0-9]{1,6}|[0-9]{1,2}"
)
"""Pattern of a size, in this order: mixed number, fraction, decimal, whole number."""

UNIT = r"(?:\s*(?:\"|in(?:ch)?\b\.?))?"
"""Pattern of the unit, which may be left out."""

FINEST_PART = 64
"""The rule's finest division of an inch."""


def inches_of(words: str) -> Fraction | None:
    """A text that matches `SIZE` in inches; None for zero or a zero below the line.

    A decimal of four or more places that is a rounded 64th means that 64th: 0.2969 is 19/64.
    """
    if words.partition("/")[2].strip("0") == "" and "/" in words:
        return None
    whole, _, part = words.replace("-", " ").rpartition(" ")
    value = Fraction(part) + (Fraction(whole) if whole else 0)
    decimals = len(words.partition(".")[2])
    near = Fraction(round(value * FINEST_PART), FINEST_PART)
    if decimals >= 4 and abs(near - value) <= Fraction(1, 2 * 10**decimals):
        value = near
    return value or None


def size_text(value: Fraction) -> str:
    """A size as a drawing writes it: "7/16", "1 1/2", "2", else a decimal such as "0.3"."""
    if FINEST_PART % value.denominator:
        return decimal_text(value)
    whole, part = divmod(value, 1)
    return " ".join(str(piece) for piece in (whole, part) if piece)


def decimal_text(value: Fraction) -> str:
    """A size in decimals with at least three places, as standards in inches print them."""
    digits = f"{float(value):.6f}"
    return digits[:-3] + digits[-3:].rstrip("0")


def millimetres(value: Fraction) -> float:
    """A length in mm, the nearest float to the exact one."""
    return float(value * MM)


def threads_text(pitch: float) -> str:
    """Threads per inch of a pitch [mm] as a designation writes them, e.g. "12" or "2.875"."""
    return plain(round(float(MM) / pitch, 6))
