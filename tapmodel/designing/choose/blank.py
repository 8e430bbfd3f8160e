"""Choosing the blank: lengths, neck, shank, square, centres, and where the flutes stop."""

import math
from dataclasses import dataclass, replace

from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.ledger import Ledger, Rule, by_rule
from tapmodel.designing.choose.shank import choose_shank, listed_blank, square_of
from tapmodel.designing.choose.steps import down, step_for, up
from tapmodel.designing.limits.turns import MOST_TURNS, threaded
from tapmodel.designing.provenance import OWN_RULE, PRACTICE
from tapmodel.shape.back_taper import thinner
from tapmodel.shape.flute_section import FluteSection
from tapmodel.standards.blanks import BlankRow
from tapmodel.tap.tap import Blank, TapThread

SHOULDER_ANGLE = 30.0
FULL_PITCHES = 8
"""Pitches of full thread behind the chamfer that a rule leaves at least."""

SMALLEST_SHANK_WITH_CENTRE = 6.0

SMALLEST_WITH_FRONT_CENTRE = 10.0
"""Nominal diameter [mm] from which on a rule leaves a centre in front: the web of a thinner tap has
no room for one that carries, and is held by a point that is parted off last."""

FRONT_CENTRE_SHARE = 0.5
"""Rim of the front centre as a share of the web, or of the point where that is thinner."""

LEAST_FRONT_CENTRE = 1.0
"""No smaller front centre by rule [mm]: the smallest common centre drill has a pilot of 0.5 mm."""

SLIMMER = 0.05
"""The neck lies 0.1 mm under the root, but no more than this share of it."""

NECK_STEP = 0.25
"""Necks end on whole steps of 0.5 mm, but none longer than this share of the diameter."""

SHOULDER_RULE = by_rule("shoulder-angle", PRACTICE, angle=SHOULDER_ANGLE)
FULL_DEPTH_RULE = by_rule("full-depth-behind-thread", OWN_RULE)
REAR_CHAMFER_RULE = by_rule("rear-chamfer-of-shank", PRACTICE)
FRONT_CENTRE_RULE = by_rule("front-centre-of-web", PRACTICE, share=FRONT_CENTRE_SHARE)
NO_FRONT_CENTRE_RULE = by_rule("front-centre-none", PRACTICE, least=SMALLEST_WITH_FRONT_CENTRE)
REAR_CENTRE_RULE = by_rule("rear-centre-of-shank", PRACTICE, least=SMALLEST_SHANK_WITH_CENTRE)


@dataclass(frozen=True, slots=True)
class ChosenBlank:
    """The blank, and where the flutes end at full depth [mm]."""

    blank: Blank
    full_depth_length: float


@dataclass(frozen=True, slots=True)
class _Lengths:
    thread: float
    full_depth: float
    neck_diameter: float
    neck: float


@dataclass(frozen=True, slots=True)
class Front:
    """What the blank must suit at its front [mm]: the chamfer's length and point, the flutes."""

    chamfer_length: float
    point_diameter: float
    section: FluteSection


def choose_blank(thread: TapThread, front: Front, hole: TappedHole, ledger: Ledger) -> ChosenBlank:
    """Settle the blank of a tap for the hole.

    Source: the lists of blanks by `tapmodel.standards.blanks` and `inch_blanks`; the rest as noted
    with each choice.
    """
    row = listed_blank(hole)
    shank = choose_shank(row, hole, front.section.core_diameter, ledger)
    lengths = _lengths(thread, front, (row, shank), ledger)
    stretch = max(0.0, lengths.thread - row.thread_length)
    longer = by_rule("blank-listed-longer", row.source, diameter=row.diameter)
    ruled = round(row.overall_length + stretch, 6)
    overall = ledger.number("blank.overall_length", ruled, longer)
    across, square_length = _square(shank, overall, hole, ledger)
    centre = round(0.3 * shank, 1) if shank >= SMALLEST_SHANK_WITH_CENTRE else 0.0
    blank = Blank(
        overall_length=overall,
        thread_length=lengths.thread,
        neck_diameter=lengths.neck_diameter,
        neck_length=lengths.neck,
        shoulder_angle=_shoulder(lengths, shank, ledger),
        shank_diameter=shank,
        square_across_flats=across,
        square_length=square_length,
        rear_chamfer=ledger.number("blank.rear_chamfer", round(0.05 * shank, 1), REAR_CHAMFER_RULE),
        front_centre=ledger.number("blank.front_centre", *_ruled_front_centre(front, hole)),
        rear_centre=ledger.number("blank.rear_centre", centre, REAR_CENTRE_RULE),
    )
    return ChosenBlank(blank, lengths.full_depth)


def _ruled_front_centre(front: Front, hole: TappedHole) -> tuple[float, Rule]:
    """Rim of the centre [mm]: it breaks out neither into the flutes nor through the point."""
    narrowest = min(front.section.core_diameter, front.point_diameter)
    rim = down(FRONT_CENTRE_SHARE * narrowest, 0.1)
    if hole.diameter < SMALLEST_WITH_FRONT_CENTRE or rim < LEAST_FRONT_CENTRE:
        return 0.0, NO_FRONT_CENTRE_RULE
    return rim, FRONT_CENTRE_RULE


def _shoulder(lengths: _Lengths, shank: float, ledger: Ledger) -> float:
    """Angle of the cone between neck and shank [deg]: a choice only where there is such a cone."""
    if lengths.neck > 0 and lengths.neck_diameter != shank:
        return ledger.number("blank.shoulder_angle", SHOULDER_ANGLE, SHOULDER_RULE)
    given = ledger.given("blank.shoulder_angle")
    return SHOULDER_ANGLE if given is None else given


def _lengths(
    thread: TapThread, front: Front, row_and_shank: tuple[BlankRow, float], ledger: Ledger
) -> _Lengths:
    row, shank = row_and_shank
    least = front.chamfer_length + FULL_PITCHES * thread.pitch
    rule = by_rule("thread-length-listed", row.thread_source, pitches=FULL_PITCHES)
    ruled = max(row.thread_length, up(least, 0.5))
    useful = threaded(row.diameter, thread.pitch)
    short = up(front.chamfer_length + useful, 0.5)
    if useful < row.diameter and short < ruled:
        rule, ruled = by_rule("thread-length-fine", OWN_RULE, pitches=MOST_TURNS), short
    length = ledger.number("blank.thread_length", ruled, rule)
    least_beyond = min(0.5, row.diameter / 2)
    ruled = round(length + max(thread.pitch, least_beyond), 3)
    full_depth = ledger.number("flutes.full_depth_length", ruled, FULL_DEPTH_RULE)
    ended = replace(thread, minor=thinner(thread, length - front.chamfer_length).minor)
    diameter, neck = _neck(ended, front.section, shank, full_depth - length, ledger)
    return _Lengths(length, full_depth, diameter, neck)


def _neck(
    thread: TapThread, section: FluteSection, shank: float, beyond: float, ledger: Ledger
) -> tuple[float, float]:
    """Diameter and length of the neck, both 0 for none; `beyond` = full depth behind the thread.

    The thread is that with the root as it is where the thread ends.
    """
    wanted = shank > thread.minor
    for one, other in (("diameter", "length"), ("length", "diameter")):
        if ledger.has(f"blank.neck_{one}") and not ledger.has(f"blank.neck_{other}"):
            wanted = (ledger.peek(f"blank.neck_{one}") or 0.0) > 0
    gap = step_for(0.1, SLIMMER * thread.minor)
    under = max(down(thread.minor - gap, gap), 0.5 * thread.minor)
    slim = min(under, shank) if wanted else 0.0
    none = by_rule("neck-none", OWN_RULE)
    rule = by_rule("neck-under-root", OWN_RULE, gap=gap) if wanted else none
    diameter = ledger.number("blank.neck_diameter", slim, rule)
    lack = section.centre_distance - diameter / 2
    leaving = math.sqrt(max(0.0, section.ball_radius**2 - max(0.0, lack) ** 2))
    behind = max(beyond, 0.0) + leaving + thread.pitch / 2
    reach = up(behind, step_for(0.5, NECK_STEP * thread.major))
    rule = by_rule("neck-behind-cutter", OWN_RULE) if wanted else none
    length = ledger.number("blank.neck_length", reach if wanted else 0.0, rule)
    return diameter, length


def _square(shank: float, overall: float, hole: TappedHole, ledger: Ledger) -> tuple[float, float]:
    """Across flats and length of the drive square [mm]."""
    across, length, rule = square_of(shank, hole)
    across = ledger.number("blank.square_across_flats", across, rule)
    start = ledger.given("blank.square_start")
    if start is not None:
        return across, overall - start
    length = ledger.number("blank.square_length", length, rule)
    return across, length
