"""What the shop has against a design: measuring wires on hand of which none suits."""

import math
from collections.abc import Iterator
from dataclasses import replace

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import WARNING, between, finding
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.errors import NoWireError
from tapmodel.findings import Finding, gravest_first
from tapmodel.values import Values

_WIRES = "shop.wires"


def judged(design: TapDesign) -> TapDesign:
    """The same design, what the shop finds among its findings.

    Which wires suit is worked out in this room, so no rule of the design can tell it.
    """
    found = tuple(_wires(design))
    return replace(design, findings=tuple(gravest_first((*design.findings, *found))))


def _wires(design: TapDesign) -> Iterator[Finding]:
    """A warning where none on hand suits.

    Source: the range of `choice.zone_range`, a rule of this program.
    """
    if not design.wires:
        return
    # Loaded for the few jobs that list wires: every command judges.
    from tapmodel.shop.wires.answer import answer_for  # noqa: PLC0415

    try:
        answer = answer_for(design)
    except NoWireError:
        return
    allowed = answer.allowed
    if allowed is None or any(map(allowed.holds, design.wires)):
        return
    nearest = min(design.wires, key=lambda wire: abs(math.log(wire / answer.wire)))
    limit, values = between(allowed.least, allowed.greatest), Values(wire=answer.wire)
    yield finding(Code.WIRES, WARNING, _WIRES, nearest, limit, OWN_RULE, values=values)
