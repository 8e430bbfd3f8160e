"""Applying cures until a job breaks no rule, or until none of them helps."""

from collections.abc import Mapping

from tapmodel.designing.cures.advice import advised
from tapmodel.designing.cures.trials import Trials
from tapmodel.designing.settle import asked_back, settle
from tapmodel.errors import NoTapError
from tapmodel.findings import Cure, Finding, Setting
from tapmodel.spec.job import Job
from tapmodel.spec.job_file import checked
from tapmodel.spec.overrides import apply_values


def fixed(job: Job, spared: frozenset[str] = frozenset()) -> tuple[Job, tuple[Cure, ...]]:
    """The job with the first cure of its first error applied, again and again, and those cures.

    A cure that does not leave fewer errors is passed over for the next, and an error without one
    for the next error; where nothing leaves fewer, the job is handed back as far as it is mended.

    Args:
        job: that may break rules.
        spared: codes of rules that may stay broken.

    Raises:
        InputError: a value that cannot be used at all.

    Source: rule of this program.
    """
    applied: list[Cure] = []
    errors = errors_of(job, spared)
    while errors:
        cure = _helpful(job, errors, spared)
        if cure is None:
            break
        job = cured(job, cure)
        errors = errors_of(job, spared)
        applied.append(cure)
    return job, tuple(applied)


def cured(job: Job, cure: Cure) -> Job:
    """The job with the values of one cure, without the fields that they contradict.

    A length gets its unit where it would be asked back without.

    Raises:
        InputError: a value that cannot be used at all.

    Source: rule of this program.
    """
    table = apply_values(job.table(), [*job.typed().items()])
    found = _with(table, cure, frozenset())
    asked = frozenset(finding.field for finding in asked_back(found))
    return _with(table, cure, asked) if asked else found


def _with(table: Mapping[str, object], cure: Cure, with_unit: frozenset[str]) -> Job:
    """A job with the values of a cure, some of them with their unit."""
    values = [(one.field, _typed(one, one.field in with_unit)) for one in cure.settings]
    return checked(apply_values(table, values))


def _typed(setting: Setting, with_unit: bool) -> float | str:
    bare = isinstance(setting.value, str) or not with_unit
    return setting.value if bare else f"{setting.value!r}{setting.unit}"


def errors_of(job: Job, spared: frozenset[str] = frozenset()) -> tuple[Finding, ...]:
    """Every rule that the design of a job breaks, or the one that leaves it no tap; no cures.

    Args:
        job: that may break rules.
        spared: codes of rules that are passed over.

    Raises:
        InputError: a value that cannot be used at all.

    Source: as `tapmodel.designing.settle.settle`.
    """
    try:
        errors = settle(job).errors
    except NoTapError as error:
        errors = (error.finding,)
    return tuple(error for error in errors if error.code not in spared)


def _helpful(job: Job, errors: tuple[Finding, ...], spared: frozenset[str]) -> Cure | None:
    """The first cure that leaves fewer errors; cures are sought for one error after the other."""
    trials = Trials(job, spared)
    for error in errors:
        (finding,) = advised((error,), trials)
        for cure in finding.cures:
            if len(errors_of(cured(job, cure), spared)) < len(errors):
                return cure
    return None
