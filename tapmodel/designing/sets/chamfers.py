"""How long the chamfers of a set are: as usual, unless their chips are too thick or too thin."""

import math
from dataclasses import replace

from tapmodel.designing.choose.chamfer import LONGEST, SHORTEST, cone
from tapmodel.designing.limits.chips import ChipRange
from tapmodel.designing.rules.chamfer import least_angle
from tapmodel.prediction.sets import Plan, TapOfSet
from tapmodel.shape.figures import chip_thickness
from tapmodel.tap.tap import Tap


def fitting_leads(
    tap: Tap, plan: Plan, taps: tuple[TapOfSet, ...], wanted: ChipRange, *, blind: bool
) -> Plan:
    """The plan with chamfers of whole leads that cut chips neither too thick nor too thin.

    The last tap of a blind hole keeps its short one, which reaches the bottom.

    Args:
        tap: the one whose work is shared, for the diameter of its point and its flutes.
        plan: with the usual chamfers.
        taps: of that plan.
        wanted: chips of a tooth.
        blind: whether the hole has a bottom.

    Source: rule of this program, with the limits of chips of any tap.
    """
    leads = [_fitting(tap, one, wanted) for one in taps]
    if blind:
        leads[-1] = plan.chamfer_leads[-1]
    return replace(plan, chamfer_leads=tuple(leads))


def _fitting(tap: Tap, one: TapOfSet, wanted: ChipRange) -> float:
    thread, point = replace(tap.thread, major=one.major), tap.chamfer.point_diameter

    def chip(leads: float) -> float:
        chamfer = cone(thread, point, leads * thread.lead)
        return chip_thickness(thread, chamfer, tap.flutes.count)

    def steep(leads: float) -> bool:
        return cone(thread, point, leads * thread.lead).angle >= least_angle(thread.starts)

    usual = math.ceil(one.chamfer_leads)
    if chip(usual) > wanted.most:
        longer = range(usual + 1, LONGEST + 1)
        return float(next((leads for leads in longer if chip(leads) <= wanted.most), LONGEST))
    shorter = range(usual, SHORTEST - 1, -1)
    return float(next((n for n in shorter if chip(n) >= wanted.least and steep(n)), SHORTEST))
