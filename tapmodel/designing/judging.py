"""What the rules share: one way to write a finding, its limit and its levers."""

from collections.abc import Iterable, Iterator

from tapmodel.designing.codes import Code
from tapmodel.designing.fields import fields_of_job
from tapmodel.designing.provenance import GEOMETRY
from tapmodel.findings import Bound, Finding, Lever, Limit
from tapmodel.sources import Source
from tapmodel.values import NO_VALUES, Values
from tapmodel.words import Severity

ERROR, WARNING, NOTE = Severity.ERROR, Severity.WARNING, Severity.NOTE
Findings = Iterator[Finding]

NOISE = 1e-9
"""Binary noise of numbers that are typed in; a value on its limit is legal [mm, deg]."""

FIGURES = frozenset(
    {
        "thread.minor",
        "chamfer.chip_thickness",  # of one tooth, square to the cone
        "flutes.rake_at_wall",  # where the wall of the drilled hole begins [deg]
        "flutes.wall",  # least metal between neighbouring flutes
        "flutes.land_width",  # over the crests
        "flutes.land_width_root",
        "flutes.rubbing_width",  # of a land, as far as its flanks have no relief
        "flutes.runout_end",
        "blank.diameter_at_runout",  # the thinnest that the flutes cut through behind the thread
        "prediction.torque",  # that the tap takes in its hole [N·m]
        "prediction.room",  # length of thread whose chips the flutes hold
        "blank.step_to_root",  # between the thread's root and the blank behind it, on diameter
    }
)
"""What rules judge beside the fields of the job [mm, deg]."""


def finding(  # noqa: PLR0913, PLR0917  (a finding has as many parts)
    code: Code,
    severity: Severity,
    field: str,
    actual: float | str,
    limit: Limit,
    source: Source = GEOMETRY,
    *,
    values: Values = NO_VALUES,
    levers: Iterable[Lever] = (),
) -> Finding:
    """A finding; see `tapmodel.findings.Finding`.

    Raises:
        KeyError: `field` is neither a field of the job nor one of `FIGURES`.
    """
    if field not in FIGURES and field not in fields_of_job():
        raise KeyError(field)
    found = actual if isinstance(actual, str) else float(actual)
    return Finding(code, severity, field, found, limit, values, source, tuple(levers))


def less(field: str, now: float, near: float | None = None) -> Lever:
    """A smaller value mends it; `now` it stands there, a formula expects the limit `near`."""
    return Lever(field, Bound.AT_MOST, now, near)


def more(field: str, now: float, near: float | None = None) -> Lever:
    """A larger value mends it; see `less`."""
    return Lever(field, Bound.AT_LEAST, now, near)


def exactly(field: str, value: float | str) -> Lever:
    """This very value mends it."""
    return Lever(field, Bound.EXACTLY, None, value)


def over(actual: float, limit: float) -> bool:
    """Whether an upper limit is broken by more than the noise of binary numbers."""
    return actual > limit + NOISE


def under(actual: float, limit: float) -> bool:
    """Whether a lower limit is broken by more than the noise of binary numbers."""
    return actual < limit - NOISE


def at_most(limit: float, unit: str = "mm") -> Limit:
    """An upper limit."""
    return Limit(None, float(limit), unit)


def at_least(limit: float, unit: str = "mm") -> Limit:
    """A lower limit."""
    return Limit(float(limit), None, unit)


def between(low: float, high: float, unit: str = "mm") -> Limit:
    """A range."""
    return Limit(float(low), float(high), unit)
