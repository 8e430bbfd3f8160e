"""What the rules share: one way to write a finding, its numbers and its levers."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from tapmodel.design.provenance import GEOMETRY
from tapmodel.findings import Bound, Finding, Lever
from tapmodel.sources import Source
from tapmodel.words import Severity

ERROR, WARNING, NOTE = Severity.ERROR, Severity.WARNING, Severity.NOTE
Findings = Iterator[Finding]


NOISE = 1e-9
"""Binary noise of numbers that are typed in; a value on its limit is legal [mm, deg]."""


@dataclass(frozen=True, slots=True)
class Numbers:
    """The three texts of a finding: what would be right, what is, what is allowed."""

    expected: str
    actual: str
    allowed: str


def finding(  # noqa: PLR0913  (a finding has as many parts)
    code: str,
    severity: Severity,
    what: str,
    numbers: Numbers,
    source: Source = GEOMETRY,
    *,
    levers: Iterable[Lever] = (),
) -> Finding:
    """A finding; see `tapmodel.findings.Finding`.

    `what` says what is wrong, with the cure only where it has no `levers` that could be tried.
    """
    return Finding(
        code,
        severity,
        what,
        numbers.expected,
        numbers.actual,
        numbers.allowed,
        str(source),
        tuple(levers),
    )


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


def at_most(limit: float, actual: float, unit: str = "mm") -> Numbers:
    """Texts for an upper limit."""
    return Numbers(f"{limit:.5g} {unit}", f"{actual:.5g} {unit}", f"at most {limit:.5g} {unit}")


def at_least(limit: float, actual: float, unit: str = "mm") -> Numbers:
    """Texts for a lower limit."""
    return Numbers(f"{limit:.5g} {unit}", f"{actual:.5g} {unit}", f"at least {limit:.5g} {unit}")


def between(low: float, high: float, actual: float, unit: str = "mm") -> Numbers:
    """Texts for a range."""
    nearest = min(max(actual, low), high)
    return Numbers(
        f"{nearest:.6g} {unit}", f"{actual:.6g} {unit}", f"{low:.6g} to {high:.6g} {unit}"
    )
