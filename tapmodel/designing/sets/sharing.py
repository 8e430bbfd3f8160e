"""The work of one designed tap shared among several: how, and what each of them then takes."""

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from enum import StrEnum

from tapmodel.designing.choose.chamfer import cone
from tapmodel.designing.choose.steps import down, step_for
from tapmodel.designing.limits.chips import chip_range
from tapmodel.designing.record import TapDesign
from tapmodel.designing.sets.chamfers import fitting_leads
from tapmodel.prediction.part import Part, earlier
from tapmodel.prediction.prediction import Prediction, predicted
from tapmodel.prediction.set_torques import equal_torque_shares
from tapmodel.prediction.sets import Plan, TooMuchError, split, usual_plan
from tapmodel.tap.tap import TapThread

COUNTS = (2, 3)
"""Of taps in a set; more are never made."""

PITCH_DIGITS = 3
"""Digits of an earlier tap's pitch diameter [mm]: as near as wires tell it; one more below a pitch
of `_FINE`, of which the flanks' allowance is but some micrometres."""

_FINE = 0.3

SPARED = 0.9
"""Share of the torque to stop at that no tap of a set takes, where that can be had: one tooth more
or less in the hole, or a relief that comes out otherwise, makes a difference of 7 %."""

_ROUNDS = 2

LEVEL = 1.05
"""So many times the load of the least pressed tap is level: sizes are turned in whole steps, and
one tooth more or less in the hole makes as much."""

_LEVELLINGS = 8
"""Rounds of levelling; 5 do for threads in four starts."""

APART = 1 / 8
"""Of the pitch diameter's zone, by which an earlier tap lies below it at the least."""


class Way(StrEnum):
    """How a set shares its work."""

    USUAL = "usual"
    EQUAL_TORQUE = "equal-torque"


@dataclass(frozen=True, slots=True)
class SharedTap:
    """One tap of a set.

    Attributes:
        part: that it has.
        thread: of it, in sizes that can be turned and measured.
        chamfer_leads: length of its chamfer in leads.
        rings: marks on its shank.
        share: of the work that it does.
        prediction: what it will do in the hole.
    """

    part: Part
    thread: TapThread
    chamfer_leads: float
    rings: int
    share: float
    prediction: Prediction

    @property
    def pressed(self) -> float:
        """Likely torque in the one to stop at."""
        return self.prediction.load


@dataclass(frozen=True, slots=True)
class Sharing:
    """A set of taps.

    Attributes:
        way: in which the work is shared.
        taps: first to last.
    """

    way: Way
    taps: tuple[SharedTap, ...]

    @property
    def bears(self) -> bool:
        """Whether no tap is to be turned harder than up to its stop."""
        return self.worst <= 1

    @property
    def worst(self) -> float:
        """How hard the hardest pressed tap is."""
        return max(tap.pressed for tap in self.taps)

    @property
    def uneven(self) -> float:
        """The load of the hardest pressed tap in that of the least."""
        return self.worst / min(tap.pressed for tap in self.taps)

    @property
    def easy(self) -> bool:
        """Whether no tap is turned up to its stop even by the most that it may take."""
        return min(tap.prediction.margin for tap in self.taps) >= 1

    @property
    def spares(self) -> bool:
        """Whether no tap is pressed harder than is wanted of its way."""
        return self.worst <= SPARED and (self.way is Way.EQUAL_TORQUE or self.easy)


def sharing_of(design: TapDesign, count: int | None = None) -> Sharing | None:
    """The set that does the work of the tap `design`; None where the tap was not foreseen.

    Two taps are taken where each likely takes at most `SPARED` of the torque that it is to be
    stopped at, else three. The usual shares, which leave the last tap little to cut, so that it
    cuts clean and to size and lasts, go before shares of equal torque, in which each tap is pressed
    as hard as the others: those are taken where one tap might come to its stop by the usual ones.
    Where nothing spares them so much, it is the set whose hardest pressed tap is pressed least, and
    may still bear it.

    Args:
        design: of one tap.
        count: of taps in the set, 2 or 3; None for the fewest that do.

    Source: rule of this program.
    """
    if design.prediction is None:
        return None
    tried: list[Sharing] = []
    for sharing in _sharings(design, COUNTS if count is None else (count,)):
        if sharing.spares:
            return sharing
        tried.append(sharing)
    return min(tried, key=lambda sharing: sharing.worst, default=None)


def _sharings(design: TapDesign, counts: tuple[int, ...]) -> Iterator[Sharing]:
    """Of rising number, the usual one first; one whose taps cannot be turned is left out."""
    for count in counts:
        # A thread so low, or a drill so large, leaves earlier taps nothing to do.
        with suppress(TooMuchError):
            plan = _with_chamfers(design, _usual(design, count))
            yield from _made(design, Way.USUAL, plan)
            yield from _levelled(design, _equalled(design, plan))


def _usual(design: TapDesign, count: int) -> Plan:
    """The usual plan, the flanks of earlier taps so much thinner that their limits lie inside."""
    plan, limits, own = usual_plan(design.tap.thread, count), design.limits, design.tap.thread
    above = max(own.pitch_diameter - limits.pitch_min, 0.0)
    inside = above + APART * (limits.pitch_max - limits.pitch_min)
    return replace(plan, flank_allowance=max(plan.flank_allowance, inside))


def _with_chamfers(design: TapDesign, plan: Plan) -> Plan:
    usual = _usual(design, len(plan.shares))
    usual = replace(usual, shares=plan.shares)
    taps = split(design.tap.thread, design.drill, usual)
    chips = chip_range(design.work.material.group, design.tap.thread.pitch)
    return fitting_leads(design.tap, usual, taps, chips, blind=design.work.blind)


def _equalled(design: TapDesign, plan: Plan) -> Plan:
    """Shares of equal torque; chamfers and shares settle each other in a round or two."""
    tap, exponent = design.tap, design.work.material.kienzle.mc
    point = tap.chamfer.point_diameter
    for _ in range(_ROUNDS):
        shares = equal_torque_shares(tap.thread, design.drill, plan, point, exponent)
        plan = _with_chamfers(design, replace(plan, shares=shares))
    return plan


def _levelled(design: TapDesign, plan: Plan) -> Iterator[Sharing]:
    """The set of equal loads nearest to the plan, as its taps are foreseen.

    Which teeth of a long chamfer cut at once in a shallow hole, and what the printed formulas add,
    no formula of whole chamfers knows: of threads in several starts it loads the last tap twice as
    much as the first. A tap's load goes about as its share, so each share is divided by it.

    Source: rule of this program.
    """
    made: list[Sharing] = []
    with suppress(TooMuchError):
        for _ in range(_LEVELLINGS):
            found = next(_made(design, Way.EQUAL_TORQUE, plan), None)
            if found is None:
                break
            made.append(found)
            if found.uneven <= LEVEL:
                break
            easy = [one / tap.pressed for one, tap in zip(plan.shares, found.taps, strict=True)]
            shares = tuple(one / sum(easy) for one in easy)
            plan = _with_chamfers(design, replace(plan, shares=shares))
    if made:
        yield min(made, key=lambda sharing: sharing.worst)


def _made(design: TapDesign, way: Way, plan: Plan) -> Iterator[Sharing]:
    """The taps of a plan in sizes that can be turned, each foreseen in its hole."""
    whole, count = design.tap.thread, len(plan.shares)
    taps: list[SharedTap] = []
    before: TapThread | None = None
    for one in split(whole, design.drill, plan):
        last = one.number == count
        own = whole if last else _to_turn(whole, one.major, one.pitch_diameter)
        if own.major <= (design.drill if before is None else before.major):
            return
        part = Part(one.number, count, before, whole)
        taps.append(_foreseen(design, part, own, (one.chamfer_leads, one.rings)))
        before = own
    yield Sharing(way, tuple(taps))


def _to_turn(whole: TapThread, major: float, pitch_diameter: float) -> TapThread:
    """The thread of an earlier tap in sizes that can be turned, never larger than those wanted."""
    step = step_for(0.01, 0.02 * whole.pitch)
    digits = PITCH_DIGITS if whole.pitch > _FINE else PITCH_DIGITS + 1
    sunk = min(round(pitch_diameter, digits), whole.pitch_diameter)
    return earlier(whole, round(down(major, step), 6), sunk)


def _foreseen(
    design: TapDesign, part: Part, thread: TapThread, marks: tuple[float, int]
) -> SharedTap:
    leads, rings = marks
    chamfer = cone(thread, design.tap.chamfer.point_diameter, leads * thread.lead)
    tap = replace(design.tap, thread=thread, chamfer=chamfer)
    task = replace(design.task, part=part)
    share = part.share(thread, design.drill)
    return SharedTap(part, thread, leads, rings, share, predicted(tap, task))
