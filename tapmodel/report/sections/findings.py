"""What the rules found, errors first."""

from tapmodel.design.tap_design import TapDesign
from tapmodel.findings import Finding
from tapmodel.report.blocks import Quantity, Section, Table, Words
from tapmodel.words import Severity

_RANK = {Severity.ERROR: 0, Severity.WARNING: 1, Severity.NOTE: 2}


def section(design: TapDesign) -> Section:
    """One line for each finding."""
    ranked = sorted(design.findings, key=lambda finding: _RANK[finding.severity])
    head = ("", "finding", "is", "allowed", "source")
    return Section("findings", "Findings", (Table(head, tuple(map(_line, ranked))),))


def _line(finding: Finding) -> tuple[Quantity, ...]:
    return (
        Words(finding.severity.value),
        Words(f"{finding.what} [{finding.code}]"),
        Words(finding.actual),
        Words(finding.allowed),
        Words(finding.source),
    )
