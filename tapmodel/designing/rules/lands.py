"""The rules on lands: wide ones whose flanks are not relieved, and those that were wished."""

import math

from tapmodel.designing.choose.cutters import cutters_to_buy
from tapmodel.designing.choose.flutes import LAND_SHARE
from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
    WARNING,
    Findings,
    at_most,
    between,
    exactly,
    finding,
    less,
    more,
    over,
    under,
)
from tapmodel.designing.limits.lands import most_rubbing
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.findings import Lever
from tapmodel.prediction.rubbing.width import rubbing_width
from tapmodel.values import Values
from tapmodel.words import ReliefKind, ReliefPlace

MET_WITHIN = 0.1
"""A wished share of the spacing is met as nearly as this: stocked cutters come so near."""


def judge(design: TapDesign) -> Findings:
    """The findings on lands that rub over too much of their width, or are not as wished.

    Source: `tapmodel.designing.limits.lands`; how near a wish must be met, rule of this program.
    """
    yield from _rubs(design)
    yield from _wish(design)


def _wish(design: TapDesign) -> Findings:
    """A share of the spacing that none of the cutters on hand leaves."""
    field, count = "flutes.land_share", design.tap.flutes.count
    wanted = design.number(field)
    # The rule's own share stands in every file that `new` writes; nobody wished for it.
    if wanted is None or wanted == LAND_SHARE:
        return
    left = design.figures.land_width * count / (math.pi * design.tap.thread.major)
    low, high = wanted - MET_WITHIN, wanted + MET_WITHIN
    if under(left, low) or over(left, high):
        limit, values = between(low, high, ""), Values(wanted=wanted)
        levers = (exactly(field, round(left, 2)),)
        yield finding(
            Code.LAND_WISH, WARNING, field, left, limit, OWN_RULE, values=values, levers=levers
        )


def _rubs(design: TapDesign) -> Findings:
    major, count = design.tap.thread.major, design.tap.flutes.count
    rubs = rubbing_width(design.tap.relief.thread, major, design.figures.land_width)
    most = most_rubbing(major, count)
    if over(rubs, most):
        field, limit = "flutes.rubbing_width", at_most(most)
        values = Values(share=rubs * count / (math.pi * major))
        levers = (*_more_room(design), *_relieved(design))
        yield finding(
            Code.LAND_RUBS, WARNING, field, rubs, limit, OWN_RULE, values=values, levers=levers
        )


def _more_room(design: TapDesign) -> tuple[Lever, ...]:
    """More flutes, or a larger cutter: any in place of a given one, else one that can be bought.

    The rule has looked at all that are on hand.
    """
    flutes, field = design.tap.flutes, "flutes.cutter_diameter"
    now, chosen = flutes.cutter_diameter, design.choice(field)
    by_count = more("flutes.count", flutes.count)
    if chosen is not None and chosen.given:
        return more(field, now), by_count
    bought = cutters_to_buy(design.numbers("shop.cutters"))
    return by_count, *(exactly(field, cutter) for cutter in bought if cutter > now)


def _relieved(design: TapDesign) -> tuple[Lever, ...]:
    """The flanks relieved too, or behind a narrower margin."""
    relief = design.tap.relief.thread
    if relief.applies_to is not ReliefPlace.THREAD:
        # Without a relief there is nothing that could go to the flanks.
        whole = exactly("relief.thread.applies_to", "thread")
        return () if relief.kind is ReliefKind.CONCENTRIC else (whole,)
    if relief.kind is ReliefKind.CONCENTRIC:
        return (exactly("relief.thread.kind", "con-eccentric"),)
    return (less("relief.thread.margin_angle", relief.margin_angle),)
