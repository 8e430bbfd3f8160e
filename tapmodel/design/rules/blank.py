"""Rules on the blank: neck, shank, square, lengths."""

from tapmodel.design.judging import (
    ERROR,
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
from tapmodel.design.provenance import OWN_RULE, PRACTICE
from tapmodel.design.record import TapDesign
from tapmodel.design.rules import edges as rules_edges
from tapmodel.design.rules.context import Context
from tapmodel.shape.turned import cone_length

LEAST_SQUARE_SHARE = 0.707
"""Across flats below this share of the shank wastes strength."""


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the blank.

    Source: each names its own.
    """
    yield from _passage(design, context)
    yield from _square(design)
    yield from _lengths(design)
    yield from rules_edges.judge(design)


def _passage(design: TapDesign, context: Context) -> Findings:
    blank, minor = design.tap.blank, design.hole.minor_min
    if over(blank.neck_diameter, minor):
        what = "The neck will not pass the hole."
        numbers = at_most(minor, blank.neck_diameter)
        levers = (
            less("blank.neck_diameter", blank.neck_diameter, minor),
            exactly("blank.neck_diameter", 0.0),
        )
        yield finding("neck-hole", WARNING, what, numbers, levers=levers)
    if not over(blank.shank_diameter, minor):
        return
    numbers = at_most(minor, blank.shank_diameter)
    if context.shank_must_pass:
        what = "The shank does not pass the finished hole."
        levers = (less("blank.shank_diameter", blank.shank_diameter, minor),)
        yield finding("shank-hole", ERROR, what, numbers, levers=levers)
    else:
        reach = design.tap.blank.thread_length + blank.neck_length
        what = (
            "The shank is thicker than the hole: the tap cannot be passed through, and reaches "
            f"{reach:.1f} mm deep; set blank.shank_must_pass to have this refused."
        )
        yield finding("shank-hole", NOTE, what, numbers)


def _square(design: TapDesign) -> Findings:
    across, shank = design.tap.blank.square_across_flats, design.tap.blank.shank_diameter
    least = LEAST_SQUARE_SHARE * shank
    thicker = more("blank.shank_diameter", shank)
    if across >= shank:
        what = "The square is no square: its flats lie outside the shank."
        levers = (less("blank.square_across_flats", across, shank), thicker)
        yield finding("square-flats", ERROR, what, at_most(shank, across), levers=levers)
    elif under(across, LEAST_SQUARE_TO_DRIVE * shank):
        what = "The square is too small to drive the tap."
        numbers = at_least(LEAST_SQUARE_TO_DRIVE * shank, across)
        levers = (more("blank.square_across_flats", across, LEAST_SQUARE_TO_DRIVE * shank),)
        yield finding("square-slim", ERROR, what, numbers, OWN_RULE, levers=levers)
    elif under(across, least):
        what = "The square is smaller than the shank allows and wastes strength."
        levers = (more("blank.square_across_flats", across, least),)
        yield finding(
            "square-corners", WARNING, what, at_least(least, across), PRACTICE, levers=levers
        )


LEAST_SQUARE_TO_DRIVE = 0.3
"""Across flats below this share of the shank a square shears off before the tap cuts."""


def _lengths(design: TapDesign) -> Findings:
    blank = design.tap.blank
    behind = blank.thread_length + blank.neck_length + cone_length(blank)
    least = behind + max(1.0, 0.25 * blank.shank_diameter)
    lack = least - blank.square_start
    if over(lack, 0.0):
        what = "There is no room for a shank between thread and square."
        levers = (
            more("blank.overall_length", blank.overall_length, blank.overall_length + lack),
            more("blank.square_start", blank.square_start, least),
            less("blank.square_length", blank.square_length, blank.square_length - lack),
            less("blank.thread_length", blank.thread_length, blank.thread_length - lack),
            less("blank.neck_length", blank.neck_length, blank.neck_length - lack),
            more("blank.shoulder_angle", blank.shoulder_angle),
            less("blank.shank_diameter", blank.shank_diameter),
        )
        numbers = at_least(least, blank.square_start)
        yield finding("overall-length", ERROR, what, numbers, OWN_RULE, levers=levers)
    if under(blank.square_length, rules_edges.LEAST_LENGTH):
        what = "The square starts behind the tap's end, or is too short to hold."
        latest = blank.overall_length - rules_edges.LEAST_LENGTH
        levers = (
            less("blank.square_start", blank.square_start, latest),
            more("blank.square_length", blank.square_length, rules_edges.LEAST_LENGTH),
            more("blank.overall_length", blank.overall_length),
        )
        numbers = at_least(rules_edges.LEAST_LENGTH, blank.square_length)
        yield finding("square-length", ERROR, what, numbers, levers=levers)
