"""What each measured size means: in limits, more to take, past its limits but of use, or scrap."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from tapmodel.designing.limits.flutes import LEAST_CORE_SHARE
from tapmodel.designing.record import NotMade, TapDesign
from tapmodel.prediction.prediction import Prediction, predicted
from tapmodel.shop.measured.made import centre_radius, tap_of
from tapmodel.shop.measured.zones import Wanted, wanted
from tapmodel.shop.wires.reading import Reading, Verdict, scrap_below
from tapmodel.spec.measured.sizes import Size
from tapmodel.values import NO_VALUES, Values
from tapmodel.words import ReliefKind


class Standing(StrEnum):
    """What a size means, in the words of the record."""

    IN_LIMITS = "in limits"
    TO_TAKE = "more to take"
    OF_USE = "past its limits, of use"
    SCRAP = "scrap"
    NO_LIMITS = "no limits to judge by"


class Way(StrEnum):
    """How what is left is taken."""

    SLIDE = "slide"
    """Infeed of the tool towards the axis, or along the compound."""
    RADIUS = "radius"
    """Turned or ground off the radius."""
    LENGTH = "length"
    """Faced off."""
    FLAT = "flat"
    """Off each of two flats."""
    CUTTER = "cutter"
    """The cutter of the flutes goes deeper along its axis."""
    HEEL = "heel"
    """Ground off at the heel of each land."""


class Why(StrEnum):
    """What else there is to say of a size."""

    WORN = "worn"
    """Below the tap's zone: `wear` is left to the hole's least size."""
    UNDER_HOLE = "under-hole"
    """GO would not enter: below `least`, of the hole."""
    ROUGH = "rough"
    """A tap that another follows leaves that more to take."""
    BEARS = "bears"
    """By this alone the tap bears `bears`, the design `designed` [N·m]; it takes `takes` about."""
    TOO_WEAK = "too-weak"
    """Likewise, and that is less than it takes."""
    NO_CORE = "no-core"
    """Below `least`, under which no core drives a tap."""
    BINDS = "binds"
    """The heel stands proud of what the edge cut, by `proud`."""
    MARGIN = "margin"
    """Likewise, behind a margin that is wider than `margin` [deg]; 0 where no margin clears."""
    CLOSE = "close"
    """The heel clears by `clear`, less than the reserve."""
    NOT_ENTER = "not-enter"
    """The point does not enter the hole, `hole`."""
    NOT_BACK = "not-back"
    """What is off cannot be put back; the tap works all the same."""
    LOOSE = "loose"
    """The wrench has play on it."""


@dataclass(frozen=True, slots=True)
class Judgement:
    """What a measured size means; lengths [mm], angles [deg], hardness [HRC].

    Attributes:
        size: that was measured.
        value: of it.
        aim: as designed.
        low, high: limits, None where there is none.
        standing: of the value.
        way: in which what is left is taken; None where nothing is, or nothing can be.
        take: on that way down to the aim, 0 once it is reached; None without a way.
        take_least, take_most: down to the upper and to the lower limit, likewise; None where there
            is no such limit.
        why: what else there is to say.
        values: numbers of that.
        reading: of a pitch diameter, measured itself or over wires.
    """

    size: Size
    value: float
    aim: float
    low: float | None
    high: float | None
    standing: Standing
    way: Way | None = None
    take: float | None = None
    take_least: float | None = None
    take_most: float | None = None
    why: Why | None = None
    values: Values = NO_VALUES
    reading: Reading | None = None


NOISE = 1e-9
"""Binary noise of numbers that are typed [mm, deg]: a value on its limit is in limits."""

_WAYS = {
    Size.OVERALL_LENGTH: (Way.LENGTH, 1.0),
    Size.SHANK: (Way.RADIUS, 0.5),
    Size.MAJOR: (Way.RADIUS, 0.5),
    Size.THREAD_LENGTH: (None, 0.0),
    Size.NECK: (Way.RADIUS, 0.5),
    Size.MINOR: (Way.RADIUS, 0.5),
    Size.POINT_DIAMETER: (Way.RADIUS, 0.5),
    Size.SQUARE: (Way.FLAT, 0.5),
    Size.SQUARE_LENGTH: (None, 0.0),
}
"""How a size that is too large comes down, and the share of its excess that is taken."""


def judgements(
    design: TapDesign,
    made: TapDesign | NotMade | None,
    sizes: dict[Size, float],
    reading: Reading | None,
) -> Iterator[Judgement]:
    """The meaning of each size, in the order of the work.

    Args:
        design: of the tap.
        made: the tap as it is, for what hangs on all sizes together.
        sizes: that were measured, but those that `reading` tells of.
        reading: of the pitch diameter.

    Source: limits as `wanted`; the rest is derived here.
    """
    of_tap = wanted(design)
    as_made = made if isinstance(made, TapDesign) else None
    for size in Size:
        if size in {Size.OVER_WIRES, Size.PITCH_DIAMETER}:
            if reading is not None and size is Size.PITCH_DIAMETER:
                yield _pitch_diameter(design, of_tap[size], reading)
            continue
        if size not in sizes or size not in of_tap:
            continue
        yield _judged(size, sizes[size], of_tap[size], design, as_made)


def _judged(
    size: Size, value: float, to_be: Wanted, design: TapDesign, made: TapDesign | None
) -> Judgement:
    match size:
        case Size.MAJOR:
            return _major(_plain(size, value, to_be), design)
        case Size.POINT_DIAMETER:
            return _point(_plain(size, value, to_be), design)
        case Size.CORE:
            return _core(value, to_be, design, made)
        case Size.HEEL_DROP:
            return _chamfer_drop(value, to_be, made)
        case _:
            plain = _plain(size, value, to_be)
    small = plain.standing is Standing.OF_USE and size in _CARRY
    return _bears(plain, design, made) if small or size is Size.HARDNESS else plain


_CARRY = frozenset({Size.SHANK, Size.NECK, Size.SQUARE})
"""Sizes of sections that bear the torque."""


def _plain(size: Size, value: float, to_be: Wanted) -> Judgement:
    """By its limits alone: what is above them can be taken off, what is below stays off."""
    standing = _standing(value, to_be)
    way, share = _WAYS.get(size, (None, 0.0))
    taken = (None, None, None) if way is None else _taken(value, to_be, share)
    why = None
    if standing is Standing.OF_USE:
        why = Why.LOOSE if size is Size.SQUARE else Why.NOT_BACK
    return Judgement(size, value, to_be.aim, to_be.low, to_be.high, standing, way, *taken, why)


def _standing(value: float, to_be: Wanted) -> Standing:
    if to_be.low is None and to_be.high is None:
        return Standing.NO_LIMITS
    if to_be.high is not None and value > to_be.high + NOISE:
        return Standing.TO_TAKE
    below = to_be.low is not None and value < to_be.low - NOISE
    return Standing.OF_USE if below else Standing.IN_LIMITS


def _taken(value: float, to_be: Wanted, share: float) -> tuple[float, float | None, float | None]:
    """Down to the aim, to the upper and to the lower limit; never less than nothing."""

    def down(to: float) -> float:
        return max(value - to, 0.0) * share

    low, high = to_be.low, to_be.high
    least = None if high is None else down(high)
    return down(to_be.aim), least, None if low is None else down(low)


def _pitch_diameter(design: TapDesign, to_be: Wanted, reading: Reading) -> Judgement:
    """As `tapmodel wires` reads it; a tap that another follows leaves that more to take."""
    standing, why, values = _ON_WIRES[reading.verdict], None, NO_VALUES
    stops = reading.verdict in {Verdict.TOO_SMALL, Verdict.BELOW_ZONE}
    if stops and design.roughs:
        standing, why = Standing.OF_USE, Why.ROUGH
    elif reading.verdict is Verdict.BELOW_ZONE:
        why, values = Why.WORN, Values(wear=reading.wear_left or 0.0)
    elif reading.verdict is Verdict.TOO_SMALL:
        why, values = Why.UNDER_HOLE, Values(least=scrap_below(design.hole))
    return Judgement(
        size=Size.PITCH_DIAMETER,
        value=reading.pitch_diameter,
        aim=to_be.aim,
        low=to_be.low,
        high=to_be.high,
        standing=standing,
        way=Way.SLIDE,
        take=reading.infeed,
        take_least=reading.infeed_least,
        take_most=reading.infeed_most,
        why=why,
        values=values,
        reading=reading,
    )


_ON_WIRES = {
    Verdict.TOO_SMALL: Standing.SCRAP,
    Verdict.BELOW_ZONE: Standing.OF_USE,
    Verdict.IN_LIMITS: Standing.IN_LIMITS,
    Verdict.TOO_LARGE: Standing.TO_TAKE,
    Verdict.NO_LIMITS: Standing.NO_LIMITS,
}


def _major(plain: Judgement, design: TapDesign) -> Judgement:
    """Below the tap's least it cuts a hole that GO still enters, or none that it does."""
    if plain.standing is not Standing.OF_USE:
        return plain
    if design.roughs:
        return _with(plain, Standing.OF_USE, Why.ROUGH)
    least = design.hole.major_min
    if plain.value < least - NOISE:
        return _with(plain, Standing.SCRAP, Why.UNDER_HOLE, least=least)
    return _with(plain, Standing.OF_USE, Why.WORN, wear=plain.value - least)


def _point(plain: Judgement, design: TapDesign) -> Judgement:
    if plain.standing is not Standing.TO_TAKE:
        return plain
    return _with(plain, Standing.TO_TAKE, Why.NOT_ENTER, hole=design.smallest_hole)


def _core(value: float, to_be: Wanted, design: TapDesign, made: TapDesign | None) -> Judgement:
    """What is left is the way of the cutter, which stands beside the axis and not over it."""
    plain = _plain(Size.CORE, value, to_be)
    if plain.standing is Standing.OF_USE:
        least = LEAST_CORE_SHARE * design.tap.thread.major
        if value < least - NOISE:
            return _with(plain, Standing.SCRAP, Why.NO_CORE, least=least)
        return _bears(plain, design, made)

    def deeper(core: float | None) -> float | None:
        if core is None:
            return None
        now, then = (centre_radius(design.tap.flutes, size) for size in (value, core))
        return None if now is None or then is None else max(now - then, 0.0)

    aim, high, low = map(deeper, (to_be.aim, to_be.high, to_be.low))
    return replace(plain, way=Way.CUTTER, take=aim, take_least=high, take_most=low)


def _bears(plain: Judgement, design: TapDesign, made: TapDesign | None) -> Judgement:
    """What the tap would bear if this size alone were other than designed."""
    before, now = design.prediction, made and _alone(design, plain.size, plain.value)
    if before is None or now is None:
        return plain
    bears, designed = now.strength.bears, before.strength.bears
    if math.isclose(bears, designed, rel_tol=1e-6):
        return plain
    weak = now.load > 1 >= before.load
    standing = Standing.SCRAP if weak else plain.standing
    why, takes = Why.TOO_WEAK if weak else Why.BEARS, now.torque.band.likely
    return _with(plain, standing, why, bears=bears, designed=designed, takes=takes)


def _alone(design: TapDesign, size: Size, value: float) -> Prediction | None:
    """The tap in which this size alone is other than designed, foreseen; None where it is none."""
    task = design.task
    if size is Size.HARDNESS:
        steel = replace(task.steel, hardness=value, temper=0.0)
        return predicted(design.tap, replace(task, steel=steel))
    try:
        return predicted(tap_of(design.tap, {size: value}), task)
    except ValueError:
        return None


def _chamfer_drop(value: float, to_be: Wanted, made: TapDesign | None) -> Judgement:
    """Enough is what lets the heel clear; that hangs on the whole tap as it is."""
    plain = _plain(Size.HEEL_DROP, value, to_be)
    foreseen = made.prediction if made else None
    if foreseen is None:
        return plain
    contact, cure = foreseen.rubbing.chamfer, foreseen.rubbing.cure
    eccentric = foreseen.tap.relief.chamfer.kind is not ReliefKind.CON_ECCENTRIC
    safe, least = (cure.safe_heel_drop, cure.heel_drop) if eccentric else (None, None)
    more = 0.0 if safe is None else max(safe - value, 0.0)
    short = more > NOISE
    why = Why.BINDS if contact.binds else Why.CLOSE if short else None
    margin = cure.margin_angle
    if contact.binds and not eccentric:
        why = Why.MARGIN
    clear, proud = contact.heel_clearance_um / 1000, -contact.clearance_min_um / 1000
    return Judgement(
        size=Size.HEEL_DROP,
        value=value,
        aim=to_be.aim,
        low=least,
        high=None,
        standing=Standing.TO_TAKE if contact.binds else Standing.IN_LIMITS,
        way=Way.HEEL if short else None,
        take=more if short else None,
        take_least=max(least - value, 0.0) if short and least is not None else None,
        why=why,
        values=Values(clear=clear, proud=max(proud, 0.0), margin=margin or 0.0)
        if why
        else NO_VALUES,
    )


def _with(plain: Judgement, standing: Standing, why: Why, **values: float) -> Judgement:
    """The same with another standing, and why."""
    return replace(plain, standing=standing, why=why, values=Values(**values))
