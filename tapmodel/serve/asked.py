"""What a request of the page asks for, and the design that answers it."""

import json
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeVar

from pydantic import BaseModel, ConfigDict, Field, ValidationError
from pydantic_core import ErrorDetails

from tapmodel.designing.design import design_at_once, design_tap, settled_tap
from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError, NoTapError
from tapmodel.report.units_wanted import units_of
from tapmodel.shop.judged import judged
from tapmodel.spec.job import Job as CheckedJob
from tapmodel.spec.job_file import checked
from tapmodel.spec.overrides import apply_values, rivals
from tapmodel.spec.shop_file import FIELD, points_to
from tapmodel.words import Units

Job = dict[str, object]
"""By the dotted names of the fields, "designation" among them."""

_REMEMBERED = 64
"""Designs; a page asks for the same one again for each of its parts."""


class Request(BaseModel):
    """What every request may be: of known keys alone."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class Asked(Request):
    """A job, and how it is to be shown.

    Attributes:
        job: to be designed.
        units: of every text; None for those of the job.
        z: height of the section [mm]; None for the middle of the thread.
        changed: fields that were given last, which what they contradict gives way to.
    """

    job: Job
    units: Units | None = None
    z: float | None = Field(default=None, ge=0, le=2000, allow_inf_nan=False)
    changed: tuple[str, ...] = Field(default=(), max_length=200)


class Opening(Asked):
    """What the page opens with; text of the file of measured sizes beside the job, if any."""

    measured: str = ""


@dataclass(frozen=True, slots=True)
class Answered:
    """A design, the job that it was made of, and the units in which it is told.

    Attributes:
        design: of the job.
        units: of every text.
        job: without what gave way.
        dropped: fields that gave way to those that were changed.
    """

    design: TapDesign
    units: Units
    job: CheckedJob
    dropped: tuple[str, ...] = ()


Kind = TypeVar("Kind", bound=Request)


def request_of(kind: type[Kind], body: object) -> Kind:
    """A request as the page sends it.

    Raises:
        InputError: it is none.
    """
    try:
        return kind.model_validate(body)
    except ValidationError as error:
        wrong = error.errors()[0]
        where = ".".join(str(part) for part in wrong["loc"]) or "request"
        raise InputError(where, wrong["input"], _allowed(wrong)) from None


def _allowed(wrong: ErrorDetails) -> str:
    """What may stand there, in words of ours; those of the checking library are a programmer's."""
    said = _ALLOWED.get(wrong["type"])
    return wrong["msg"] if said is None else said.format(**wrong.get("ctx", {}))


_ALLOWED = {
    **dict.fromkeys(("int_from_float", "int_parsing", "int_type"), "a whole number"),
    **dict.fromkeys(("float_parsing", "float_type", "finite_number"), "a number"),
    "greater_than_equal": "at least {ge:g}",
    "less_than_equal": "at most {le:g}",
    "string_type": "a text",
    "string_too_long": "at most {max_length} letters",
    "extra_forbidden": "nothing, as there is no such entry",
}
"""By the kind of error."""


def answered(asked: Asked, *, in_full: bool = False, cured: bool = True) -> Answered:
    """Design what is asked for.

    Args:
        asked: by the page.
        in_full: with what stood next to each choice, which takes several times as long; papers tell
            it, the page at once does not.
        cured: False to answer without what mends the findings, which is sought up to a hundred
            times as long as the tap is settled.

    Raises:
        InputError: naming field, value and what is allowed.
        NoTapError: values that leave no tap to describe, in the units asked for.
    """
    dropped = given_way(asked.job, asked.changed)
    left = {field: value for field, value in asked.job.items() if field not in dropped}
    job, design = _designed(json.dumps(left, sort_keys=True), in_full=in_full, cured=cured)
    units = units_of(job, asked.units)
    if isinstance(design, NoTapError):
        raise _again(design, units)
    return Answered(design, units, job, dropped)


def given_way(job: Mapping[str, object], changed: Collection[str]) -> tuple[str, ...]:
    """Fields of a job that contradict those that were changed, and were not changed themselves."""
    if not changed:
        return ()
    table = table_of(job)
    contradicted = (
        rival for field in changed if field in job for rival in rivals(field, job[field], table)
    )
    return tuple(dict.fromkeys(rival for rival in contradicted if rival not in changed))


@lru_cache(_REMEMBERED)
def _designed(
    text: str, *, in_full: bool, cured: bool
) -> tuple[CheckedJob, TapDesign | NoTapError]:
    """The design of a job as JSON, or why there is none."""
    job = checked_job(table_of(json.loads(text)))
    try:
        design = design_tap if in_full else design_at_once if cured else settled_tap
        return job, judged(design(job))
    except NoTapError as error:
        return job, error.with_traceback(None)


def _again(error: NoTapError, units: Units) -> NoTapError:
    """The same for this reader; what is remembered stays as it is."""
    told = NoTapError(*error.findings)
    told.units = units
    return told


def checked_job(table: Mapping[str, object]) -> CheckedJob:
    """A job from its nested table, which no request may have read a file.

    Raises:
        InputError: naming field, value and what is allowed.
    """
    pointer = points_to(table)
    if pointer:
        instead = (
            "the shop's values themselves: only `tapmodel serve JOB` reads what a job points to"
        )
        raise InputError(FIELD, pointer, instead)
    return checked(table)


def table_of(job: Mapping[str, object]) -> dict[str, object]:
    """The nested table of a job file from dotted names."""
    return apply_values({}, list(job.items()))
