"""Choosing the blank: lengths, neck, shank, square, centres, and where the flutes stop."""

import math
from dataclasses import dataclass

from tapmodel.designing.choose.ledger import Ledger, by_rule
from tapmodel.designing.choose.steps import down, step_for, up
from tapmodel.designing.provenance import OWN_RULE, PRACTICE
from tapmodel.shape.flute_section import FluteSection
from tapmodel.sources import Source
from tapmodel.standards.blanks import BlankRow, blank_for, square_for
from tapmodel.tap.tap import Blank, TapThread
from tapmodel.words import Certainty

SQUARE_SOURCE = Source("ISO 237:1975", "", Certainty.MEMORY)
SHOULDER_ANGLE = 30.0
FULL_PITCHES = 8
"""Pitches of full thread behind the chamfer that a rule leaves at least."""

FINE = 100
"""Pitches in the diameter from which on a thread as long as listed would be turns to no purpose."""

SMALLEST_SHANK_WITH_CENTRE = 6.0

SLIMMER = 0.05
"""The neck lies 0.1 mm under the root, but no more than this share of it."""

NECK_STEP = 0.25
"""Necks end on whole steps of 0.5 mm, but none longer than this share of the diameter."""

SHOULDER_RULE = by_rule("shoulder-angle", PRACTICE, angle=SHOULDER_ANGLE)
FULL_DEPTH_RULE = by_rule("full-depth-behind-thread", OWN_RULE)
REAR_CHAMFER_RULE = by_rule("rear-chamfer-of-shank", PRACTICE)
FRONT_CENTRE_RULE = by_rule("front-centre-none", PRACTICE)
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


def choose_blank(
    thread: TapThread, chamfer_length: float, section: FluteSection, diameter: float, ledger: Ledger
) -> ChosenBlank:
    """Settle the blank for a thread of nominal `diameter` behind a chamfer of that length [mm].

    Source: ISO 529 and ISO 237 (from memory) by `tapmodel.standards.blanks`; the rest as noted
    with each choice.
    """
    row = blank_for(diameter)
    listed = by_rule("blank-listed", row.source, diameter=diameter)
    shank = ledger.number("blank.shank_diameter", row.shank, listed)
    lengths = _lengths(thread, chamfer_length, section, (row, shank), ledger)
    stretch = max(0.0, lengths.thread - row.thread_length)
    longer = by_rule("blank-listed-longer", row.source, diameter=diameter)
    overall = ledger.number("blank.overall_length", row.overall_length + stretch, longer)
    across, square_length = _square(shank, overall, ledger)
    centre = round(0.3 * shank, 1) if shank >= SMALLEST_SHANK_WITH_CENTRE else 0.0
    blank = Blank(
        overall_length=overall,
        thread_length=lengths.thread,
        neck_diameter=lengths.neck_diameter,
        neck_length=lengths.neck,
        shoulder_angle=ledger.number("blank.shoulder_angle", SHOULDER_ANGLE, SHOULDER_RULE),
        shank_diameter=shank,
        square_across_flats=across,
        square_length=square_length,
        rear_chamfer=ledger.number("blank.rear_chamfer", round(0.05 * shank, 1), REAR_CHAMFER_RULE),
        front_centre=ledger.number("blank.front_centre", 0.0, FRONT_CENTRE_RULE),
        rear_centre=ledger.number("blank.rear_centre", centre, REAR_CENTRE_RULE),
    )
    return ChosenBlank(blank, lengths.full_depth)


def _lengths(
    thread: TapThread,
    chamfer_length: float,
    section: FluteSection,
    row_and_shank: tuple[BlankRow, float],
    ledger: Ledger,
) -> _Lengths:
    row, shank = row_and_shank
    least = chamfer_length + FULL_PITCHES * thread.pitch
    rule = by_rule("thread-length-listed", row.source, pitches=FULL_PITCHES)
    ruled = max(row.thread_length, up(least, 0.5))
    one_diameter = up(chamfer_length + row.diameter, 0.5)
    if row.diameter > FINE * thread.pitch and one_diameter < ruled:
        rule = by_rule("thread-length-one-diameter", row.source)
        ruled = one_diameter
    length = ledger.number("blank.thread_length", ruled, rule)
    least_beyond = min(0.5, row.diameter / 2)
    ruled = round(length + max(thread.pitch, least_beyond), 3)
    full_depth = ledger.number("flutes.full_depth_length", ruled, FULL_DEPTH_RULE)
    diameter, neck = _neck(thread, section, shank, full_depth - length, ledger)
    return _Lengths(length, full_depth, diameter, neck)


def _neck(
    thread: TapThread, section: FluteSection, shank: float, beyond: float, ledger: Ledger
) -> tuple[float, float]:
    """Diameter and length of the neck, both 0 for none; `beyond` = full depth behind the thread."""
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


def _square(shank: float, overall: float, ledger: Ledger) -> tuple[float, float]:
    """Across flats and length of the drive square [mm]."""
    across, length = square_for(shank)
    rule = by_rule("square-of-shank", SQUARE_SOURCE, shank=shank)
    across = ledger.number("blank.square_across_flats", across, rule)
    start = ledger.given("blank.square_start")
    if start is not None:
        return across, overall - start
    length = ledger.number("blank.square_length", length, rule)
    return across, length
