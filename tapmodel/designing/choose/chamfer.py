"""The chamfer (lead) of the tap: cone, teeth, chip thickness."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.ledger import Ledger, Rule, by_rule
from tapmodel.designing.choose.steps import down, step_for
from tapmodel.designing.limits.chips import ChipRange
from tapmodel.designing.provenance import OWN_RULE, PRACTICE
from tapmodel.shape.figures import chip_thickness
from tapmodel.spec.conflicts import CHAMFER_LENGTH
from tapmodel.tap.tap import Chamfer, TapThread

FORMS = {"taper": 8.0, "plug": 4.0, "bottoming": 1.5}
"""Pitches of the named forms, inside the usual 7 to 10, 3 to 5 and 1 to 2.

With several starts they count leads: each thread has teeth of its own, and only in so many turns
of the tap do as many of them cut it.
"""
LONGEST, SHORTEST = 16, 2
"""Pitches (leads) that a rule goes to for thinner or thicker chips; long nut taps have as many."""

LONGEST_IN_DIAMETERS = 5.0
"""A chamfer longer than that is no longer chosen by rule: the tap would wind up."""

FORM_RULE = by_rule("form-plug", PRACTICE)
DEEP_RULE = by_rule("form-taper", PRACTICE)


@dataclass(frozen=True, slots=True)
class Teeth:
    """What the chamfer is cut into.

    Attributes:
        count: of flutes, and so of teeth in a turn.
        chips: that each should cut.
    """

    count: int
    chips: ChipRange


Chip = Callable[[float], float]
"""Chip of a tooth [mm] by the length of the chamfer in leads."""

STEEP = 20.0
"""Flank angle [deg] below which a thread counts as deep: trapezoidal, Acme."""


def choose_chamfer(thread: TapThread, hole: TappedHole, teeth: Teeth, ledger: Ledger) -> Chamfer:
    """Settle the chamfer of a tap with so many `teeth` that cut such chips.

    Two of the three settle the third by `point = major - 2*length*tan(angle)`.

    Source: derived here; pitches of the forms common practice.
    """
    angle = ledger.given("chamfer.angle")
    fixed_length = any(ledger.has(field) for field in CHAMFER_LENGTH)
    if angle is not None and fixed_length:
        length = _given_length(thread, ledger) or 0.0
        return Chamfer(angle, thread.major - 2 * length * math.tan(math.radians(angle)))
    point = ledger.number("chamfer.point_diameter", ruled_point(hole), _point_rule(hole))
    if angle is not None:
        return Chamfer(angle, point)
    length = _given_length(thread, ledger) or _ruled_length(thread, point, teeth, ledger)
    return cone(thread, point, length)


def cone(thread: TapThread, point: float, length: float) -> Chamfer:
    """The chamfer between its point and the crests, all [mm]."""
    return Chamfer(math.degrees(math.atan2(thread.major - point, 2 * length)), point)


def ruled_point(hole: TappedHole) -> float:
    """Point diameter by rule: a tenth of a pitch under the drill, down to the next step [mm].

    The step is 0.05 mm, finer below pitch 0.5, so that it takes no teeth of the lead away.

    Source: derived here.
    """
    # A drill as large as the thread is refused; the cone rises all the same until it is mended.
    return down(min(hole.drill, hole.diameter) - 0.1 * hole.pitch, _point_step(hole))


def _point_step(hole: TappedHole) -> float:
    return step_for(0.05, 0.1 * hole.pitch)


def _point_rule(hole: TappedHole) -> Rule:
    return by_rule("point-under-drill", OWN_RULE, drill=hole.drill, step=_point_step(hole))


def _given_length(thread: TapThread, ledger: Ledger) -> float | None:
    length, leads = ledger.given("chamfer.length"), ledger.given("chamfer.pitches")
    if leads is None and ledger.has("chamfer.form"):
        leads = FORMS[ledger.word("chamfer.form", "plug", FORM_RULE)]
    return length if leads is None else leads * thread.lead


def _ruled_length(thread: TapThread, point: float, teeth: Teeth, ledger: Ledger) -> float:
    """The usual form, or more or fewer whole leads where its chips would be too thick or thin."""

    def chip(leads: float) -> float:
        return chip_thickness(thread, cone(thread, point, leads * thread.lead), teeth.count)

    # Several starts make so long a chamfer that the plug form of a deep thread has many teeth too.
    deep = thread.flank_angle < STEEP and thread.starts == 1
    form, form_rule = ("taper", DEEP_RULE) if deep else ("plug", FORM_RULE)
    usual = FORMS[form]
    wanted = teeth.chips
    longer, shorter = _longer(thread, chip, usual, wanted.most), _shorter(chip, usual, wanted.least)
    if longer is not None:
        told = {"usual": usual, "chip": chip(usual), "most": wanted.most}
        rule = by_rule("leads-against-thick-chips", OWN_RULE, form=form, **told)
        return ledger.number("chamfer.pitches", longer, rule) * thread.lead
    if shorter is not None:
        told = {"usual": usual, "chip": chip(usual)}
        rule = by_rule("leads-against-thin-chips", OWN_RULE, form=form, **told)
        return ledger.number("chamfer.pitches", shorter, rule) * thread.lead
    return FORMS[ledger.word("chamfer.form", form, form_rule)] * thread.lead


def _longer(thread: TapThread, chip: Chip, usual: float, thickest: float) -> float | None:
    """The fewest whole leads with thinner chips, or the most there are; None for the usual."""
    most = min(LONGEST, math.floor(LONGEST_IN_DIAMETERS * thread.major / thread.lead))
    more = range(int(usual) + 1, most + 1)
    if chip(usual) <= thickest or not more:
        return None
    return float(next((leads for leads in more if chip(leads) <= thickest), more[-1]))


def _shorter(chip: Chip, usual: float, thinnest: float) -> float | None:
    """The most whole leads with thicker chips; None for the usual, or where none has them."""
    if chip(usual) >= thinnest:
        return None
    fewer = range(int(usual) - 1, SHORTEST - 1, -1)
    return next((float(leads) for leads in fewer if chip(leads) >= thinnest), None)
