"""Spellings of the bench that no standard prints, turned into those that the grammars read.

Left or right in words, the hand anywhere or with no blank before it, the number of starts in words.
"""

import re
from dataclasses import replace
from typing import NoReturn

from tapmodel.errors import InputError, MeantError
from tapmodel.spec.designations.reading.suffixes import plain
from tapmodel.spec.designations.record import Designation, Grammar
from tapmodel.spec.designations.refusal import MAX_STARTS
from tapmodel.words import Family

_HAND = re.compile(
    r"\b(?:(left|right)(?:[\s-]*hand(?:ed)?)?|([lr])\.\s?h\b\.?)(?![a-z])", re.IGNORECASE
)
_BEFORE = re.compile(r"^([lr]h)[\s-]+(\S.*)$", re.IGNORECASE)
_BETWEEN = re.compile(r"^(.*?\S)(?:\s*-\s*|\s+)([lr]h)(?:\s*-\s*|\s+)(\S.*)$", re.IGNORECASE)
_GLUED = re.compile(r"(?<=[a-z0-9])([lr]h)$", re.IGNORECASE)
_STARTS = re.compile(
    r"(?:^|[\s-]+)(?P<count>[0-9]|single|one|double|two|triple|three|four)[\s-]*starts?\b",
    re.IGNORECASE,
)
_COUNTS = {"single": 1, "one": 1, "double": 2, "two": 2, "triple": 3, "three": 3, "four": 4}
_BY_THREADS = {Family.ACME}
"""Families whose threads per inch count every thread, so that they tell the pitch."""

_BY_LENGTH = {Family.METRIC, Family.TRAPEZOIDAL}
"""Families that write lead and pitch in mm where there are several starts."""


def with_hand_last(typed: str) -> str:
    """The text with its hand as LH or RH, behind everything else."""
    text = _HAND.sub(lambda found: f"{(found[1] or found[2])[0]}H".upper(), typed)
    text = _GLUED.sub(r" \1", _BEFORE.sub(r"\2 \1", text).rstrip())
    # A second hand stays where it is found, for the grammars to refuse.
    return _BETWEEN.sub(r"\1 \3 \2", text)


def without_starts(typed: str) -> tuple[str, int | None]:
    """The text without "2-start" or "two starts", and that number; None where none is told."""
    found = _STARTS.search(typed)
    if found is None:
        return typed, None
    words = found["count"].lower()
    rest = f"{typed[: found.start()]}{typed[found.end() :]}".strip()
    return rest, _COUNTS.get(words) or int(words)


def with_starts(read: Designation, starts: int, grammar: Grammar) -> Designation:
    """A designation of which words tell the number of starts.

    Raises:
        InputError: it says another number itself, its family has no several starts, or the one
            length that it gives may be the lead as well as the pitch.
    """
    if starts == read.starts and (starts == 1 or read.starts > 1):
        return read
    if read.starts > 1:
        _refuse(read, f"the same number of starts as lead and pitch give, {read.starts}")
    if not 1 < starts <= MAX_STARTS:
        _refuse(read, f"1 to {MAX_STARTS} starts")
    if read.family in _BY_THREADS:
        return replace(read, starts=starts)
    refuse_starts(read.text, starts, read.family)
    if read.pitch is None:
        _refuse(read, "the pitch too, as in M20xPh3P1.5: Ph is the lead, P the pitch")
    pitch, lead = read.pitch, starts * read.pitch
    if pitch > grammar.coarsest * read.diameter:
        # no such pitch: it can only have been the lead
        meant = grammar.write(replace(read, starts=starts, pitch=pitch / starts))
        raise MeantError("designation", read.text, meant)
    by_pitch = grammar.write(replace(read, starts=starts))
    by_lead = grammar.write(replace(read, starts=starts, pitch=pitch / starts))
    allowed = (
        f"{by_pitch} for pitch {plain(pitch)} and lead {plain(lead)}, or {by_lead} for lead "
        f"{plain(pitch)} and pitch {plain(pitch / starts)}: {starts} starts, so lead is {starts} "
        "times pitch"
    )
    return _refuse(read, allowed)


def refuse_starts(text: str, starts: int, family: Family) -> None:
    """Refuse several starts of a family that has none such.

    Raises:
        InputError: it has not.
    """
    if starts > 1 and family not in _BY_THREADS | _BY_LENGTH:
        allowed = "a single start; several are known of metric, trapezoidal and Acme threads"
        raise InputError("designation", text, allowed)


def _refuse(read: Designation, allowed: str) -> NoReturn:
    raise InputError("designation", read.text, allowed)
