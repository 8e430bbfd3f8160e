"""Sentences as the page tells them: a control by its label, an angle by its sign.

Sentences are written for who has a job file and a command line before them; the page has neither.
"""

import re
from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from functools import cache, lru_cache
from typing import TypeVar, cast

from tapmodel.report.view.controls.groups import ENTRIES, named_in_full
from tapmodel.spec.job import job_fields

Told = TypeVar("Told")

_DEGREES = re.compile(r"(?<=\d) deg\b|(?<=\[)deg(?=\])")

_LIST = re.compile(
    r"a list in brackets, entries at least (?P<least>\d+), entries at most (?P<most>\d+), "
    r"each (?P<each>a number|text)(?: in quotes)?"
)
"""What may stand in a job file where a box of the page takes the entries alone."""

_REMEMBERED = 512
"""Texts; most reasons beside controls are the same from one answer to the next."""

_COMMANDS = {
    # No control shares the work.
    "tapmodel set JOB": "save the job file, and give it to tapmodel set",
}
"""What a sentence has somebody type, and how who has only the page comes to it."""


def on_page(told: Told) -> Told:
    """A text, or records, tuples and tables that hold texts, as the page tells them.

    A text that is the name of a field and nothing else is a key, and stays; so does a cell of HTML
    that begins with one. Fields that have no control keep their names, with where they are set.
    """
    match told:
        case str():
            found: object = _text(told)
        case tuple():
            found = tuple(map(on_page, cast("tuple[object, ...]", told)))
        case list():
            found = list(map(on_page, cast("list[object]", told)))
        case Mapping():
            entries = cast("Mapping[str, object]", told)
            found = {key: on_page(value) for key, value in entries.items()}
        case _ if is_dataclass(told) and not isinstance(told, type):
            parts = {one.name: on_page(getattr(told, one.name)) for one in fields(told)}
            found = replace(told, **parts)
        case _:
            found = told
    return cast("Told", found)


@lru_cache(_REMEMBERED)
def _text(text: str) -> str:
    if text in job_fields():
        return text
    for typed, instead in _COMMANDS.items():
        text = text.replace(typed, instead)
    text = _LIST.sub(_listed, text)
    return _DEGREES.sub("°", _names().sub(_called, text))


def _listed(found: re.Match[str]) -> str:
    example = ", as 4, 5, 1/2in" if found["each"] == "a number" else ""
    values = f"{found['least']} to {found['most']} values with commas between{example}"
    return f"{values}; each {found['each']}"


def _called(found: re.Match[str]) -> str:
    field = found[0]
    return f"“{named_in_full(field)}”" if field in ENTRIES else f"{field} (in the job file)"


@cache
def _names() -> re.Pattern[str]:
    """The fields of a job; one without a dot only as a control at the beginning of a refusal."""
    dotted = "|".join(re.escape(field) for field in job_fields() if "." in field)
    plain = "|".join(field for field in ENTRIES if "." not in field)
    return re.compile(rf"(?<![\w.>])(?:{dotted})(?!\w|\.\w)|^(?:{plain})(?=: | is needed)")
