"""Lengths as people write them: 6.35, "6.35mm", "0.25in", "1/4in", '1 1/2"'.

A bare number is in mm, wherever it stands; only a unit beside the number makes it inches.
"""

import re
from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Any

from tapmodel.spec.designations.reading.inches import MM

HOW = "a length such as 6.35mm, 0.25in or 1/4in"
"""What a message says is allowed: with a unit, as a page told in inches reads a bare number so."""

FORMAT = "length"
"""What the JSON schema calls a text that is read here."""

# No more digits than a length can have, which also keeps it within what a float holds.
_NUMBER = r"[0-9]{1,20}(?:\.[0-9]{0,30})?(?:[eE][-+]?[0-9]{1,2})?|\.[0-9]{1,30}"
_LENGTH = re.compile(
    rf"(?P<sign>[-+]?)\s*(?:(?P<decimal>{_NUMBER})"
    r"|(?:(?P<whole>[0-9]{1,4})[ -])?(?P<part>[0-9]{1,4}/0*[1-9][0-9]{0,3}))"
    r"\s*(?P<unit>mm|in|inch|inches|\"|″)?\.?",
    re.IGNORECASE | re.ASCII,
)

_COMMA = re.compile(r"(?<=[0-9]),(?=[0-9])")


def exact_millimetres(text: str) -> Fraction | None:
    """A length in mm, exactly as it is written; None where `text` is no length.

    A fraction needs its unit: 1/4 alone is read by some as inches and by no one as mm.
    """
    found = _LENGTH.fullmatch(text.strip())
    if found is None or (found["part"] and not found["unit"]):
        return None
    value = Fraction(found["decimal"] or found["part"]) + Fraction(found["whole"] or 0)
    if (found["unit"] or "mm").lower() != "mm":
        value *= MM
    return -value if found["sign"] == "-" else value


def millimetres_of(text: str) -> float | None:
    """The same as the nearest float."""
    exact = exact_millimetres(text)
    return None if exact is None else float(exact)


def rewritten(text: str) -> str:
    """A text that is nearly a length as it is read: with a point, or its unit; "" for any other.

    A decimal comma becomes a point, a bare fraction one of an inch: 0.035in, 1/4in.
    """
    typed = text.strip()
    near = _COMMA.sub(".", typed, count=1)
    found = _LENGTH.fullmatch(near)
    if found is not None and found["part"] and not found["unit"]:
        near += "in"
    return near if near != typed and millimetres_of(near) is not None else ""


def parted_at_comma(words: Sequence[str]) -> str:
    """What a list [0, 035in] was meant to be, 0.035in; "" where none of its entries is 0 alone."""
    for whole, part in pairwise(words):
        if whole.strip() == "0" and part.strip()[:1].isdigit():
            return f"0.{part.strip()}"
    return ""


def bare_number(value: object) -> float | None:
    """A number that no unit stands beside, be it typed as text; None for anything else."""
    if isinstance(value, str):
        found = _LENGTH.fullmatch(value.strip())
        return None if found is None or found["unit"] else millimetres_of(value)
    return float(value) if isinstance(value, int | float) else None


def in_millimetres(value: object) -> object:
    """A text that is a length, in mm; whatever else it is, as it is, for others to judge."""
    found = millimetres_of(value) if isinstance(value, str) else None
    return value if found is None else found


class TextBeside:
    """Tells in a JSON schema that a text does as well as the number, or as the list of numbers.

    The library would make the schema of both whenever the job is loaded; this is asked for it.
    """

    def __init__(self, form: str) -> None:
        """Name the `form` of the text, as the schema calls it."""
        self._form = form

    def __get_pydantic_json_schema__(self, core: Any, handler: Any) -> dict[str, Any]:  # noqa: ANN401  (the library's own)
        """The schema of the number, or the text."""
        return {"anyOf": [handler(core), {"type": "string", "format": self._form}]}
