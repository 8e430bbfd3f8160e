"""The `--vary field=values` texts of a comparison: a list of values, or a range in even steps."""

import math
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from itertools import product

from tapmodel.errors import InputError, WriteError
from tapmodel.spec.job import is_list, job_fields
from tapmodel.spec.lengths import bare_number, millimetres_of, rewritten
from tapmodel.spec.overrides import read_value

MOST_STEPS = 1000
"""Values of one range; more are a slip of the keyboard."""

MOST_COMBINATIONS = 5000
"""Taps in one comparison, half a minute of work; more show no better where the best one lies."""

_LONGEST = 60
"""Letters of a field's name that are looked at to guess which was meant."""

HOW = "field=values, such as flutes.count=3,4,5 or flutes.offset=-1:3:9 (from -1 to 3, 9 values)"

_STEPS = re.compile(r"[0-9]{1,6}")


@dataclass(frozen=True, slots=True)
class Variation:
    """A field of the job, by its dotted name, and the values that are tried for it."""

    field: str
    values: tuple[object, ...]


def variation(text: str) -> Variation:
    """Read "field=a,b,c" or "field=from:to:number".

    A range holds both its ends. Each value is read as `--set` reads it.

    Raises:
        InputError: no "=", an unknown field or one that holds a list, no value, or a range that is
            none.
    """
    field, equals, raw = (part.strip() for part in text.partition("="))
    if not equals or not field or not raw:
        raise InputError("--vary", text, HOW)
    known = job_fields().get(field)
    if known is None or is_list(known):
        allowed = "a field of the job that holds a single value"
        raise InputError("--vary", field, f"{allowed}{_meant(field)}")
    if raw.count(":") == 2:
        return Variation(field, _range(field, raw))
    words = [word.strip() for word in raw.removesuffix(",").split(",")]
    return Variation(field, tuple(read_value(f"--vary {field}", word) for word in words))


def _meant(field: str) -> str:
    """The field that was most likely meant by a name that is none."""
    fields = [name for name, known in job_fields().items() if not is_list(known)]
    close = get_close_matches(field[:_LONGEST], fields, n=1, cutoff=0.6)
    return f'; did you mean "{close[0]}"?' if close else ""


def number_of(varied: Mapping[str, Sequence[object]]) -> int:
    """How many combinations of the values of some fields there are."""
    return math.prod(map(len, varied.values()))


def combinations(varied: Mapping[str, Sequence[object]]) -> Iterator[dict[str, object]]:
    """Every combination of the values of some fields, the last field changing fastest.

    Raises:
        InputError: more than `MOST_COMBINATIONS`.
    """
    number = number_of(varied)
    if number > MOST_COMBINATIONS:
        allowed = f"at most {MOST_COMBINATIONS}; vary fewer fields, or try fewer values of each"
        raise InputError("combinations of values", number, allowed)
    return (dict(zip(varied, values, strict=True)) for values in product(*varied.values()))


def _range(field: str, raw: str) -> tuple[object, ...]:
    first, last, number = raw.split(":")
    low, high = millimetres_of(first), millimetres_of(last)
    steps = int(number) if _STEPS.fullmatch(number.strip()) else 0
    for end in (first, last):
        if rewritten(end):
            raise WriteError(f"--vary {field}", end.strip(), rewritten(end))
    if low is None or high is None or not 2 <= steps <= MOST_STEPS:
        allowed = f"from:to:number, with 2 to {MOST_STEPS} values"
        raise InputError(f"--vary {field}", raw, allowed)
    span = (high - low) / (steps - 1)
    # Ten digits are far below what a shop can set, and spare the reader 0.30000000000000004.
    spread = [low + span * step for step in range(steps - 1)] + [high]
    if bare_number(first) is None or bare_number(last) is None:
        # an end with its unit is not asked back, nor is what lies between
        return tuple(f"{_short(value)}mm" for value in spread)
    return tuple(_short(value) for value in spread)


def _short(value: float) -> float | int:
    """A whole number where it is one, since a count may be varied as well as a length."""
    rounded = round(value, 10)
    return int(rounded) if math.isclose(rounded, round(rounded), abs_tol=1e-12) else rounded
