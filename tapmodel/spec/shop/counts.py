"""Whole numbers in a list as the trade names them: 15, "15-20", "15-20,21,23"."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import cast

from tapmodel.errors import InputError, NoCountError

_COUNTS = re.compile(r"(?P<first>[0-9]{1,4})(?:\s*[-\u2013]\s*(?P<last>[0-9]{1,4}))?", re.ASCII)


@dataclass(frozen=True, slots=True)
class Counts:
    """What is counted.

    Attributes:
        form: what the JSON schema calls a text that is read as such a list.
        fewest, most: least and greatest number.
        fewest_entries, most_entries: of a whole list.
        how: what a message says is allowed.
    """

    form: str
    fewest: int
    most: int
    fewest_entries: int
    most_entries: int
    how: str


def numbers_of(value: object, kind: Counts) -> object:
    """Every number that a list of numbers and ranges, or a text of such, names.

    A range holds every whole number from its first to its last. What is neither a list nor a text
    stays as it is, for others to judge.

    Raises:
        NoCountError: an entry that names no number.
    """
    if isinstance(value, str):
        return _all_of(_entries(value), kind)
    return _all_of(cast("list[object]", value), kind) if isinstance(value, list) else value


def counts_for(field: str, text: str, kind: Counts) -> tuple[int, ...]:
    """The numbers of a text, for a field of that name.

    Raises:
        InputError: an entry that is none, or too few or too many of them.
    """
    try:
        found = _all_of(_entries(text), kind)
    except NoCountError as error:
        raise InputError(field, error.entry, kind.how) from None
    if not kind.fewest_entries <= len(found) <= kind.most_entries:
        raise InputError(field, f"a list of {len(found)}", kind.how)
    return tuple(found)


def _entries(text: str) -> list[str]:
    return text.strip().removesuffix(",").split(",")


def _all_of(entries: Sequence[object], kind: Counts) -> list[int]:
    return [number for entry in entries for number in _numbers(entry, kind)]


def _numbers(entry: object, kind: Counts) -> Sequence[int]:
    """The numbers that one entry names."""
    found: Sequence[int] = ()
    if isinstance(entry, int) and not isinstance(entry, bool):
        found = (entry,)
    elif isinstance(entry, str):
        named = _COUNTS.fullmatch(entry.strip())
        first = int(named["first"]) if named else 0
        last = int(named["last"] or first) if named else -1
        found = range(first, last + 1)
    if not found or not kind.fewest <= found[0] <= found[-1] <= kind.most:
        raise NoCountError(entry, kind.how)
    return found
