"""What a request of the page asks for, and the design that answers it."""

from collections.abc import Mapping
from dataclasses import dataclass

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from tapmodel.designing.design import design_tap
from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.report.units_wanted import units_of
from tapmodel.shop.judged import judged
from tapmodel.spec.job_file import job_of_table
from tapmodel.spec.overrides import apply_values
from tapmodel.words import Units

Job = dict[str, object]
"""By the dotted names of the fields, "designation" among them."""


class Asked(BaseModel):
    """A job, and how it is to be shown.

    Attributes:
        job: to be designed.
        units: of every text; None for those of the job.
        z: height of the section [mm]; None for the middle of the thread.
    """

    model_config = ConfigDict(extra="forbid", frozen=True)

    job: Job
    units: Units | None = None
    z: float | None = Field(default=None, ge=0, le=2000, allow_inf_nan=False)


@dataclass(frozen=True, slots=True)
class Answered:
    """A design and the units in which it is told."""

    design: TapDesign
    units: Units


def asked_of(body: object) -> Asked:
    """A request as the page sends it.

    Raises:
        InputError: it is none.
    """
    try:
        return Asked.model_validate(body)
    except ValidationError as error:
        wrong = error.errors()[0]
        where = ".".join(str(part) for part in wrong["loc"]) or "request"
        raise InputError(where, wrong["input"], wrong["msg"]) from None


def answered(asked: Asked) -> Answered:
    """Design what is asked for.

    Raises:
        InputError: naming field, value and what is allowed.
        NoTapError: values that leave no tap to describe, in the units asked for.
    """
    job = job_of_table(table_of(asked.job))
    return Answered(judged(design_tap(job)), units_of(job, asked.units))


def table_of(job: Mapping[str, object]) -> dict[str, object]:
    """The nested table of a job file from dotted names."""
    return apply_values({}, list(job.items()))
