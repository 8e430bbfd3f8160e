"""Sentences of the rules on the thread profile, its limits and the drill."""

from tapmodel.designing.codes import Code
from tapmodel.findings import Finding
from tapmodel.report.words.rules import unlisted
from tapmodel.report.words.sentence import Length, Sentences, always, high, judged, low
from tapmodel.words import Severity


def _pitch(finding: Finding, _length: Length) -> str:
    zone = "the hole's own limits" if finding.severity is Severity.ERROR else "the tap's zone"
    return f"The pitch diameter lies outside {zone}."


def _depth(finding: Finding, length: Length) -> str:
    end, pitch = finding.field.removeprefix("thread.root_"), finding.values.number("pitch")
    size = judged(finding)
    return f"A root {end} of {length(size, 'g')} leaves no depth at pitch {length(pitch, 'g')}."


def _height(finding: Finding, length: Length) -> str:
    return (
        f"The major diameter {length(judged(finding), 'g')} does not exceed the pitch diameter "
        f"{length(low(finding), 'g')}."
    )


def _large(finding: Finding, length: Length) -> str:
    return (
        f"The crests reach {length(judged(finding), '.3f')}, further than any bolt of this thread "
        "does: they cut metal that need not go and leave the wall of the nut thinner."
    )


def _deep(finding: Finding, length: Length) -> str:
    return (
        f"The roots lie at {length(judged(finding), '.3f')}, deep under the wall of the hole: "
        "nothing is cut there, and tooth and web are the weaker for it."
    )


def _drill(finding: Finding, _length: Length) -> str:
    if finding.severity is Severity.ERROR and judged(finding) < low(finding):
        return "The drill leaves more than the tap's thread is deep: below its roots no tooth cuts."
    if finding.severity is Severity.ERROR:
        return "The drill takes away the thread down to the tap's pitch line."
    return "The drill leaves a minor diameter outside its limits."


def _between_drills(finding: Finding, length: Length) -> str:
    values, bored = finding.values, length(judged(finding), ".2f")
    sides = [
        f"{_called(values.word(side), values.number(f'{side}_size'), length)} is the next {side}"
        for side in ("below", "above")
        if side in values
    ]
    return (
        f"No drill of the {', '.join(values.words('sets'))} set lies inside the minor limits "
        f"({', '.join(sides)}); ream or bore to {bored}, name more sets in "
        "shop.drills, or choose a wider hole.class."
    )


def _engagement(finding: Finding, length: Length) -> str:
    left, drill = finding.values.number("left"), finding.values.number("drill")
    return (
        f"An engagement of {judged(finding):g} % is wanted, and the minor limits of the hole allow "
        f"{low(finding):.1f} to {high(finding):.1f} %: a hole of {length(drill, '.3f')} leaves "
        f"{left:.1f} %."
    )


def _called(name: str, size: float, length: Length) -> str:
    """A drill by its name with the size behind it; a metric one is called by its size."""
    return length(size, "g") if name.endswith("mm") else f"{name} ({length(size, '.3f')})"


def _wear(finding: Finding, length: Length) -> str:
    return (
        f"The tap may wear by {length(finding.values.number('by'), '.4f')} in pitch diameter, "
        "from its target to the least of the hole."
    )


def _back_taper(finding: Finding, length: Length) -> str:
    return (
        f"The thread gets thinner by {judged(finding):g} on 100 towards the shank, "
        f"{length(finding.values.number('by'), '.4f')} of diameter in each turn: little behind "
        "the first ones touches the thread that they have cut, and guides the tap in it."
    )


def _wires(finding: Finding, length: Length) -> str:
    wire = length(finding.values.number("wire"), ".4f")
    return (
        "None of the wires on hand suits this thread, and the numbers over wires here are for one "
        f"of {wire}: get three alike within the range."
    )


def _other_unit(finding: Finding, _length: Length) -> str:
    """The unit that was meant, and how to write it; of a list, one of its entries."""
    inches, number = finding.values.number("inches"), f"{judged(finding):.10g}"
    name = {"inches": "inches", "thousandths": "thousandths of an inch"}
    return (
        f"{number} looks like {name[finding.values.word('unit')]}, and a bare number is mm: write "
        f"{inches:.10g}in in {finding.field}, or {number}mm if that is meant."
    )


SENTENCES: Sentences = {
    Code.OTHER_UNIT: _other_unit,
    Code.CREST_FLAT: always("The crest is too sharp."),
    Code.ROOT_FLAT: always("The root is too sharp."),
    Code.ROOT_CLEARANCE: always("The root of the tap would cut the minor diameter of the hole."),
    Code.MAJOR_SIZE: always("The tap is too small over the crests."),
    Code.MAJOR_LARGE: _large,
    Code.ROOT_DEEP: _deep,
    Code.PITCH_SIZE: _pitch,
    Code.THREAD_DEPTH: _depth,
    Code.THREAD_HEIGHT: _height,
    Code.DRILL_SIZE: _drill,
    Code.DRILL_BETWEEN: _between_drills,
    Code.ENGAGEMENT_WISH: _engagement,
    Code.BEYOND_SCOPE: lambda finding, _length: unlisted.note(finding.values),
    Code.UNLISTED_PAIR: lambda finding, _length: unlisted.note(finding.values),
    Code.WEAR_RESERVE: _wear,
    Code.BACK_TAPER: _back_taper,
    Code.WIRES: _wires,
}
