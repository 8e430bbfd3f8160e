"""Rotary tables as people name them: 90, "90:1", "90, 2min" with the graduation of the handle."""

import re
from dataclasses import dataclass
from fractions import Fraction

from tapmodel.errors import InputError

FORM = "rotary table"
"""What the JSON schema calls a text that is read here."""

MOST_RATIO = 360
"""Turns of a handle for one of the table."""

HOW = (
    f"turns of the handle for one of the table, from 1 to {MOST_RATIO}, and behind a comma what a "
    'division of its dial counts, a whole share of a turn, where it has one: 90, "90:1", '
    '"90, 2min" or "72, 0.1deg"'
)
"""What a message says is allowed."""

_TABLE = re.compile(
    r"(?P<ratio>[0-9]{1,3})\s*(?::\s*1)?"
    r"(?:\s*,\s*(?P<size>[0-9]{1,3}(?:\.[0-9]{1,6})?|[0-9]{1,3}/0*[1-9][0-9]{0,2})\s*"
    r"(?P<unit>degrees?|deg|°|minutes?|min|'|′|seconds?|sec|\"|″))?",
    re.IGNORECASE | re.ASCII,
)

_PARTS = {"d": 1, "°": 1, "m": 60, "'": 60, "′": 60, "s": 3600, '"': 3600, "″": 3600}
"""Of a degree, by the first letter of the unit."""


@dataclass(frozen=True, slots=True)
class RotaryTable:
    """A rotary table with a worm.

    Attributes:
        ratio: turns of the handle for one of the table.
        division: of the handle's dial, as it turns the table; 0 where it has none [deg].
    """

    ratio: int
    division: Fraction = Fraction(0)


def rotary_table_of(text: str) -> RotaryTable | None:
    """The table that a text names; None where it names none."""
    found = _TABLE.fullmatch(text.strip())
    ratio = int(found["ratio"]) if found else 0
    if found is None or not 1 <= ratio <= MOST_RATIO:
        return None
    if found["size"] is None:
        return RotaryTable(ratio)
    division = Fraction(found["size"]) / _PARTS[found["unit"][0].lower()]
    # A dial whose last division is a broken one could not be read beyond a turn.
    whole = division > 0 and (Fraction(360, ratio) / division).denominator == 1
    return RotaryTable(ratio, division) if whole else None


def table_for(field: str, text: str) -> RotaryTable:
    """The same for a field of that name.

    Raises:
        InputError: it names none.
    """
    found = rotary_table_of(text)
    if found is None:
        raise InputError(field, text, HOW)
    return found


def as_text(value: object) -> object:
    """A whole number as the text of it; whatever else it is, as it is."""
    return str(value) if isinstance(value, int) and not isinstance(value, bool) else value


def checked(text: str) -> str:
    """A text that names a rotary table, as it is.

    Raises:
        ValueError: it names none.
    """
    if rotary_table_of(text) is None:
        raise ValueError(FORM)
    return text
