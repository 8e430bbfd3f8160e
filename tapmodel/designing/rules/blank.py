"""Rules on the blank: neck, shank, square, lengths."""

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
    ERROR,
    NOISE,
    NOTE,
    WARNING,
    Findings,
    at_least,
    at_most,
    exactly,
    finding,
    less,
    more,
    over,
    under,
)
from tapmodel.designing.provenance import OWN_RULE, PRACTICE
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules import edges as rules_edges
from tapmodel.designing.rules import proportions as rules_proportions
from tapmodel.designing.rules.context import Context
from tapmodel.shape.turned import cone_length
from tapmodel.values import Values

LEAST_SQUARE_SHARE = 0.707
"""Across flats below this share of the shank wastes strength."""


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the blank.

    Source: each names its own.
    """
    yield from _passage(design, context)
    yield from _reach(design)
    yield from _square(design)
    yield from _lengths(design)
    yield from rules_proportions.judge(design, context.hole)
    yield from rules_edges.judge(design)


def _passage(design: TapDesign, context: Context) -> Findings:
    blank, minor = design.tap.blank, design.hole.minor_min
    if over(blank.neck_diameter, minor):
        field, neck = "blank.neck_diameter", blank.neck_diameter
        levers = (less(field, neck, minor), exactly(field, 0.0))
        yield finding(Code.NECK_HOLE, WARNING, field, neck, at_most(minor), levers=levers)
    if not over(blank.shank_diameter, minor):
        return
    field, shank = "blank.shank_diameter", blank.shank_diameter
    if context.shank_must_pass:
        levers = (less(field, shank, minor),)
        yield finding(Code.SHANK_HOLE, ERROR, field, shank, at_most(minor), levers=levers)
    else:
        values = Values(depth=design.full_thread_depth)
        yield finding(Code.SHANK_HOLE, NOTE, field, shank, at_most(minor), values=values)


def _reach(design: TapDesign) -> Findings:
    """A depth of hole, given in the job, that full thread does not reach."""
    asked, deepest = design.choice("hole.depth"), design.full_thread_depth
    depth = design.work.depth
    if asked is None or not asked.given or not over(depth, deepest):
        return
    blank, lack = design.tap.blank, depth - deepest
    stopped = deepest + design.tap.chamfer_length < blank.square_start - NOISE
    longer = (
        more("blank.overall_length", blank.overall_length, blank.overall_length + lack),
        more("blank.square_start", blank.square_start, blank.square_start + lack),
    )
    within = (
        more("blank.thread_length", blank.thread_length, blank.thread_length + lack),
        more("blank.neck_length", blank.neck_length, blank.neck_length + lack),
        less("blank.shank_diameter", blank.shank_diameter, design.hole.minor_min),
    )
    limit, levers = at_most(deepest), within if stopped else longer
    yield finding(Code.HOLE_REACH, WARNING, "hole.depth", depth, limit, levers=levers)


def _square(design: TapDesign) -> Findings:
    across, shank = design.tap.blank.square_across_flats, design.tap.blank.shank_diameter
    field, thicker = "blank.square_across_flats", more("blank.shank_diameter", shank)
    least, least_to_drive = LEAST_SQUARE_SHARE * shank, LEAST_SQUARE_TO_DRIVE * shank
    if across >= shank:
        levers = (less(field, across, shank), thicker)
        yield finding(Code.SQUARE_FLATS, ERROR, field, across, at_most(shank), levers=levers)
    elif under(across, least_to_drive):
        levers, limit = (more(field, across, least_to_drive),), at_least(least_to_drive)
        yield finding(Code.SQUARE_SLIM, ERROR, field, across, limit, OWN_RULE, levers=levers)
    elif under(across, least):
        levers, limit = (more(field, across, least),), at_least(least)
        yield finding(Code.SQUARE_CORNERS, WARNING, field, across, limit, PRACTICE, levers=levers)


LEAST_SQUARE_TO_DRIVE = 0.3
"""Across flats below this share of the shank a square shears off before the tap cuts."""


def _lengths(design: TapDesign) -> Findings:
    blank = design.tap.blank
    cone = cone_length(blank)
    behind = blank.thread_length + blank.neck_length + cone
    least = behind + max(1.0, 0.25 * blank.shank_diameter)
    lack = least - blank.square_start
    if over(lack, 0.0):
        levers = (
            more("blank.overall_length", blank.overall_length, blank.overall_length + lack),
            more("blank.square_start", blank.square_start, least),
            less("blank.square_length", blank.square_length, blank.square_length - lack),
            less("blank.thread_length", blank.thread_length, blank.thread_length - lack),
            less("blank.neck_length", blank.neck_length, blank.neck_length - lack),
            *((more("blank.shoulder_angle", blank.shoulder_angle),) if cone > 0 else ()),
            less("blank.shank_diameter", blank.shank_diameter),
        )
        field, start = "blank.square_start", blank.square_start
        limit = at_least(least)
        yield finding(Code.OVERALL_LENGTH, ERROR, field, start, limit, OWN_RULE, levers=levers)
    if under(blank.square_length, rules_edges.LEAST_LENGTH):
        latest = blank.overall_length - rules_edges.LEAST_LENGTH
        levers = (
            less("blank.square_start", blank.square_start, latest),
            more("blank.square_length", blank.square_length, rules_edges.LEAST_LENGTH),
            more("blank.overall_length", blank.overall_length),
        )
        field, length = "blank.square_length", blank.square_length
        limit = at_least(rules_edges.LEAST_LENGTH)
        yield finding(Code.SQUARE_LENGTH, ERROR, field, length, limit, levers=levers)
