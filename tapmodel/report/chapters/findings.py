"""What the rules found: errors and warnings in full, notes in short."""

from tapmodel.designing.record import TapDesign
from tapmodel.findings import Finding, gravest_first
from tapmodel.report.blocks import Chapter, Paragraphs
from tapmodel.report.words.findings import what
from tapmodel.report.words.limits import actual, allowed
from tapmodel.words import Severity


def chapter(design: TapDesign) -> Chapter:
    """Gravest first."""
    texts = tuple(map(_text, gravest_first(design.findings))) or (
        "None: the design keeps every rule.",
    )
    return Chapter("findings", "Findings of the design", (Paragraphs(texts),))


def _text(finding: Finding) -> str:
    if finding.severity is Severity.NOTE:
        return f"note: {what(finding)}"
    return (
        f"{finding.severity.value.upper()} [{finding.code}]: {what(finding)} "
        f"Is {actual(finding)}; allowed {allowed(finding)} ({finding.source})."
    )
