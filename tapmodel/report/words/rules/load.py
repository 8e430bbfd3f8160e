"""Sentences of the rules on torque, strength and room for chips."""

from tapmodel.designing.codes import Code
from tapmodel.findings import Finding
from tapmodel.report.words.sentence import Length, Sentences, high, judged


def _material(finding: Finding) -> str:
    """What is tapped, and that it was assumed."""
    name = finding.values.word("material")
    return f"{name} (assumed, set hole.material)" if finding.values.number("assumed") else name


def _overloaded(finding: Finding, _length: Length) -> str:
    taps = int(finding.values.number("taps"))
    alone, share = "One tap", "share the work among two or three: tapmodel set JOB"
    if taps > 1:
        alone, share = f"This tap of a set of {taps}", "share the work otherwise, or among more"
    return (
        f"{alone} is not enough: in {_material(finding)} it takes about "
        f"{judged(finding):.3g} N·m, and is to be stopped at {high(finding):.3g} N·m, since it "
        f"may break at {finding.values.number('breaks'):.3g} N·m ({finding.values.word('place')}); "
        f"{share}."
    )


def _near(finding: Finding, _length: Length) -> str:
    return (
        f"In {_material(finding)} the tap may take up to {judged(finding):.3g} N·m, and is to be "
        f"stopped at {high(finding):.3g} N·m: turn it by feel, well oiled, and back it out "
        "before it binds."
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
