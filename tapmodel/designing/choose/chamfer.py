"""The chamfer (lead) of the tap: cone, teeth, chip thickness."""

import math

from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.ledger import Ledger, Rule, by_rule
from tapmodel.designing.choose.steps import down, step_for
from tapmodel.designing.provenance import OWN_RULE, PRACTICE
from tapmodel.spec.conflicts import CHAMFER_LENGTH
from tapmodel.tap.tap import Chamfer, TapThread

FORMS = {"taper": 8.0, "plug": 4.0, "bottoming": 1.5}
"""Pitches of the named forms, inside the usual 7 to 10, 3 to 5 and 1 to 2."""

FORM_RULE = by_rule("form-plug", PRACTICE)
DEEP_RULE = by_rule("form-taper", PRACTICE)
STEEP = 20.0
"""Flank angle [deg] below which a thread counts as deep: trapezoidal, Acme."""


def choose_chamfer(thread: TapThread, hole: TappedHole, ledger: Ledger) -> Chamfer:
    """Settle the chamfer.

    Two of the three settle the third by `point = major - 2*length*tan(angle)`.

    Source: derived here; pitches of the forms common practice.
    """
    angle = ledger.given("chamfer.angle")
    fixed_length = any(ledger.has(field) for field in CHAMFER_LENGTH)
    if angle is not None and fixed_length:
        length = _length(thread, ledger)
        return Chamfer(angle, thread.major - 2 * length * math.tan(math.radians(angle)))
    point = ledger.number("chamfer.point_diameter", ruled_point(hole), _point_rule(hole))
    if angle is not None:
        return Chamfer(angle, point)
    length = _length(thread, ledger)
    return Chamfer(math.degrees(math.atan2(thread.major - point, 2 * length)), point)


def ruled_point(hole: TappedHole) -> float:
    """Point diameter by rule: a tenth of a pitch under the drill, down to the next step [mm].

    The step is 0.05 mm, finer below pitch 0.5, so that it takes no teeth of the lead away.

    Source: derived here.
    """
    return down(hole.drill - 0.1 * hole.pitch, _point_step(hole))


def _point_step(hole: TappedHole) -> float:
    return step_for(0.05, 0.1 * hole.pitch)


def _point_rule(hole: TappedHole) -> Rule:
    return by_rule("point-under-drill", OWN_RULE, drill=hole.drill, step=_point_step(hole))


def _length(thread: TapThread, ledger: Ledger) -> float:
    length = ledger.given("chamfer.length")
    if length is not None:
        return length
    pitches = ledger.given("chamfer.pitches")
    if pitches is None:
        form, rule = ("taper", DEEP_RULE) if thread.flank_angle < STEEP else ("plug", FORM_RULE)
        pitches = FORMS[ledger.word("chamfer.form", form, rule)]
    return pitches * thread.pitch
