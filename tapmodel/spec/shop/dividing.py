"""What a dividing head is asked for: "13" divisions, or an angle: "35deg", "2 1/2°", "24min"."""

import re
from dataclasses import dataclass
from fractions import Fraction

from tapmodel.errors import InputError

MOST_DIVISIONS = 10_000
"""Of a circle; the smallest of them is two minutes."""

MOST_RATIO = 1000
"""Turns of a crank for one of its spindle."""

HOW = (
    f"a number of divisions from 1 to {MOST_DIVISIONS}, or an angle above 0, up to 360 degrees, "
    "with its unit: 35deg, 2 1/2deg, 1deg30min or 24min"
)
"""What a message says is allowed."""

_NUMBER = r"(?:[0-9]{1,5} )?[0-9]{1,5}/0*[1-9][0-9]{0,4}|[0-9]{1,9}(?:\.[0-9]{0,12})?|\.[0-9]{1,12}"
_ANGLE = re.compile(
    rf"(?:(?P<degrees>{_NUMBER})\s*(?:degrees?|deg|°))?"
    rf"\s*(?:(?P<minutes>{_NUMBER})\s*(?:minutes?|min|'|′))?",
    re.IGNORECASE | re.ASCII,
)


@dataclass(frozen=True, slots=True)
class Asked:
    """How far the spindle is to turn.

    Attributes:
        divisions: of the circle; None where an angle was named.
        angle: exact [deg].
    """

    divisions: int | None
    angle: Fraction

    def turns(self, ratio: int) -> Fraction:
        """Of the crank, exact, on a head of so many turns for one of its spindle."""
        return self.angle * ratio / 360


def division(count: int) -> Asked:
    """So many even divisions of the circle."""
    return Asked(count, Fraction(360, count))


def asked_for(field: str, text: str) -> Asked:
    """The divisions or the angle that a text names.

    Raises:
        InputError: neither, or one out of range.
    """
    words = text.strip()
    if re.fullmatch(r"[0-9]{1,9}", words, re.ASCII):
        count = int(words)
        if 1 <= count <= MOST_DIVISIONS:
            return division(count)
        raise InputError(field, text, HOW)
    found = _ANGLE.fullmatch(words)
    angle = _number(found["degrees"]) + _number(found["minutes"]) / 60 if found else Fraction(0)
    if not 0 < angle <= 360:
        raise InputError(field, text, HOW)
    return Asked(None, angle)


def ratio_for(field: str, ratio: int) -> int:
    """The ratio of a head, as a job may hold it.

    Raises:
        InputError: out of range.
    """
    if not 1 <= ratio <= MOST_RATIO:
        raise InputError(field, ratio, f"a whole number of turns from 1 to {MOST_RATIO}")
    return ratio


def _number(text: str | None) -> Fraction:
    return sum((Fraction(word) for word in (text or "").split()), Fraction(0))
