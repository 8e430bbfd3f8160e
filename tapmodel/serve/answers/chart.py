"""The route of charts: one value of a job is varied, and figures of each tap are told."""

import math
from collections.abc import Mapping
from typing import Annotated, Any

from pydantic import Field

from tapmodel.comparing.variant import Variant
from tapmodel.comparing.variants import Asked as Varied
from tapmodel.comparing.variants import compare_taps
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError, NoTapError
from tapmodel.report.units import Units
from tapmodel.report.view.charts.chart import Charted, chart_view, job_value, per_field
from tapmodel.report.view.charts.fields import FIELDS, held_by
from tapmodel.report.view.controls.on_page import on_page
from tapmodel.report.view.figures import LABELS
from tapmodel.report.words.findings import said
from tapmodel.serve.asked import Answered, Asked, answered, checked_job, table_of
from tapmodel.shop.judged import judged
from tapmodel.spec.job import unit_of
from tapmodel.spec.lengths import millimetres_of
from tapmodel.spec.overrides import apply_values
from tapmodel.spec.units import Unit

MOST_STEPS = 41
USUAL_STEPS = 31

End = Annotated[str, Field(max_length=40)] | float | None


class ChartAsked(Asked):
    """What is drawn against what.

    Attributes:
        field: of the job that is varied.
        start, end: of it, as they are typed; None for somewhat about what it is.
        steps: values.
        figures: one or two, by the names of `report.view.figures`.
    """

    field: Annotated[str, Field(max_length=60)] = "flutes.offset"
    start: End = None
    end: End = None
    steps: Annotated[int, Field(ge=2, le=MOST_STEPS)] = USUAL_STEPS
    figures: Annotated[tuple[str, ...], Field(min_length=1, max_length=2)] = (
        "rake_at_wall",
        "torque_likely",
    )


def chart_answer(asked: ChartAsked) -> dict[str, Any]:
    """The chart that is asked for.

    Raises:
        InputError: a field or figure that is none, or ends between which nothing lies.
        NoTapError: the job itself leaves no tap.
    """
    _refuse_strange("field", asked.field, FIELDS)
    for name in asked.figures:
        _refuse_strange("figures", name, LABELS)
    told = answered(asked, cured=False)
    values = _values(asked, told)
    held = held_by(told.design, asked.field)
    job = {**asked.job, **held.values}
    table = table_of({name: value for name, value in job.items() if value is not None})
    tried = [job_value(asked.field, value, told.units) for value in values]
    variants = compare_taps(Varied(table, {asked.field: tried})).variants
    broken = _broken(table, asked.field, variants, told.units)
    charted = Charted(asked.field, values, asked.figures, variants, broken, held)
    return {"chart": on_page(chart_view(told.design, charted, told.units))}


def _refuse_strange(what: str, name: str, known: Mapping[str, object]) -> None:
    if name not in known:
        raise InputError(what, name, ", ".join(known))


def _values(asked: ChartAsked, told: Answered) -> tuple[float, ...]:
    """Evenly spaced, but as round as a reader sets them; whole ones where the field counts."""
    field = FIELDS[asked.field]
    usual = field.ends(told.design)
    low = usual[0] if asked.start is None else _end("from", asked.start, asked.field)
    high = usual[1] if asked.end is None else _end("to", asked.end, asked.field)
    if not low < high:
        end = high if asked.end is None else asked.end
        unit = f" {unit_of(asked.field)}".rstrip()
        raise InputError("to", end, f"more than the other end, {low:g}{unit}")
    if field.whole:
        return _whole(round(low), round(high), asked)
    per = per_field(asked.field, told.units)
    step = (high - low) / (asked.steps - 1)
    digits = 1 - math.floor(math.log10(step * per))
    between = (low + step * number for number in range(1, asked.steps - 1))
    return (low, *(round(value * per, digits) / per for value in between), high)


def _whole(low: int, high: int, asked: ChartAsked) -> tuple[float, ...]:
    most = low + MOST_STEPS - 1
    if not low < high <= most:
        raise InputError("to", asked.end, f"a whole number from {low + 1} to {most}")
    return tuple(float(value) for value in range(low, high + 1))


def _end(name: str, typed: float | str, field: str) -> float:
    """An end as it was typed, within what the field may be."""
    known = FIELDS[field]
    number = _number(typed, is_length=unit_of(field) is Unit.MM)
    if number is None or not known.least <= number <= known.most:
        unit = f" {unit_of(field)}".rstrip()
        raise InputError(name, typed, f"a number from {known.least:g} to {known.most:g}{unit}")
    return number


def _number(typed: float | str, *, is_length: bool) -> float | None:
    if not isinstance(typed, str):
        return float(typed)
    if is_length:
        return millimetres_of(typed)
    bare = typed.strip().removesuffix("°").strip()
    return millimetres_of(bare) if bare[-1:].isdigit() and "/" not in bare else None


def _broken(
    table: Mapping[str, object], field: str, variants: tuple[Variant, ...], units: Units
) -> dict[int, str]:
    """What is wrong, in words, with the first of neighbours that break the same rules."""
    found: dict[int, str] = {}
    before: tuple[str, ...] = ()
    for variant in variants:
        if variant.errors and variant.errors != before:
            tried = _job_value_of(variant, field)
            found[variant.number] = variant.refusal or _wrong(table, field, tried, units)
        before = variant.errors
    return found


def _job_value_of(variant: Variant, field: str) -> object:
    """The value that a variant was tried with, a length with its unit."""
    value = variant.values[field]
    return f"{value}mm" if unit_of(field) is Unit.MM else value


def _wrong(table: Mapping[str, object], field: str, value: object, units: Units) -> str:
    try:
        job = checked_job(apply_values(table, [(field, value)]))
        errors = judged(settle(job)).errors
    except NoTapError as error:
        errors = error.findings
    return " ".join(said(finding, units) for finding in errors)
