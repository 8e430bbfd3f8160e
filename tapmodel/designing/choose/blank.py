"""Choosing the blank: lengths, neck, shank, square, centres, and where the flutes stop."""

import math
from dataclasses import dataclass, replace

from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.ledger import Ledger, Rule, by_rule
from tapmodel.designing.choose.shank import choose_shank, listed_blank, slender, square_of
from tapmodel.designing.choose.steps import down, step_for, up
from tapmodel.designing.limits.flutes import clearance
from tapmodel.designing.limits.turns import FINE_FROM, GUIDE, MOST_TURNS, large_and_fine, threaded
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

ENOUGH_FRONT_CENTRE = 0.25
"""Rim of the front centre, in diameters, that carries a large tap: the thick web between shallow
flutes has room for more, and needs none."""

LEAST_FRONT_CENTRE = 1.0
"""No smaller front centre by rule [mm]: the smallest common centre drill has a pilot of 0.5 mm."""

SLIMMER = 0.05
"""The neck lies 0.1 mm under the root, but no more than this share of it."""

NECK_STEP = 0.25
"""Necks end on whole steps of 0.5 mm, but none longer than this share of the diameter."""

GRIP = 1.5
"""Plain shank that a large tap of fine pitch is held by while it is cut, in diameters of that."""

CLEAR = 10.0
"""Room between the work and the square when such a tap is right through [mm]."""

SHOULDER_RULE = by_rule("shoulder-angle", PRACTICE, angle=SHOULDER_ANGLE)
FULL_DEPTH_RULE = by_rule("full-depth-behind-thread", OWN_RULE)
REAR_CHAMFER_RULE = by_rule("rear-chamfer-of-shank", PRACTICE)
FRONT_CENTRE_RULE = by_rule("front-centre-of-web", PRACTICE, share=FRONT_CENTRE_SHARE)
ENOUGH_FRONT_CENTRE_RULE = by_rule("front-centre-enough", OWN_RULE, share=ENOUGH_FRONT_CENTRE)
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
class _Behind:
    """What stands behind the thread.

    Attributes:
        shank: its diameter [mm].
        beyond: full depth of the flutes behind the thread [mm].
        slim: whether a neck must carry the ends of the flutes, as the shank is thinner than the
            web between them.
    """

    shank: float
    beyond: float
    slim: bool


@dataclass(frozen=True, slots=True)
class Front:
    """What the blank must suit [mm]: the chamfer's length and point, flutes, depth of the hole."""

    chamfer_length: float
    point_diameter: float
    section: FluteSection
    depth: float


def choose_blank(thread: TapThread, front: Front, hole: TappedHole, ledger: Ledger) -> ChosenBlank:
    """Settle the blank of a tap for the hole.

    Source: the lists of blanks by `tapmodel.standards.blanks` and `inch_blanks`; the rest as noted
    with each choice.
    """
    row = listed_blank(hole)
    shank = choose_shank(row, hole, front.section.core_diameter, ledger)
    lengths = _lengths(thread, front, (row, shank), ledger)
    overall, rule = _ruled_overall(row, thread, lengths.thread)
    if slender(row, hole):
        needed = _needed(lengths, shank, front, square_of(shank, hole)[1], ledger)
        if needed < overall:
            values = {"shanks": GRIP, "depth": front.depth, "clear": CLEAR}
            overall, rule = needed, by_rule("blank-as-needed", OWN_RULE, **values)
    overall = ledger.number("blank.overall_length", overall, rule)
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


def _ruled_overall(row: BlankRow, thread: TapThread, length: float) -> tuple[float, Rule]:
    """Front to rear [mm]: as much of the listed blank behind the thread as there is."""
    stretch = length - row.thread_length
    if stretch < 0 and large_and_fine(row.diameter, thread.pitch):
        shorter = by_rule("blank-listed-shorter", row.source, diameter=row.diameter)
        return round(row.overall_length + stretch, 6), shorter
    longer = by_rule("blank-listed-longer", row.source, diameter=row.diameter)
    return round(row.overall_length + max(0.0, stretch), 6), longer


def _needed(lengths: _Lengths, shank: float, front: Front, square: float, ledger: Ledger) -> float:
    """Length to hold a tap by and to turn it through its hole [mm], up to whole mm."""
    given = ledger.peek("blank.shoulder_angle") or SHOULDER_ANGLE
    cone = max(0.0, lengths.neck_diameter - shank) / 2 / math.tan(math.radians(given))
    held = lengths.thread + lengths.neck + cone + GRIP * shank
    turned = front.depth + front.chamfer_length + CLEAR
    return up(max(held, turned) + square, 1.0)


def _ruled_front_centre(front: Front, hole: TappedHole) -> tuple[float, Rule]:
    """Rim of the centre [mm]: it breaks out neither into the flutes nor through the point."""
    narrowest = min(front.section.core_diameter, front.point_diameter)
    rim = down(FRONT_CENTRE_SHARE * narrowest, 0.1)
    enough = down(ENOUGH_FRONT_CENTRE * hole.diameter, 0.1)
    if large_and_fine(hole.diameter, hole.pitch) and rim > enough:
        return enough, ENOUGH_FRONT_CENTRE_RULE
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
    length = ledger.number(
        "blank.thread_length", *_ruled_thread(thread, front.chamfer_length, row, ledger)
    )
    least_beyond = min(0.5, row.diameter / 2)
    ruled = round(length + max(thread.pitch, least_beyond), 3)
    full_depth = ledger.number("flutes.full_depth_length", ruled, FULL_DEPTH_RULE)
    ended = replace(thread, minor=thinner(thread, length - front.chamfer_length).minor)
    # A shank thinner than the web would be cut: behind shallow flutes stands a neck that is not.
    web = front.section.core_diameter + 2 * clearance(thread.major)
    slim = shank < web and large_and_fine(row.diameter, thread.pitch)
    behind = _Behind(shank, full_depth - length, slim)
    diameter, neck = _neck(ended, front.section, behind, ledger)
    return _Lengths(length, full_depth, diameter, neck)


def _ruled_thread(
    thread: TapThread, chamfer: float, row: BlankRow, ledger: Ledger
) -> tuple[float, Rule]:
    """Length of the thread with its `chamfer` [mm]: as listed, or what guides a fine one.

    A deeper hole that the job names is served too: flutes that end below its mouth let no chip out.
    """
    listed = max(row.thread_length, up(chamfer + FULL_PITCHES * thread.pitch, 0.5))
    useful, large = threaded(row.diameter, thread.pitch), large_and_fine(row.diameter, thread.pitch)
    rule = by_rule("thread-length-fine", OWN_RULE, pitches=MOST_TURNS)
    if useful < MOST_TURNS * thread.pitch:
        rule = by_rule("thread-length-guided", OWN_RULE, pitches=FINE_FROM, share=GUIDE)
    deep = ledger.peek("hole.depth") or 0.0
    if large and deep > useful:
        rule, useful = by_rule("thread-length-of-hole", OWN_RULE, depth=deep), deep
    short = up(chamfer + useful, 0.5)
    if (large or useful < row.diameter) and short < listed:
        return short, rule
    return listed, by_rule("thread-length-listed", row.thread_source, pitches=FULL_PITCHES)


def _neck(
    thread: TapThread, section: FluteSection, behind: _Behind, ledger: Ledger
) -> tuple[float, float]:
    """Diameter and length of the neck, both 0 for none.

    The thread is that with the root as it is where the thread ends.
    """
    shank = behind.shank
    wanted = shank > thread.minor or behind.slim
    for one, other in (("diameter", "length"), ("length", "diameter")):
        if ledger.has(f"blank.neck_{one}") and not ledger.has(f"blank.neck_{other}"):
            wanted = (ledger.peek(f"blank.neck_{one}") or 0.0) > 0
    gap = step_for(0.1, SLIMMER * thread.minor)
    under = max(down(thread.minor - gap, gap), 0.5 * thread.minor)
    slim = (under if behind.slim else min(under, shank)) if wanted else 0.0
    none = by_rule("neck-none", OWN_RULE)
    rule = by_rule("neck-under-root", OWN_RULE, gap=gap)
    if behind.slim:
        rule = by_rule("neck-behind-web", OWN_RULE, gap=gap)
    rule = rule if wanted else none
    diameter = ledger.number("blank.neck_diameter", slim, rule)
    lack = section.centre_distance - diameter / 2
    leaving = math.sqrt(max(0.0, section.ball_radius**2 - max(0.0, lack) ** 2))
    least = max(behind.beyond, 0.0) + leaving + thread.pitch / 2
    reach = up(least, step_for(0.5, NECK_STEP * thread.major))
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
