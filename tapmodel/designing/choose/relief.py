"""Choosing the two reliefs."""

from dataclasses import dataclass

from tapmodel.designing.choose.ledger import Ledger, Rule, by_rule
from tapmodel.designing.codes import Code
from tapmodel.designing.judging import ERROR, NOISE, at_most, exactly, finding, less
from tapmodel.designing.provenance import OWN_RULE, PRACTICE, PRACTICE_FROM_MEMORY
from tapmodel.errors import NoTapError
from tapmodel.findings import Held, Limit
from tapmodel.shape.relief import (
    con_eccentric,
    concentric,
    eccentric_by_drop,
    eccentric_by_edge,
    heel_drop,
)
from tapmodel.tap.tap import Relief, Reliefs, TapThread
from tapmodel.values import Values
from tapmodel.words import ReliefKind, ReliefPlace

CHAMFER_EDGE_ANGLE = 4.0
THREAD_DROP_SHARE = 0.004
LARGEST_DROP_SHARE = 0.2
"""Largest heel drop that an arc is laid for, as a share of the major diameter."""

KIND_RULE = by_rule("kind-margin-and-arc", PRACTICE)
CHAMFER_KIND_RULE = by_rule("kind-clear-from-edge", PRACTICE)
CREST_RULE = by_rule("place-crest", PRACTICE)
WHOLE_RULE = by_rule("place-whole-thread", OWN_RULE)
BARE_RULE = by_rule("kind-chamfer-only", PRACTICE)
CHAMFER_PLACE_RULE = by_rule("place-chamfer", OWN_RULE)
MARGIN_RULE = by_rule("margin-third-of-land", PRACTICE_FROM_MEMORY)
THREAD_DROP_RULE = by_rule("drop-of-diameter", PRACTICE_FROM_MEMORY, share=THREAD_DROP_SHARE)
FINE_DROP_RULE = by_rule("drop-of-depth", OWN_RULE, usual=THREAD_DROP_SHARE)
EDGE_RULE = by_rule("edge-angle-least", PRACTICE_FROM_MEMORY, angle=CHAMFER_EDGE_ANGLE)
CHAMFER_DROP_RULE = by_rule("drop-by-edge-angle", OWN_RULE, angle=CHAMFER_EDGE_ANGLE)


@dataclass(frozen=True, slots=True)
class _Land:
    """A land that is to be relieved.

    Attributes:
        key: section of the job file.
        place: surface that carries the relief.
        major: diameter over the crests [mm].
        angle: of the land at that diameter [deg].
        drop: heel drop by rule [mm], noted with `drop_rule`.
    """

    key: str
    place: ReliefPlace
    major: float
    angle: float
    drop: float
    drop_rule: Rule


def choose_reliefs(
    thread: TapThread, diameter: float, land_angle: float, ledger: Ledger
) -> Reliefs:
    """Settle both reliefs for lands of `land_angle` [deg] at the crests; `diameter` nominal [mm].

    Raises:
        NoTapError: a margin as wide as the land, or a drop that no arc reaches.

    Source: kinds as defined in `tapmodel.shape.relief`; defaults common practice.
    """
    place = _place(thread, ledger)
    on_thread = _Land(
        "relief.thread", place, thread.major, land_angle, *_thread_drop(thread, diameter)
    )
    on_chamfer = _Land(
        "relief.chamfer",
        ReliefPlace.CHAMFER,
        thread.major,
        land_angle,
        _chamfer_drop(thread, land_angle),
        CHAMFER_DROP_RULE,
    )
    ledger.word("relief.chamfer.applies_to", "chamfer", CHAMFER_PLACE_RULE)
    rounded = thread.crest_radius > 0
    kind, rule = (
        (ReliefKind.CONCENTRIC, BARE_RULE) if rounded else (ReliefKind.CON_ECCENTRIC, KIND_RULE)
    )
    return Reliefs(
        _relief(on_thread, kind, rule, ledger),
        _relief(on_chamfer, ReliefKind.ECCENTRIC, CHAMFER_KIND_RULE, ledger),
    )


def _place(thread: TapThread, ledger: Ledger) -> ReliefPlace:
    rounded = thread.crest_radius > 0
    ruled, rule = ("thread", WHOLE_RULE) if rounded else ("crest", CREST_RULE)
    place = ReliefPlace(ledger.word("relief.thread.applies_to", ruled, rule))
    if rounded and place is ReliefPlace.CREST:
        field, values = "relief.thread.applies_to", Values(radius=thread.crest_radius)
        judged = (field, place.value, Limit(held=Held.WHOLE_THREAD))
        levers = (exactly(field, "thread"),)
        raise NoTapError(finding(Code.RELIEF_PLACE, ERROR, *judged, values=values, levers=levers))
    return place


def _thread_drop(thread: TapThread, diameter: float) -> tuple[float, Rule]:
    usual = round(THREAD_DROP_SHARE * diameter, 3)
    most = round((thread.major - thread.minor) / 8, 4)
    return (usual, THREAD_DROP_RULE) if 0 < usual <= most else (max(most, 0.0001), FINE_DROP_RULE)


def _chamfer_drop(thread: TapThread, land_angle: float) -> float:
    by_edge = eccentric_by_edge(ReliefPlace.CHAMFER, thread.major, CHAMFER_EDGE_ANGLE)
    full = heel_drop(by_edge, thread.major, land_angle)
    # A thread without depth is refused by the rules; until then its drop must stay positive.
    return max(round(min(full, (thread.major - thread.minor) / 4), 4), 0.0001)


def _relief(land: _Land, ruled: ReliefKind, rule: Rule, ledger: Ledger) -> Relief:
    implied = _implied(land.key, ruled, ledger).value
    kind = ReliefKind(ledger.word(f"{land.key}.kind", implied, rule))
    if kind is ReliefKind.CONCENTRIC:
        return concentric(land.place)
    if kind is ReliefKind.CON_ECCENTRIC:
        margin = ledger.number(f"{land.key}.margin_angle", round(land.angle / 3, 1), MARGIN_RULE)
        _refuse_margin(land, margin)
        wanted = _heel_drop(land, ledger)
        relief = con_eccentric(land.place, land.major, land.angle, margin, wanted)
        _refuse_short_of_heel(land, relief, wanted)
        return relief
    by_edge = _edge_angle(land, ledger)
    if by_edge is not None:
        return eccentric_by_edge(land.place, land.major, by_edge)
    return eccentric_by_drop(land.place, land.major, land.angle, _heel_drop(land, ledger))


def _implied(key: str, ruled: ReliefKind, ledger: Ledger) -> ReliefKind:
    """A margin can only mean con-eccentric relief, an edge angle only eccentric."""
    if ledger.has(f"{key}.margin_angle"):
        return ReliefKind.CON_ECCENTRIC
    if ledger.has(f"{key}.edge_angle"):
        return ReliefKind.ECCENTRIC
    return ruled


def _edge_angle(land: _Land, ledger: Ledger) -> float | None:
    """The edge angle to use, None when the heel drop decides."""
    given = ledger.given(f"{land.key}.edge_angle")
    if given is not None or ledger.has(f"{land.key}.heel_drop"):
        return given
    ruled = eccentric_by_edge(land.place, land.major, CHAMFER_EDGE_ANGLE)
    full = heel_drop(ruled, land.major, land.angle)
    if land.place is not ReliefPlace.CHAMFER or full > land.drop + 0.0001:
        return None
    return ledger.number(f"{land.key}.edge_angle", CHAMFER_EDGE_ANGLE, EDGE_RULE)


def _heel_drop(land: _Land, ledger: Ledger) -> float:
    wanted = ledger.number(f"{land.key}.heel_drop", land.drop, land.drop_rule)
    largest = LARGEST_DROP_SHARE * land.major
    by_edge = eccentric_by_edge(land.place, land.major, 45.0)
    steepest = heel_drop(by_edge, land.major, land.angle)
    allowed = min(largest, steepest)
    if wanted > allowed:
        field, values = f"{land.key}.heel_drop", Values(land=land.angle)
        judged, levers = (field, wanted, at_most(allowed)), (less(field, wanted, allowed),)
        raise NoTapError(finding(Code.RELIEF_DROP, ERROR, *judged, values=values, levers=levers))
    return wanted


def _refuse_short_of_heel(land: _Land, relief: Relief, wanted: float) -> None:
    """The circle passes the heel twice; the arc must reach the drop where it is outermost."""
    if abs(heel_drop(relief, land.major, land.angle) - wanted) < NOISE:
        return
    field, limit = f"{land.key}.heel_drop", Limit(unit="mm", held=Held.LAND_BEHIND_MARGIN)
    levers = (less(field, wanted), less(f"{land.key}.margin_angle", relief.margin_angle))
    raise NoTapError(finding(Code.RELIEF_ARC, ERROR, field, wanted, limit, levers=levers))


def _refuse_margin(land: _Land, margin: float) -> None:
    widest = 0.95 * land.angle
    if margin > widest:
        field, values = f"{land.key}.margin_angle", Values(land=land.angle)
        judged, levers = (field, margin, at_most(widest, "deg")), (less(field, margin, widest),)
        raise NoTapError(finding(Code.RELIEF_ROOM, ERROR, *judged, values=values, levers=levers))
