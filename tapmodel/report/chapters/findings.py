"""What the rules found: errors and warnings in full, notes in short."""

from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.findings import Finding, gravest_first
from tapmodel.report.blocks import Chapter, Paragraphs
from tapmodel.report.words.findings import what
from tapmodel.report.words.limits import actual, allowed
from tapmodel.words import Severity, Units


def chapter(design: TapDesign) -> Chapter:
    """Gravest first."""
    texts = tuple(partial(_text, finding) for finding in gravest_first(design.findings)) or (
        "None: the design keeps every rule.",
    )
    return Chapter("findings", "Findings of the design", (Paragraphs(texts),))


def _text(finding: Finding, units: Units) -> str:
    if finding.severity is Severity.NOTE:
        return f"note: {what(finding, units)}"
    return (
        f"{finding.severity.value.upper()} [{finding.code}]: {what(finding, units)} "
        f"Is {actual(finding, units)}; allowed {allowed(finding, units)} ({finding.source})."
    )
