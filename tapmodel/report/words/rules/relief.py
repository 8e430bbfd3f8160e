"""Sentences of the rules on the two reliefs, and of what no arc can do."""

from tapmodel.designing.codes import Code
from tapmodel.findings import Finding, Held
from tapmodel.report.words.sentence import Length, Sentences, always, judged
from tapmodel.words import ReliefKind


def _place(finding: Finding, length: Length) -> str:
    radius = finding.values.number("radius")
    return f"A crest rounded by {length(radius, '.3g')} cannot be relieved without its flanks."


def _room(finding: Finding, _length: Length) -> str:
    return (
        f"A margin of {judged(finding):g} deg leaves no room for the arc on a land of "
        f"{finding.values.number('land'):.2f} deg."
    )


def _drop(finding: Finding, length: Length) -> str:
    land = finding.values.number("land")
    return f"No arc drops {length(judged(finding), 'g')} over a land of {land:.2f} deg."


def _arc(finding: Finding, _length: Length) -> str:
    if finding.limit.held is Held.LAND_BEHIND_MARGIN:
        return "The relief's arc turns back before it has reached its drop at the heel."
    return "The relief's arc ends before it has crossed the land, which is wider towards the web."


def _rises(finding: Finding, _length: Length) -> str:
    return (
        f"The relief is deepest at {finding.values.number('deepest_at'):.1f} deg behind the edge "
        "and rises again towards the heel."
    )


def _rubs(finding: Finding, length: Length) -> str:
    rub = finding.values.number("rub")
    if finding.values.word("kind") == ReliefKind.CONCENTRIC:
        proud = length(rub, ".4f")
        return f"A concentric chamfer binds: its heel stands {proud} proud of what its edge cut."
    return f"The chamfer binds: behind its edge it stands up to {length(rub, '.4f')} proud."


def _slight(finding: Finding, length: Length) -> str:
    values = finding.values
    land, drop = length(values.number("land"), ".1f"), length(values.number("drop"), ".3f")
    return (
        f"The chamfer is relieved by {judged(finding):.2f} deg at its edge, "
        f"{values.number('usual'):g} deg are usual: over a land of {land} "
        f"it drops {drop}, half the height of so low a thread; for a "
        "keener chamfer narrow the land or set relief.chamfer.edge_angle."
    )


SENTENCES: Sentences = {
    Code.RELIEF_PLACE: _place,
    Code.RELIEF_ROOM: _room,
    Code.RELIEF_DROP: _drop,
    Code.RELIEF_MARGIN: always("Con-eccentric relief needs a margin."),
    Code.RELIEF_ARC: _arc,
    Code.RELIEF_STEEP: always(
        "The relief falls nearly as steeply as the wall of the flute and leaves no heel."
    ),
    Code.RELIEF_RISES: _rises,
    Code.POINT_CORE: always("At the heel the point reaches into the web between the flutes."),
    Code.CREST_DROP: always("At the heel the crest would drop below the root of the thread."),
    Code.THREAD_DROP: always("At the heel the root of the thread would drop into the web."),
    Code.CHAMFER_RUBS: _rubs,
    Code.CHAMFER_SLIGHT: _slight,
}
