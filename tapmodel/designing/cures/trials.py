"""A workbench to try values on: the same job designed again, each set of values once."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from tapmodel.designing.cures.cutters import shelf_of
from tapmodel.designing.record import TapDesign
from tapmodel.designing.settle import settled_as_mm
from tapmodel.errors import InputError, NoTapError
from tapmodel.findings import Finding
from tapmodel.spec.job import Job
from tapmodel.spec.job_file import checked
from tapmodel.spec.overrides import apply_values, rivals
from tapmodel.words import Severity

Values = tuple[tuple[str, float | str], ...]
"""Fields of the job with the values that are tried."""

UNUSABLE = "unusable"
"""Code of values that no job may hold."""

MOST_TRIALS = 400
"""Designs that the cures of one job may cost: a second or two."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of a trial: findings that ask for a change, by code, and the design if any.

    Attributes:
        troubles: findings that ask for a change.
        design: None where the values leave no tap.
        notes: findings that ask for nothing.
    """

    troubles: Mapping[str, Finding | None]
    design: TapDesign | None
    notes: Mapping[str, Finding] = field(default_factory=dict[str, Finding])

    def errors(self) -> frozenset[str]:
        """Codes of the rules broken."""
        return frozenset(
            code
            for code, found in self.troubles.items()
            if found is None or found.severity is Severity.ERROR
        )


class Trials:
    """Designs one job again with other values."""

    def __init__(self, job: Job, spared: frozenset[str] = frozenset()) -> None:
        """Start with the job as given; rules of `spared` codes are passed over."""
        self._table = job.table()
        self._spared = spared
        self._seen: dict[tuple[Values, frozenset[str]], Outcome] = {}
        self.given = frozenset(job.given())
        self.shelf = shelf_of(job)

    @property
    def made(self) -> int:
        """How many there were."""
        return len(self._seen)

    @property
    def spent(self) -> bool:
        """Whether no more trials should be made."""
        return self.made >= MOST_TRIALS

    def outcome(self, values: Values, without: frozenset[str] = frozenset()) -> Outcome:
        """What the rules say with `values` laid over the job, and without some of its fields."""
        key = (values, without)
        if key not in self._seen:
            found = _outcome(_less(self._table, without, ""), values)
            left = {code: one for code, one in found.troubles.items() if code not in self._spared}
            self._seen[key] = Outcome(left, found.design, found.notes)
        return self._seen[key]

    def replaced(self, field: str, value: float | str = 1.0) -> tuple[str, ...]:
        """Fields of the job that a value for `field` replaces."""
        return rivals(field, value, self._table)


def _outcome(table: Mapping[str, object], values: Values) -> Outcome:
    try:
        job = checked(apply_values(table, values))
    except InputError:
        return Outcome({UNUSABLE: None}, None)
    return _judged(job.model_dump_json(by_alias=True, exclude_none=True))


# What mending could not cure is shown with its cures: the same jobs are tried for that again, and
# within one search, values that are laid over the job in another order.
@lru_cache(maxsize=2 * MOST_TRIALS)
def _judged(job: str) -> Outcome:
    """What the rules say to a job that is written out, as only text tells 0 from -0."""
    try:
        design = settled_as_mm(Job.model_validate_json(job))
    except InputError:
        return Outcome({UNUSABLE: None}, None)
    except NoTapError as error:
        return Outcome({error.finding.code: error.finding}, None)
    troubles = {f.code: f for f in design.findings if f.severity is not Severity.NOTE}
    notes = {f.code: f for f in design.findings if f.severity is Severity.NOTE}
    return Outcome(troubles, design, notes)


def _less(table: Mapping[str, object], without: frozenset[str], prefix: str) -> dict[str, object]:
    return {
        key: _less(value, without, f"{prefix}{key}.") if isinstance(value, dict) else value  # pyright: ignore[reportUnknownArgumentType]
        for key, value in table.items()
        if prefix + key not in without
    }
