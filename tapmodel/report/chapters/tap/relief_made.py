"""Reliefs as the shop makes them: what is set and read, how far a wheel comes, what they become."""

import math
from collections.abc import Iterator, Sequence
from functools import partial
from itertools import pairwise

import numpy as np

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import (
    Angle,
    Area,
    Block,
    Length,
    Paragraphs,
    Quantity,
    Row,
    Rows,
    Table,
    Telling,
    Told,
    Words,
    small_length,
)
from tapmodel.report.words import relieving as words
from tapmodel.shop.relief.made import flat_departs
from tapmodel.shop.relief.plan import Plan, edge_angle_made, heel_made, plans_of
from tapmodel.words import ReliefKind, ReliefPlace, ReliefWay

OF_THE_SHOP = ("shop.relief_by", "shop.wheels", "shop.offset_step", "shop.indicator_step")

FEEDS = 6
"""Lines of the table of feeds, the first among them."""


def made_in_short(design: TapDesign) -> list[Telling]:
    """A sentence for each relief that drops where the job says what it is made with, or it binds.

    Without that most sheets would be a page longer for what the route tells.
    """
    plans = plans_of(design)
    named = any(design.choice(field) is not None for field in OF_THE_SHOP)
    told = named or any(one.binds for plan in plans for one in plan.touching)
    return [partial(words.in_short, plan) for plan in plans] if told else []


def making(design: TapDesign) -> tuple[Block, ...]:
    """Everything that whoever makes the reliefs sets and reads."""
    plans = plans_of(design)
    if not plans:
        return ()
    blocks = [block for plan in plans for block in _one(plan)]
    return (*blocks, Paragraphs(tuple(_sentences(plans))))


def _one(plan: Plan) -> list[Block]:
    place, way = words.place_of(plan), plan.shop.way
    rows = (*_SETTINGS[way](plan), *_wheels(plan), *_becomes(plan))
    blocks: list[Block] = [Rows(rows, f"{place.capitalize()}, {words.BY[way]}")]
    if way is ReliefWay.WHEEL:
        blocks.append(_feeds(plan))
    blocks.append(_readings(plan))
    return blocks


def _on_centres(plan: Plan) -> tuple[Row, ...]:
    made = plan.centres.relief
    return (
        Row(partial(words.offset_text, plan), Length(made.arc_offset)),
        Row(f"swing, from {words.from_text(plan)} to the heel", Angle(plan.span.swing)),
    )


def _past_a_rest(plan: Plan) -> tuple[Row, ...]:
    rest = plan.rest
    return (
        Row("wheel taken", Length(plan.wheel, 1, inch_digits=3)),
        Row("its centre above the axis", Length(rest.height, 2)),
        Row("or the face of a cup wheel, tilted by", Angle(plan.span.lean)),
        Row("turn from pass to pass", Angle(rest.step)),
        Row("passes over a land", Words(str(len(plan.passes.turns)))),
    )


def _by_hand(plan: Plan) -> tuple[Row, ...]:
    count = plan.flats.count
    alone = any(one.binds for one in plan.one_flat)
    rows = [
        Row("flats, side by side", Words(str(count))),
        Row("each lies below the arc by, at most", small_length(flat_departs(plan.span, count))),
        Row("heel, in divisions of the indicator", Told(partial(words.division_text, plan))),
        Row("section to take off each land", Area(plan.taken, 2)),
    ]
    if count > 1:
        departs = small_length(flat_departs(plan.span))
        rows += [
            Row("one flat alone would lie below it by", departs),
            Row("one flat alone", Words("binds" if alone else "clears")),
        ]
    return tuple(rows)


_SETTINGS = {
    ReliefWay.CENTRES: _on_centres,
    ReliefWay.WHEEL: _past_a_rest,
    ReliefWay.FILE: _by_hand,
}


def _wheels(plan: Plan) -> Iterator[Row]:
    largest = plan.reach.largest
    free = Length(largest, 1, inch_digits=3) if math.isfinite(largest) else Words("any size")
    yield Row("wheel that is free up to the heel", free)
    if plan.shop.way is ReliefWay.FILE:
        return
    for size in plan.shop.wheels:
        if size <= largest:
            clear = plan.reach.clearance(size)
            yield Row(partial(words.clear_text, size), Length(clear, 2))
            continue
        end = plan.reach.goes_to(size)
        if end is None:
            yield Row(partial(words.nowhere_text, size), Words("nowhere free"))
            continue
        left = math.radians(plan.span.heel - end) * plan.span.major / 2
        yield Row(partial(words.stops_text, size), Length(left, 2))


def _becomes(plan: Plan) -> Iterator[Row]:
    so = words.AS_MADE[plan.shop.way]
    if plan.span.relief.kind is ReliefKind.ECCENTRIC:
        yield Row(f"{so}: relief angle at the edge", Angle(edge_angle_made(plan.made, plan.span)))
    yield Row(f"{so}: drop at the heel", small_length(heel_made(plan)), measured=True)
    for one in plan.touching:
        yield Row(f"{so}: {one.name} rubs behind the edge", Length(one.made.rubbing_length, 2))
        yield Row(f"{so}: {one.name} binds", Words("yes" if one.binds else "no"))


def _readings(plan: Plan) -> Table:
    """What an indicator reads when the tap is turned about its own axis."""
    filed = plan.shop.way is ReliefWay.FILE
    phi = plan.flats.corners if filed else plan.stations
    if filed and plan.span.begin > 0:
        phi = np.concatenate([[0.0], phi])
    arc, made = plan.span.drops(phi), plan.made.drop(phi)
    since = np.diff(made, prepend=0.0)
    digits = small_length(float(arc[-1])).digits
    lines = tuple(
        (
            Angle(float(at), 1),
            Length(math.radians(float(at)) * plan.span.major / 2, 2),
            *(Length(float(fall), digits) for fall in falls),
        )
        for at, *falls in zip(phi, arc, made, since, strict=True)
    )
    so = words.AS_MADE[plan.shop.way]
    head = ("behind the edge", "along the arc", "arc drops", so, "from the last")
    what = "corners of its flats" if filed else "read by an indicator"
    return Table(head, lines, f"{words.place_of(plan).capitalize()}, {what}")


def _feeds(plan: Plan) -> Table:
    """Turn of the tap and feed of the wheel, and how much of it goes on each degree."""
    turns = [float(turn) for turn in plan.passes.turns]
    feeds = [plan.rest.infeed(turn) for turn in turns]
    kept = sorted({round(float(n)) for n in np.linspace(0, len(turns) - 1, FEEDS)})
    each: list[Quantity] = [Words("–")]
    each += [
        Length((feeds[now] - feeds[last]) / (turns[now] - turns[last]), 4)
        for last, now in pairwise(kept)
    ]
    lines = tuple(
        (Angle(turns[now]), Length(feeds[now]), Length(float(plan.passes.infeeds[now])), rate)
        for now, rate in zip(kept, each, strict=True)
    )
    head = ("turned on by", "infeed in all", "as set", "for each degree")
    return Table(head, lines, f"{words.place_of(plan).capitalize()}, feed of the wheel")


def _sentences(plans: Sequence[Plan]) -> Iterator[str | Telling]:
    first = plans[0]
    way = first.shop.way
    yield words.work_of(first)
    if way is ReliefWay.WHEEL and any(plan.span.begin > 0 for plan in plans):
        yield words.WHEEL_MARGIN
    if way is ReliefWay.FILE:
        yield words.FLATS
    if any(words.whole_thread(plan) for plan in plans):
        yield words.FLANKS_TOO
    yield words.CHECK
    if any(plan.span.relief.applies_to is ReliefPlace.CHAMFER for plan in plans):
        yield words.plunger_text(math.cos(math.radians(first.design.tap.chamfer.angle)))
    if any(one.binds for plan in plans for one in plan.touching):
        yield words.BINDS
    for plan in plans:
        if min(plan.shop.wheels) > plan.reach.largest:
            yield partial(words.none_free, plan)
    if way is not ReliefWay.FILE:
        yield f"{words.LIMITS} {words.USUAL}" if first.shop.usual_wheels else words.LIMITS
