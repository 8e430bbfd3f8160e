"""Rules on the ends of the flutes: their full depth, their run-out, and what lies under it."""

from tapmodel.design.judging import (
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
from tapmodel.design.limits.flutes import clearance
from tapmodel.design.limits.levers import deeper
from tapmodel.design.provenance import OWN_RULE
from tapmodel.design.record import TapDesign
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
    blank, root = design.tap.blank, design.tap.thread.minor
    part = "neck_diameter" if blank.neck_length > 0 else "shank_diameter"
    behind = blank.neck_diameter if blank.neck_length > 0 else blank.shank_diameter
    if under(abs(behind - root), LEAST_STEP):
        what = "The blank behind the thread is as thick as its root."
        field = f"blank.{part}"
        levers = (
            less(field, behind, root - LEAST_STEP),
            more(field, behind, root + LEAST_STEP),
        )
        numbers = at_least(LEAST_STEP, abs(behind - root))
        yield finding("step-root", ERROR, what, numbers, OWN_RULE, levers=levers)


def _ends(design: TapDesign) -> Findings:
    flutes, blank = design.tap.flutes, design.tap.blank
    full = flutes.full_depth_length
    least = blank.thread_length + LEAST_RUNOUT
    if under(full, least):
        what = "The flutes end inside the thread."
        levers = (
            more("flutes.full_depth_length", full, least),
            less("blank.thread_length", blank.thread_length, full - LEAST_RUNOUT),
        )
        yield finding("flute-length", ERROR, what, at_least(least, full), levers=levers)
    latest = blank.square_start - max(1.0, 0.25 * blank.shank_diameter)
    excess = design.figures.runout_end - latest
    if over(excess, 0.0):
        what = "The flutes run out too near the square."
        levers = (
            less("flutes.full_depth_length", full, full - excess),
            more("blank.overall_length", blank.overall_length, blank.overall_length + excess),
            less("blank.square_length", blank.square_length, blank.square_length - excess),
            more("blank.square_start", blank.square_start, blank.square_start + excess),
            less("blank.thread_length", blank.thread_length),
        )
        numbers = at_most(latest, design.figures.runout_end)
        yield finding("runout-square", ERROR, what, numbers, OWN_RULE, levers=levers)


def _behind(design: TapDesign) -> Findings:
    flutes, blank, section = design.tap.flutes, design.tap.blank, section_of(design.tap.flutes)
    lengths = turned_lengths(blank, design.tap.thread.major)
    full, gap = flutes.full_depth_length, clearance(design.tap.thread.major)
    slim = smallest_radius_cut(lengths, max(full, design.figures.runout_end))
    web = flutes.core_diameter / 2 + gap
    if under(slim, web):
        what = "Neck or shank is thinner than the web of the flutes."
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
        yield finding(
            "core-behind", ERROR, what, at_least(2 * web, 2 * slim), OWN_RULE, levers=levers
        )
    elif second_cut(section, full, lengths):
        # Behind the whole ball there is nothing left to cut.
        least = full + flutes.cutter_diameter / 2 - blank.thread_length
        what = "The cutter runs out of the neck and cuts the shoulder again."
        levers = (
            more("blank.neck_length", blank.neck_length, least),
            less("blank.shank_diameter", blank.shank_diameter),
            less("flutes.full_depth_length", full),
            exactly("blank.neck_length", 0.0),
        )
        numbers = at_least(least, blank.neck_length)
        yield finding("runout-shoulder", ERROR, what, numbers, levers=levers)
