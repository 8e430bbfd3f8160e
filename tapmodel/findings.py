"""What a check found: numbers beside what was allowed, never an exception."""

from collections.abc import Iterable
from dataclasses import dataclass

from tapmodel.words import Severity


@dataclass(frozen=True, slots=True)
class Finding:
    """One result of one check.

    Attributes:
        code: stable short name, e.g. "square-corners".
        severity: error, warning or note.
        what: one sentence for the machinist, ending in what to change.
        expected: what would be right, as text with unit.
        actual: what is, as text with unit.
        allowed: the permitted range, as text with unit.
        source: where the rule comes from.
    """

    code: str
    severity: Severity
    what: str
    expected: str
    actual: str
    allowed: str
    source: str


def gravest_first(found: Iterable[Finding]) -> list[Finding]:
    """Errors, then warnings, then notes; each in the order in which they were found."""
    order = list(Severity)
    return sorted(found, key=lambda finding: order.index(finding.severity))
