"""What the rules share: their context, and one way to write a finding."""

from collections.abc import Iterator
from dataclasses import dataclass

from tapmodel.design.flute_choice import ChosenFlutes
from tapmodel.design.hole import TappedHole
from tapmodel.design.legal_value import ceil_text, floor_text
from tapmodel.design.provenance import GEOMETRY
from tapmodel.findings import Finding
from tapmodel.sources import Source
from tapmodel.words import Severity

ERROR, WARNING, NOTE = Severity.ERROR, Severity.WARNING, Severity.NOTE
Findings = Iterator[Finding]


@dataclass(frozen=True, slots=True)
class Context:
    """What the rules need beside the design itself.

    Attributes:
        hole: the hole with its limits' origin.
        flutes: the wishes, for the nearest legal value.
        shank_must_pass: the job wants the shank to pass the finished hole.
    """

    hole: TappedHole
    flutes: ChosenFlutes
    shank_must_pass: bool


@dataclass(frozen=True, slots=True)
class Numbers:
    """The three texts of a finding: what would be right, what is, what is allowed."""

    expected: str
    actual: str
    allowed: str


def finding(
    code: str, severity: Severity, what: str, numbers: Numbers, source: Source = GEOMETRY
) -> Finding:
    """A finding; see `tapmodel.findings.Finding`."""
    return Finding(
        code, severity, what, numbers.expected, numbers.actual, numbers.allowed, str(source)
    )


def at_most(limit: float, actual: float, unit: str = "mm") -> Numbers:
    """Texts for an upper limit; the nearest legal value is rounded into the legal side."""
    return Numbers(
        f"{floor_text(limit)} {unit}", f"{actual:.5g} {unit}", f"at most {limit:.5g} {unit}"
    )


def at_least(limit: float, actual: float, unit: str = "mm") -> Numbers:
    """Texts for a lower limit; the nearest legal value is rounded into the legal side."""
    return Numbers(
        f"{ceil_text(limit)} {unit}", f"{actual:.5g} {unit}", f"at least {limit:.5g} {unit}"
    )


def between(low: float, high: float, actual: float, unit: str = "mm") -> Numbers:
    """Texts for a range."""
    nearest = min(max(actual, low), high)
    return Numbers(
        f"{nearest:.6g} {unit}", f"{actual:.6g} {unit}", f"{low:.6g} to {high:.6g} {unit}"
    )
