"""Sentences of the rules on the chamfer and the point."""

from tapmodel.designing.choose.steps import up
from tapmodel.designing.codes import Code
from tapmodel.findings import Finding
from tapmodel.report.words.sentence import Length, Sentences, always, judged
from tapmodel.words import Severity


def _thick(finding: Finding, length: Length) -> str:
    chip = judged(finding)
    if finding.severity is Severity.NOTE:
        return (
            f"The chamfer is a bottoming one, {finding.values.number('leads'):.2g} turns long, "
            f"with chips of {length(chip, '.3f')}: let this tap follow one with a longer chamfer."
        )
    return (
        f"The teeth of the chamfer cut chips of {length(chip, '.3f')}, which tear the thread and "
        "load the teeth heavily; where it cannot be cut thinner, rough the thread out with a first "
        "tap."
    )


def _thin(finding: Finding, length: Length) -> str:
    return (
        f"The teeth of the chamfer cut chips of {length(judged(finding), '.4f')} and rub more than "
        "they cut."
    )


def _keen(finding: Finding, length: Length) -> str:
    chip = length(judged(finding), ".4f")
    rounding = length(finding.values.number("rounding"), ".3f")
    return (
        f"So fine a thread leaves each tooth of the chamfer a chip of {chip}: an edge rounded by "
        f"more than {rounding} rubs instead of cutting, so hone the faces."
    )


def _blind(finding: Finding, length: Length) -> str:
    depth = length(finding.values.number("depth"), ".1f")
    drilled = length(up(finding.values.number("drilled"), 0.1), ".1f")
    return (
        f"For {depth} of full thread the hole has to be drilled {drilled} deep, since the chamfer "
        f"is {length(judged(finding), '.1f')} long and leaves as much unfinished at the bottom of "
        "a blind hole. Let a tap with a shorter chamfer, such as a bottoming one, follow this one."
    )


SENTENCES: Sentences = {
    Code.CHAMFER_ANGLE: always("The chamfer is no usable cone."),
    Code.CHAMFER_LENGTH: always("The chamfer leaves no full thread."),
    Code.POINT_DRILL: always("The tap will not start: its point is as thick as the drilled hole."),
    Code.POINT_SLIM: always("The point is a needle."),
    Code.CHAMFER_BLIND: _blind,
    Code.CHIP_THICK: _thick,
    Code.CHIP_THIN: _thin,
    Code.CHIP_KEEN: _keen,
}
