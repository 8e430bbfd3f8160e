"""The chamfer (lead) of the tap: cone, teeth, chip thickness."""

import math

from tapmodel.design.choose.hole import TappedHole
from tapmodel.design.choose.ledger import Ledger, Rule
from tapmodel.design.choose.steps import down, step_for
from tapmodel.design.provenance import OWN_RULE, PRACTICE
from tapmodel.shape.flute_section import FluteSection, face_angle
from tapmodel.spec.conflicts import CHAMFER_LENGTH
from tapmodel.tap.design import Chamfer, TapThread

FORMS = {"taper": 8.0, "plug": 4.0, "bottoming": 1.5}
"""Pitches of the named forms, inside the usual 7 to 10, 3 to 5 and 1 to 2."""

FORM_RULE = Rule("plug is the form for through and blind holes alike", PRACTICE, "")
DEEP_RULE = Rule("taper: a deep thread of steep flanks must be cut by many teeth", PRACTICE, "")
STEEP = 20.0
"""Flank angle [deg] below which a thread counts as deep: trapezoidal, Acme."""


def chamfer_cone(thread: TapThread, hole: TappedHole, ledger: Ledger) -> tuple[float, float, float]:
    """Angle [deg], length [mm] and point diameter [mm] of the chamfer.

    Two of the three settle the third by `point = major - 2*length*tan(angle)`.

    Source: derived here; pitches of the forms common practice.
    """
    angle = ledger.given("chamfer.angle", "deg")
    fixed_length = any(ledger.has(field) for field in CHAMFER_LENGTH)
    if angle is not None and fixed_length:
        length = _length(thread, ledger)
        return angle, length, thread.major - 2 * length * math.tan(math.radians(angle))
    point = ledger.number("chamfer.point_diameter", ruled_point(hole), _point_rule(hole))
    if angle is not None:
        length = (thread.major - point) / (2 * math.tan(math.radians(angle)))
        return angle, length, point
    length = _length(thread, ledger)
    return math.degrees(math.atan2(thread.major - point, 2 * length)), length, point


def ruled_point(hole: TappedHole) -> float:
    """Point diameter by rule: a tenth of a pitch under the drill, down to the next step [mm].

    The step is 0.05 mm, finer below pitch 0.5, so that it takes no teeth of the lead away.

    Source: derived here.
    """
    return down(hole.drill - 0.1 * hole.pitch, _point_step(hole))


def _point_step(hole: TappedHole) -> float:
    return step_for(0.05, 0.1 * hole.pitch)


def _point_rule(hole: TappedHole) -> Rule:
    step = _point_step(hole)
    return Rule(
        f"0.1 P under the drill of {hole.drill:g} mm, down to the next {step:g} mm, so that it "
        "starts",
        OWN_RULE,
    )


def _length(thread: TapThread, ledger: Ledger) -> float:
    length = ledger.given("chamfer.length")
    if length is not None:
        return length
    pitches = ledger.given("chamfer.pitches", "pitches")
    if pitches is None:
        form, rule = ("taper", DEEP_RULE) if thread.flank_angle < STEEP else ("plug", FORM_RULE)
        pitches = FORMS[ledger.word("chamfer.form", form, rule)]
    return pitches * thread.pitch


def chamfer_record(
    cone: tuple[float, float, float], thread: TapThread, section: FluteSection, count: int
) -> Chamfer:
    """The record, with the teeth that cut and the thickness of their chips.

    A tooth cuts in the chamfer when the middle of its crest, at the cutting edge, lies between
    the front and the end of the cone. Chip thickness is the feed per land, `lead/count`, square
    to the cone: times sin(angle).

    Args:
        cone: angle [deg], length [mm], point diameter [mm].
        thread: the tap's profile.
        section: of its flutes.
        count: number of flutes.

    Source: derived here.
    """
    angle, length, point = cone
    return Chamfer(
        angle=angle,
        length=length,
        pitches=length / thread.pitch,
        point_diameter=point,
        teeth=sum(_teeth_on_land(length, thread, section, j, count) for j in range(count)),
        chip_thickness=thread.lead / count * math.sin(math.radians(angle)),
    )


def _teeth_on_land(
    length: float, thread: TapThread, section: FluteSection, land: int, count: int
) -> int:
    turn = 360 * land / count + face_angle(section, thread.major / 2)
    first = (thread.first_z + thread.lead * turn / 360) % thread.pitch
    return max(0, math.ceil((length - first) / thread.pitch))
