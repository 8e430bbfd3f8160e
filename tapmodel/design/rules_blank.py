"""Rules on the blank: neck, shank, square, lengths, centres."""

import math

from tapmodel.design.flute_limits import clearance
from tapmodel.design.judging import (
    ERROR,
    NOTE,
    WARNING,
    Context,
    Findings,
    at_least,
    at_most,
    finding,
)
from tapmodel.design.legal_value import ceil_text, floor_text
from tapmodel.design.provenance import OWN_RULE, PRACTICE
from tapmodel.design.tap_design import TapDesign
from tapmodel.design.turned import cone_length

LEAST_SQUARE_SHARE = 0.707
"""Across flats below this share of the shank wastes strength."""


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the blank.

    Source: each names its own.
    """
    yield from _passage(design, context)
    yield from _square(design)
    yield from _lengths(design)
    yield from _edges(design)


def _passage(design: TapDesign, context: Context) -> Findings:
    blank, minor = design.blank, design.hole.minor_min
    if blank.neck_diameter > minor:
        what = f"The neck will not pass the hole; set blank.neck_diameter below {minor:g} mm."
        yield finding("neck-hole", WARNING, what, at_most(minor, blank.neck_diameter))
    if blank.shank_diameter <= minor:
        return
    numbers = at_most(minor, blank.shank_diameter)
    if context.shank_must_pass:
        what = (
            "The shank does not pass the finished hole; set blank.shank_diameter at most "
            f"{minor:g} mm."
        )
        yield finding("shank-hole", ERROR, what, numbers)
    else:
        reach = design.blank.thread_length + blank.neck_length
        what = (
            "The shank is thicker than the hole: the tap cannot be passed through, and reaches "
            f"{reach:.1f} mm deep; set blank.shank_must_pass to have this refused."
        )
        yield finding("shank-hole", NOTE, what, numbers)


def _square(design: TapDesign) -> Findings:
    across, shank = design.blank.square_across_flats, design.blank.shank_diameter
    if across >= shank:
        what = f"The square is no square; set blank.square_across_flats below {shank:g} mm."
        yield finding("square-flats", ERROR, what, at_most(shank, across))
    elif across < LEAST_SQUARE_SHARE * shank:
        least = LEAST_SQUARE_SHARE * shank
        what = (
            "The square is smaller than the shank allows and wastes strength; set "
            f"blank.square_across_flats at least {ceil_text(least)} mm."
        )
        yield finding("square-corners", WARNING, what, at_least(least, across), PRACTICE)


def _lengths(design: TapDesign) -> Findings:
    blank = design.blank
    behind = blank.thread_length + blank.neck_length + cone_length(blank)
    least = behind + max(1.0, 0.25 * blank.shank_diameter)
    if blank.square_start < least:
        longer = blank.overall_length + least - blank.square_start
        what = (
            "There is no room for a shank between thread and square; set blank.overall_length at "
            f"least {ceil_text(longer)} mm."
        )
        yield finding("overall-length", ERROR, what, at_least(least, blank.square_start), OWN_RULE)
    if blank.square_length <= 0:
        what = f"The square starts behind the tap's end; set it below {blank.overall_length:g} mm."
        yield finding("square-length", ERROR, what, at_least(0, blank.square_length))


def _edges(design: TapDesign) -> Findings:
    blank = design.blank
    web = design.flutes.core_diameter - 2 * clearance(design.thread.major)
    if blank.front_centre > web:
        what = (
            "The front centre cuts into the flutes; set blank.front_centre at most "
            f"{floor_text(web)} mm or 0 for none."
        )
        yield finding("front-centre", ERROR, what, at_most(web, blank.front_centre), OWN_RULE)
    depth = blank.rear_centre / 2 / math.tan(math.radians(30))
    rim = blank.square_across_flats - 2 * blank.rear_chamfer - 0.2
    if blank.rear_centre > 0 and (blank.rear_centre > rim or depth > blank.square_length):
        what = (
            "The rear centre breaks out of the square; set blank.rear_centre at most "
            f"{floor_text(max(0.0, rim))} mm or 0 for none."
        )
        yield finding("rear-centre", ERROR, what, at_most(rim, blank.rear_centre), OWN_RULE)
    widest = min(blank.shank_diameter / 4, blank.square_length / 2)
    if blank.rear_chamfer > widest:
        what = f"The rear edge is gone; set blank.rear_chamfer at most {floor_text(widest)} mm."
        yield finding("rear-chamfer", ERROR, what, at_most(widest, blank.rear_chamfer), OWN_RULE)
