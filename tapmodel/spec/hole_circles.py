"""Circles of a dividing head's plates as the trade names them: 15, "15-20", "15-20,21,23"."""

import re
from collections.abc import Sequence
from typing import cast

from pydantic_core import PydanticCustomError

FEWEST, MOST = 2, 1000
"""Holes of one circle."""

MOST_CIRCLES = 200
"""On all the plates of a shop."""

FORMAT = "hole circles"
"""What the JSON schema calls a text that is read here."""

REFUSED = "hole_circles"
"""Kind of the error over an entry, which stands in its context at `ENTRY`, alone in a tuple."""

ENTRY = "entry"

HOW = (
    f"whole numbers of holes from {FEWEST} to {MOST} and ranges of them, such as 15-20,21,23; at "
    f"most {MOST_CIRCLES} circles in all"
)
"""What a message says is allowed."""

_CIRCLES = re.compile(r"(?P<first>[0-9]{1,4})(?:\s*[-\u2013]\s*(?P<last>[0-9]{1,4}))?", re.ASCII)


def circles_of(value: object) -> object:
    """Holes of every circle that a list of numbers and ranges, or a text of such, names.

    A range holds every whole number from its first to its last. What is neither a list nor a text
    stays as it is, for others to judge.

    Raises:
        PydanticCustomError: an entry that names no circle; it is told in the error's context.
    """
    if isinstance(value, str):
        return _all_of(value.strip().removesuffix(",").split(","))
    return _all_of(cast("list[object]", value)) if isinstance(value, list) else value


def _all_of(entries: Sequence[object]) -> list[int]:
    return [holes for entry in entries for holes in _circles(entry)]


def _circles(entry: object) -> Sequence[int]:
    """The circles that one entry names."""
    found: Sequence[int] = ()
    if isinstance(entry, int) and not isinstance(entry, bool):
        found = (entry,)
    elif isinstance(entry, str):
        named = _CIRCLES.fullmatch(entry.strip())
        first = int(named["first"]) if named else 0
        last = int(named["last"] or first) if named else -1
        found = range(first, last + 1)
    if not found or not FEWEST <= found[0] <= found[-1] <= MOST:
        # within a tuple, since the library cannot write out a text that is not in UTF-8
        raise PydanticCustomError(REFUSED, "no circle of holes", {ENTRY: (entry,)})
    return found
