"""All rules that a design must hold, in the order of the tap's features."""

from dataclasses import replace

from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules import blank as rules_blank
from tapmodel.designing.rules import chamfer as rules_chamfer
from tapmodel.designing.rules import flutes as rules_flutes
from tapmodel.designing.rules import hardening as rules_hardening
from tapmodel.designing.rules import load as rules_load
from tapmodel.designing.rules import thread as rules_thread
from tapmodel.designing.rules.context import Context
from tapmodel.designing.rules.reliefs import relief as rules_relief
from tapmodel.designing.rules.solid import no_solid
from tapmodel.findings import Finding, gravest_first
from tapmodel.prediction.prediction import predicted
from tapmodel.words import Severity

__all__ = ["Context", "findings", "foreseen"]

FAMILIES = (
    rules_thread.judge,
    rules_chamfer.judge,
    rules_flutes.judge,
    rules_relief.judge,
    rules_blank.judge,
    rules_hardening.judge,
)


def findings(design: TapDesign, context: Context) -> tuple[Finding, ...]:
    """Every finding on `design`, errors first, else in the order of the rules.

    Source: each finding names its own.
    """
    found = [finding for judge in FAMILIES for finding in judge(design, context)]
    return tuple(
        replace(finding, no_solid=no_solid(finding.code, design))
        if finding.severity is Severity.ERROR
        else finding
        for finding in gravest_first(found)
    )


def foreseen(design: TapDesign, *, broken: bool = False) -> TapDesign:
    """The design with what it will do in the hole, and what is found about that.

    A tap that breaks a rule of its geometry is left as it is: it may have no core or no land.

    Args:
        design: judged.
        broken: whether a tap is foreseen that breaks a rule but has a solid.

    Source: each finding names its own.
    """
    if any(not broken or finding.no_solid for finding in design.errors):
        return design
    known = replace(design, prediction=predicted(design.tap, design.task))
    return replace(
        known, findings=tuple(gravest_first((*known.findings, *rules_load.judge(known))))
    )
