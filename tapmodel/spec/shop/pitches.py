"""Pitches as people write them: 0.75, "0.75mm", "1/8in", "19tpi", "4 1/2 tpi"; kept exact.

As lengths, a bare number is in mm; threads per inch are told by their unit.
"""

import re
from fractions import Fraction

from tapmodel.errors import InputError, WriteError
from tapmodel.spec.designations.reading.inches import MM
from tapmodel.spec.lengths import exact_millimetres, rewritten

LEAST, MOST = 0.01, 1000.0
"""Between which a pitch or lead makes sense [mm]."""

FORMAT = "pitch"
"""What the JSON schema calls a text that is read here."""

HOW = f"a pitch of {LEAST:g} to {MOST:g} mm such as 0.75, 0.75mm, 1/8in or 19tpi"
"""What a message says is allowed."""

_THREADS = re.compile(
    r"(?:(?:(?P<whole>[0-9]{1,4})[ -])?(?P<part>[0-9]{1,4}/0*[1-9][0-9]{0,3})"
    r"|(?P<decimal>[0-9]{1,4}(?:\.[0-9]{0,9})?|\.[0-9]{1,9}))"
    r"\s*(?:tpi|t\.p\.i\.?|(?:threads? )?per inch)",
    re.IGNORECASE | re.ASCII,
)

_FINEST_PART = 1_000_000
"""Denominator of the fractions that a float is taken for; pitches per inch have far less."""

_ROUNDED = Fraction(1, 2**50)
"""Share by which arithmetic in floats may have rounded; two such fractions lie further apart."""


def exact_pitch(text: str) -> Fraction | None:
    """A pitch in mm, exactly as it is written; None where `text` is none."""
    found = _THREADS.fullmatch(text.strip())
    if found is None:
        return exact_millimetres(text)
    threads = Fraction(found["decimal"] or found["part"]) + Fraction(found["whole"] or 0)
    return MM / threads if threads else None


def pitch_for(field: str, text: str) -> Fraction:
    """The same for a field of that name.

    Raises:
        InputError: no pitch, or one out of all range.
    """
    found = exact_pitch(text)
    if found is None and rewritten(text):
        raise WriteError(field, text, rewritten(text))
    if found is None or not LEAST <= float(found) <= MOST:
        raise InputError(field, text, HOW)
    return found


def in_inches(text: str) -> bool:
    """Whether a pitch is written in inches or by them."""
    return not re.search(r"(?:[0-9]\.?|mm\.?)\s*$", text, re.IGNORECASE)


def in_millimetres(value: object) -> object:
    """A text that is a pitch, in mm; whatever else it is, as it is, for others to judge."""
    found = exact_pitch(value) if isinstance(value, str) else None
    return value if found is None else float(found)


def exact_of(mm: float) -> Fraction:
    """The pitch that a float stands for: exactly 25.4/19 for 1.3368421052631578."""
    given = Fraction(mm)
    near = given.limit_denominator(_FINEST_PART)
    return near if abs(near - given) <= _ROUNDED * given else given
