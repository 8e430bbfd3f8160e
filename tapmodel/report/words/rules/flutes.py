"""Sentences of the rules on the flutes, and of what leaves none."""

from tapmodel.designing.codes import Code
from tapmodel.findings import Finding
from tapmodel.report.words.sentence import Length, Sentences, always, high, judged, low, tapped


def _axis(finding: Finding, length: Length) -> str:
    if finding.field == "flutes.depth_from_top":
        return (
            f"The flutes are {length(judged(finding), '.3f')} deep: the ball's centre lies past "
            "the tap's axis."
        )
    return f"The cutter passes the tap's axis, by {length(-judged(finding) / 2, '.3f')}."


def _beside(finding: Finding, length: Length) -> str:
    return f"The cutter stands beside the tap, with an offset of {length(judged(finding), '.3f')}."


def _depth(finding: Finding, length: Length) -> str:
    core = length(judged(finding), ".3f")
    return f"The flute does not reach the root of the thread with a core of {core}."


def _place(finding: Finding, length: Length) -> str:
    core, cutter = finding.values.number("core"), finding.values.number("cutter")
    offset, *ends = (length(mm, ".3f") for mm in (judged(finding), low(finding), high(finding)))
    return (
        f"With a core of {length(core, '.3f')} and a cutter of {length(cutter, 'g')} the offset "
        f"{offset} must stay within {' to '.join(ends)}."
    )


def _on_ball(finding: Finding, _length: Length) -> str:
    rake = f"{judged(finding):.2f} deg"
    return f"The edge lies on the ball's arc with a rake of {rake} and scrapes."


def _no_land(finding: Finding, length: Length) -> str:
    count, cutter = finding.values.number("count"), finding.values.number("cutter")
    return f"No land is left between {count:g} flutes of {length(cutter, 'g')}."


def _wish(finding: Finding, _length: Length) -> str:
    return (
        f"The wanted rake of {low(finding):g} deg cannot be had: the edge lies on the ball's arc, "
        "where core or depth settles the rake."
    )


def _centred(finding: Finding, _length: Length) -> str:
    edge = finding.values.word("edge")
    where = "on the ball's arc" if edge == "ball" else "on the straight wall"
    return (
        f"The flutes are centred: the edge lies {where} and cutter and depth alone settle the "
        f"rake, {judged(finding):.2f} deg at the crest and "
        f"{finding.values.number('at_root'):.2f} deg at the root; set flutes.rake instead of the "
        "offset to choose it."
    )


def _leans(finding: Finding, length: Length) -> str:
    offset = length(finding.values.number("offset"), ".3f")
    return (
        f"With an offset of {offset} the edge scrapes, at a rake of {judged(finding):.2f} deg; set "
        "flutes.rake instead where that is wanted."
    )


def _scrapes(finding: Finding, _length: Length) -> str:
    return (
        "The edge scrapes at the wall of the drilled hole, where its rake is "
        f"{judged(finding):.2f} deg against {finding.values.number('crest'):.2f} deg "
        "at the crest: so deep in the flute it lies on the ball's arc."
    )


def _unusual(finding: Finding, _length: Length) -> str:
    rake, least, most = judged(finding), low(finding), high(finding)
    large = rake > most
    does = "draws itself in and breaks out" if large else "tears the thread and turns hard"
    return (
        f"The rake of {rake:.2f} deg at the crest is {'more' if large else 'less'} than the "
        f"{least:g} to {most:g} deg that are usual in {tapped(finding)}: an edge that is much "
        f"{'keener' if large else 'blunter'} {does}."
    )


def _rubs(finding: Finding, length: Length) -> str:
    return (
        "The lands rub on the thread that they have cut, without clearance along "
        f"{length(judged(finding), '.2f')} of arc at the crests or "
        f"{finding.values.number('share'):.0%} of the way from edge to edge: their flanks are not "
        "relieved."
    )


def _at_hand(finding: Finding, length: Length) -> str:
    cutter = length(judged(finding), "g")
    return f"The cutter of {cutter} is not among those of shop.cutters."


def _land_wish(finding: Finding, _length: Length) -> str:
    left, wanted = judged(finding), finding.values.number("wanted")
    cures = (
        "more flutes or a larger cutter" if left > wanted else "fewer flutes or a smaller cutter"
    )
    return (
        f"The lands take {left:.0%} of their spacing, {wanted:.0%} is wanted: of the cutters that "
        f"may be taken none comes nearer. Take {cures}."
    )


SENTENCES: Sentences = {
    Code.FLUTE_AXIS: _axis,
    Code.FLUTE_BESIDE: _beside,
    Code.FLUTE_DEPTH: _depth,
    Code.FLUTE_PLACE: _place,
    Code.FLUTE_LAND: _no_land,
    Code.FLUTE_WISH: _wish,
    Code.CUTTER_SIZE: always("No ball-nose cutter is made so small."),
    Code.CUTTER_AT_HAND: _at_hand,
    Code.CORE: always("The web is too thin to drive the tap."),
    Code.CORE_ROOT: always("The flutes hardly reach below the root of the thread."),
    Code.RAKE: always("The rake at the crest is out of range."),
    Code.RAKE_AT_WALL: _scrapes,
    Code.RAKE_UNUSUAL: _unusual,
    Code.CENTRED_FLUTES: _centred,
    Code.EDGE_ON_BALL: _on_ball,
    Code.EDGE_SCRAPES: _leans,
    Code.FLUTE_NEIGHBOURS: always("Neighbouring flutes come too close."),
    Code.LAND_CREST: always("The land is too narrow at the crest."),
    Code.LAND_ROOT: always("The land is too narrow at the root."),
    Code.LAND_RUBS: _rubs,
    Code.LAND_WISH: _land_wish,
}
