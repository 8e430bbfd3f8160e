"""What the rules found, as lines of text: what is wrong, by how much, and what to set."""

from collections.abc import Iterable

from tapmodel.findings import Finding, gravest_first
from tapmodel.report.screen.chapter import wrapped
from tapmodel.report.screen.columns import Mark, Pen, plain
from tapmodel.report.words.cures import advice
from tapmodel.report.words.findings import said
from tapmodel.report.words.limits import actual, allowed
from tapmodel.words import Severity, Units

_MARKS = {Severity.ERROR: Mark.ERROR, Severity.WARNING: Mark.WARNING, Severity.NOTE: Mark.ASIDE}


def findings_lines(
    findings: Iterable[Finding],
    pen: Pen = plain,
    units: Units = Units.MM,
    *,
    sources: bool = False,
) -> list[str]:
    """Gravest first; a note, which asks for nothing, is its sentence alone."""
    return [
        line for one in gravest_first(findings) for line in _lines(one, pen, units, sources=sources)
    ]


def _lines(finding: Finding, pen: Pen, units: Units, *, sources: bool) -> list[str]:
    grave = finding.severity is not Severity.NOTE
    word = finding.severity.value.upper() if grave else finding.severity.value
    first, *rest = wrapped(f"{word} [{finding.code}] {said(finding, units)}", "    ")
    lines = [pen(word, _MARKS[finding.severity]) + first.removeprefix(word), *rest]
    if grave:
        found, may = actual(finding, units), allowed(finding, units)
        lines.append(f"    {finding.field} is {found}; allowed {may}")
    if finding.cures:
        lines += wrapped(f"    {advice(finding.cures, units)}", "        ")
    if sources:
        lines += wrapped(f"    source: {finding.source}", "        ")
    return lines
