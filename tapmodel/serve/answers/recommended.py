"""What the rules would choose for a field that the job gives: the design once without it."""

from dataclasses import dataclass

from tapmodel.errors import TapmodelError
from tapmodel.report.view.controls.fields import Reader, with_unit
from tapmodel.report.view.controls.groups import ENTRIES
from tapmodel.serve.asked import Asked, answered


@dataclass(frozen=True, slots=True)
class Recommended:
    """A value that the rules would choose.

    Attributes:
        value: as its box shows it, with its unit beside; "none" where there would be none.
        why: the rule, and whose it is.
    """

    value: str
    why: str


def recommended(asked: Asked) -> dict[str, Recommended]:
    """For each field that was asked about, what it would be if the job did not give it.

    A field without which the job cannot be met is left out, as is one that has no control.
    """
    found: dict[str, Recommended] = {}
    for field in asked.changed:
        if field not in ENTRIES or field not in asked.job:
            continue
        job = {name: value for name, value in asked.job.items() if name != field}
        try:
            told = answered(asked.model_copy(update={"job": job, "changed": ()}), cured=False)
        except TapmodelError:
            continue
        control = Reader(told.design, told.units).control(ENTRIES[field])
        value = with_unit(control.value, control.unit) if control.value else "none"
        found[field] = Recommended(value, control.why)
    return found
