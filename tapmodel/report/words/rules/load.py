"""Sentences of the rules on torque, strength and room for chips."""

from tapmodel.designing.codes import Code
from tapmodel.findings import Finding
from tapmodel.report.words.sentence import Length, Sentences, Writer, high, judged


def _material(finding: Finding) -> str:
    """What is tapped, and that it was assumed."""
    name = finding.values.word("material")
    return f"{name} (assumed, set hole.material)" if finding.values.number("assumed") else name


def _overloaded(finding: Finding, write: Writer) -> str:
    taps = int(finding.values.number("taps"))
    alone, share = "One tap", "share the work among two or three: tapmodel set JOB"
    if taps > 1:
        alone, share = f"This tap of a set of {taps}", "share the work otherwise, or among more"
    yields, breaks = (write.torque(finding.values.number(at)) for at in ("yields", "breaks"))
    return (
        f"{alone} is not enough: in {_material(finding)} it takes about "
        f"{write.torque(judged(finding))}, and is to be stopped at {write.torque(high(finding))}, "
        f"since it may yield from {yields} and break from {breaks} "
        f"({finding.values.word('place')}); {share}."
    )


def _near(finding: Finding, write: Writer) -> str:
    return (
        f"In {_material(finding)} the tap may take up to {write.torque(judged(finding))}, and is "
        f"to be stopped at {write.torque(high(finding))}: turn it by feel, with "
        "the oil that its material asks for, and back it out before it binds."
    )


def _room(finding: Finding, length: Length) -> str:
    return (
        f"The flutes hold the chips of {length(judged(finding), '.1f')} of thread, the hole is "
        f"{length(finding.values.number('depth'), '.1f')} deep: back the tap out and clear them "
        "in between."
    )


SENTENCES: Sentences = {
    Code.TAP_OVERLOADED: _overloaded,
    Code.TORQUE_NEAR: _near,
    Code.CHIP_ROOM: _room,
}
