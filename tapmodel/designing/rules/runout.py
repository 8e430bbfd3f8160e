"""Rules on the ends of the flutes: their full depth, their run-out, and what lies under it."""

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
    ERROR,
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
from tapmodel.designing.limits.flutes import clearance
from tapmodel.designing.limits.levers import deeper
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.shape.back_taper import thread_at_end
from tapmodel.shape.flute_section import section_of
from tapmodel.shape.turned import second_cut, smallest_radius_cut, turned_lengths

LEAST_RUNOUT = 0.1
"""Flutes must end at full depth at least this far behind the thread [mm]."""

LEAST_STEP = 0.002
"""The blank behind the thread must differ from the root by this much in diameter [mm]."""


def judge(design: TapDesign) -> Findings:
    """Every finding on the ends of the flutes.

    Source: each names its own.
    """
    yield from _ends(design)
    yield from _behind(design)
    yield from _step(design)


def _step(design: TapDesign) -> Findings:
    """Blank and root of equal diameter would leave the thread's end a face without width."""
    blank = design.tap.blank
    root = thread_at_end(design.tap).minor
    part = "neck_diameter" if blank.neck_length > 0 else "shank_diameter"
    behind = blank.neck_diameter if blank.neck_length > 0 else blank.shank_diameter
    step = abs(behind - root)
    if under(step, LEAST_STEP):
        field, limit = f"blank.{part}", at_least(LEAST_STEP)
        levers = (
            less(field, behind, root - LEAST_STEP),
            more(field, behind, root + LEAST_STEP),
        )
        judged = "blank.step_to_root"
        yield finding(Code.STEP_ROOT, ERROR, judged, step, limit, OWN_RULE, levers=levers)


def _ends(design: TapDesign) -> Findings:
    flutes, blank = design.tap.flutes, design.tap.blank
    full = flutes.full_depth_length
    least = blank.thread_length + LEAST_RUNOUT
    if under(full, least):
        field = "flutes.full_depth_length"
        levers = (
            more(field, full, least),
            less("blank.thread_length", blank.thread_length, full - LEAST_RUNOUT),
        )
        yield finding(Code.FLUTE_LENGTH, ERROR, field, full, at_least(least), levers=levers)
    latest = blank.square_start - max(1.0, 0.25 * blank.shank_diameter)
    end = design.figures.runout_end
    excess = end - latest
    if over(excess, 0.0):
        levers = (
            less("flutes.full_depth_length", full, full - excess),
            more("blank.overall_length", blank.overall_length, blank.overall_length + excess),
            less("blank.square_length", blank.square_length, blank.square_length - excess),
            more("blank.square_start", blank.square_start, blank.square_start + excess),
            less("blank.thread_length", blank.thread_length),
        )
        field, limit = "flutes.runout_end", at_most(latest)
        yield finding(Code.RUNOUT_SQUARE, ERROR, field, end, limit, OWN_RULE, levers=levers)


def _behind(design: TapDesign) -> Findings:
    flutes, blank, section = design.tap.flutes, design.tap.blank, section_of(design.tap.flutes)
    lengths = turned_lengths(blank, design.tap.thread.major)
    full, gap = flutes.full_depth_length, clearance(design.tap.thread.major)
    slim = smallest_radius_cut(lengths, max(full, design.figures.runout_end))
    web = flutes.core_diameter / 2 + gap
    if under(slim, web):
        neck = blank.neck_length > 0 and blank.neck_diameter < 2 * web
        shank = blank.shank_diameter < 2 * web
        thicker = (
            more("blank.neck_diameter", blank.neck_diameter, 2 * web) if neck else None,
            more("blank.shank_diameter", blank.shank_diameter, 2 * web) if shank else None,
        )
        levers = (
            less("flutes.core_diameter", flutes.core_diameter, 2 * (slim - gap)),
            *(lever for lever in thicker if lever),
            *deeper(section, design.tap.thread.major)[1:2],
        )
        field, limit = "blank.diameter_at_runout", at_least(2 * web)
        yield finding(Code.CORE_BEHIND, ERROR, field, 2 * slim, limit, OWN_RULE, levers=levers)
    elif second_cut(section, full, lengths):
        # Behind the whole ball there is nothing left to cut.
        least = full + flutes.cutter_diameter / 2 - blank.thread_length
        field, neck_length = "blank.neck_length", blank.neck_length
        levers = (
            more(field, neck_length, least),
            less("blank.shank_diameter", blank.shank_diameter),
            less("flutes.full_depth_length", full),
            exactly(field, 0.0),
        )
        limit = at_least(least)
        yield finding(Code.RUNOUT_SHOULDER, ERROR, field, neck_length, limit, levers=levers)
