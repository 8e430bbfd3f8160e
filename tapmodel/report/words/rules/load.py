"""Sentences of the rules on torque, strength and room for chips."""

from tapmodel.designing.codes import Code
from tapmodel.findings import Finding
from tapmodel.report.units import HOLE_DEPTH
from tapmodel.report.words.sentence import Length, Sentences, Writer, high, judged, tapped

_ALONE = {
    1: ("One tap is not enough", "it", "share the work among two or three: tapmodel set JOB"),
    2: ("Two taps are not enough", "this one", "share the work among three: tapmodel set --taps 3"),
    3: ("Three taps are not enough", "this one", "share the work otherwise"),
}
"""What is not enough, by the number of taps; what the tap is called; what helps."""


def _overloaded(finding: Finding, write: Writer) -> str:
    taps = int(finding.values.number("taps"))
    alone, it, share = _ALONE[taps]
    yields, breaks = (write.torque(finding.values.number(at)) for at in ("yields", "breaks"))
    return (
        f"{alone}: in {tapped(finding)} {it} takes about "
        f"{write.torque(judged(finding))}, and is to be stopped at {write.torque(high(finding))}, "
        f"since it may yield from {yields} and break from {breaks} "
        f"({finding.values.word('place')}); {share}."
    )


def _near(finding: Finding, write: Writer) -> str:
    return (
        f"In {tapped(finding)} the tap may take up to {write.torque(judged(finding))}, and is "
        f"to be stopped at {write.torque(high(finding))}: turn it by feel, with "
        "the oil that its material asks for, and back it out before it binds."
    )


def _room(finding: Finding, length: Length) -> str:
    held, deep = judged(finding), finding.values.number("depth")
    if held < finding.values.number("lead"):
        return (
            "The flutes hold the chips of less than one turn of thread, the hole is "
            f"{length(deep, HOLE_DEPTH)} deep: back the tap right out and clear them at every half "
            "turn, or share the work among several taps."
        )
    return (
        f"The flutes hold the chips of {length(held, HOLE_DEPTH)} of thread, the hole is "
        f"{length(deep, HOLE_DEPTH)} deep: back the tap out and clear them in between."
    )


SENTENCES: Sentences = {
    Code.TAP_OVERLOADED: _overloaded,
    Code.TORQUE_NEAR: _near,
    Code.CHIP_ROOM: _room,
}
