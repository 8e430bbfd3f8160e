"""All rules that a design must hold, in the order of the tap's features."""

from tapmodel.design import rules_blank, rules_chamfer, rules_flutes, rules_relief, rules_thread
from tapmodel.design.rules_context import Context
from tapmodel.design.tap_design import TapDesign
from tapmodel.findings import Finding

__all__ = ["Context", "findings"]

FAMILIES = (
    rules_thread.judge,
    rules_chamfer.judge,
    rules_flutes.judge,
    rules_relief.judge,
    rules_blank.judge,
)


def findings(design: TapDesign, context: Context) -> tuple[Finding, ...]:
    """Every finding on `design`, errors first, else in the order of the rules.

    Source: each finding names its own.
    """
    order = {"error": 0, "warning": 1, "note": 2}
    found = [finding for judge in FAMILIES for finding in judge(design, context)]
    return tuple(sorted(found, key=lambda finding: order[finding.severity.value]))
