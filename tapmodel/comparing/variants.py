"""Every combination of values settled: taps side by side, and how they stand to each other."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from tapmodel.comparing.figures import NO_FIGURES, figures_by_name, merit_of
from tapmodel.comparing.ranking import Verdict, verdict_on
from tapmodel.comparing.variant import CHOSEN, UNUSABLE, Cell, Variant
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError, NoTapError
from tapmodel.shop.judged import judged
from tapmodel.spec.job import Job, field_names, unit_of
from tapmodel.spec.job_file import job_of_table
from tapmodel.spec.lengths import in_millimetres
from tapmodel.spec.overrides import apply_values
from tapmodel.spec.units import Unit
from tapmodel.spec.variations import combinations
from tapmodel.words import Severity

OnDone = Callable[[int], None]
"""Told how many combinations are done."""


@dataclass(frozen=True, slots=True)
class Asked:
    """What is to be compared.

    Attributes:
        table: of the job, nested as in its file.
        varied: for each dotted field the values to try.
        sets: further values with their dotted fields, the same for all.
        where: the job comes from, for messages; empty where it is no file.
    """

    table: Mapping[str, object]
    varied: Mapping[str, Sequence[object]]
    sets: Sequence[tuple[str, object]] = field(default_factory=tuple[tuple[str, object], ...])
    where: str = ""


@dataclass(frozen=True, slots=True)
class Compared:
    """Taps side by side.

    Attributes:
        job: the first that could be used; it tells the units of all.
        name: of the first tap, for files.
        varied: the fields that differ among them.
        variants: one for each combination, in the order in which they were asked for.
        verdict: how they rank.
    """

    job: Job
    name: str
    varied: tuple[str, ...]
    variants: tuple[Variant, ...]
    verdict: Verdict

    @property
    def anew(self) -> tuple[str, ...]:
        """Those of `CHOSEN` that rules chose otherwise for one tap than for another."""
        return tuple(
            field
            for field in CHOSEN
            if len({one.chosen[field] for one in self.variants if field in one.chosen}) > 1
        )


def compare_taps(asked: Asked, on_done: OnDone = lambda _number: None) -> Compared:
    """Settle every combination of the values given, and rank them.

    No cures are sought. Values that leave no tap, or make no job, are a variant that says so.

    Raises:
        InputError: no combination makes a job, or there are too many.
    """
    found: list[_Tried] = []
    for values in combinations(asked.varied):
        found.append(_tried(asked, values, len(found) + 1))
        on_done(len(found))
    job = next((one.job for one in found if one.job), None)
    if job is None:
        raise next(
            (one.error for one in found if one.error),
            InputError(
                "combinations of values", 0, "a value or more for each field that is varied"
            ),
        )
    variants = tuple(one.variant for one in found)
    name = next((one.name for one in found if one.name), _bare(job.name or job.designation))
    return Compared(job, name, tuple(asked.varied), variants, verdict_on(variants))


@dataclass(frozen=True, slots=True)
class _Tried:
    """What came of a combination: its job and the tap's name, or why there is no job."""

    variant: Variant
    job: Job | None = None
    name: str = ""
    error: InputError | None = None


def _tried(asked: Asked, values: Mapping[str, object], number: int) -> _Tried:
    cells = {name: _cell(name, value) for name, value in values.items()}
    job = None
    try:
        pairs = [*(pair for pair in asked.sets if pair[0] not in values), *values.items()]
        job = job_of_table(apply_values(asked.table, pairs), asked.where)
        design = judged(settle(job))
    except NoTapError as error:
        return _Tried(Variant(number, cells, NO_FIGURES, (error.finding.code,)), job)
    except InputError as error:
        unusable = Variant(number, cells, NO_FIGURES, (UNUSABLE,), refusal=str(error))
        return _Tried(unusable, job, error=error)
    return _Tried(_settled(number, cells, design), job, design.name)


def _settled(number: int, values: Mapping[str, Cell], design: TapDesign) -> Variant:
    errors, warnings = (_codes(design, one) for one in (Severity.ERROR, Severity.WARNING))
    foreseen = None if errors else design.prediction
    return Variant(
        number=number,
        values=values,
        figures=figures_by_name(design),
        errors=errors,
        warnings=warnings,
        tap=design.tap,
        merit=merit_of(foreseen, len(warnings)) if foreseen else None,
        chosen={
            choice.field: choice.value
            for choice in design.choices
            if not choice.given and not isinstance(choice.value, tuple)
        },
    )


def _codes(design: TapDesign, severity: Severity) -> tuple[str, ...]:
    return tuple(found.code for found in design.findings if found.severity is severity)


def _cell(name: str, value: object) -> Cell:
    """A value for a table; a length that came with its unit [mm]."""
    if name in field_names() and unit_of(name) is Unit.MM:
        value = in_millimetres(value)
    if isinstance(value, float | str) or (isinstance(value, int) and abs(value) < _HUGE):
        return value
    return str(value)


_HUGE = 10**15
"""No float holds each whole number beyond, and no field takes one."""


def _bare(text: str) -> str:
    """A name for files where no tap was settled that has one."""
    return re.sub(r"[^A-Za-z0-9._]+", "-", text).strip("-.") or "tap"
