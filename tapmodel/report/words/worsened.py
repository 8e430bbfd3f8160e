"""What a cure costs, as a clause that follows it in brackets."""

from collections.abc import Callable

from tapmodel.designing.codes import Code
from tapmodel.findings import Cure, Finding
from tapmodel.report.words.limits import actual
from tapmodel.report.words.sentence import Writer, high, judged
from tapmodel.words import Units


def _rubs(finding: Finding, _write: Writer) -> str:
    return f"the lands rub along {finding.values.number('share'):.0%} of the way from edge to edge"


def _chip(finding: Finding, write: Writer) -> str:
    return f"the chips are {write(judged(finding), '.3f')} thick"


def _overloaded(finding: Finding, write: Writer) -> str:
    takes, stop = write.torque(judged(finding)), write.torque(high(finding))
    return f"the tap takes {takes} and is to be stopped at {stop}"


def _near(finding: Finding, write: Writer) -> str:
    most, stop = write.torque(judged(finding)), write.torque(high(finding))
    return f"the tap may still take up to {most} and is to be stopped at {stop}"


_CLAUSES: dict[str, Callable[[Finding, Writer], str]] = {
    Code.LAND_RUBS: _rubs,
    Code.CHIP_THICK: _chip,
    Code.CHIP_THIN: _chip,
    Code.TAP_OVERLOADED: _overloaded,
    Code.TORQUE_NEAR: _near,
}
"""Of the rules that cures worsen most, and of the note that one leaves; for the others the number
that is judged tells."""


def cost(cure: Cure, units: Units = Units.MM) -> str:
    """What it worsens or leaves: "then the chips are 0.021 mm thick"; "" for nothing."""
    told = [_clause(finding, units) for finding in (*cure.worsens, *cure.leaves)]
    return f"then {' and '.join(told)}" if told else ""


def _clause(finding: Finding, units: Units) -> str:
    said = _CLAUSES.get(finding.code)
    if said is not None:
        return said(finding, Writer(units))
    return f"{finding.field} is {actual(finding, units)} ({finding.code})"
