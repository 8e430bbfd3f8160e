"""Rules on the ends of the flutes: their full depth, their run-out, and what lies under it."""

from tapmodel.design.flute_limits import clearance
from tapmodel.design.flute_section import section_of
from tapmodel.design.judging import ERROR, Findings, at_least, at_most, finding
from tapmodel.design.legal_value import ceil_text, floor_text
from tapmodel.design.provenance import OWN_RULE
from tapmodel.design.tap_design import TapDesign
from tapmodel.design.turned import second_cut, smallest_radius_cut, turned_lengths

LEAST_RUNOUT = 0.1
"""Flutes must end at full depth at least this far behind the thread [mm]."""

LEAST_STEP = 0.002
"""The blank behind the thread must differ from the root by this much in diameter [mm]."""

ROUNDING = 1e-9
"""Binary noise of a core that is typed in [mm]; the advised core must be legal itself."""


def judge(design: TapDesign) -> Findings:
    """Every finding on the ends of the flutes.

    Source: each names its own.
    """
    yield from _ends(design)
    yield from _behind(design)
    yield from _step(design)


def _step(design: TapDesign) -> Findings:
    """Blank and root of equal diameter would leave the thread's end a face without width."""
    blank, root = design.blank, design.thread.minor
    part = "neck_diameter" if blank.neck_length > 0 else "shank_diameter"
    behind = blank.neck_diameter if blank.neck_length > 0 else blank.shank_diameter
    if abs(behind - root) < LEAST_STEP:
        what = (
            f"The blank behind the thread is as thick as its root; set blank.{part} at most "
            f"{floor_text(root - LEAST_STEP)} mm or at least {ceil_text(root + LEAST_STEP)} mm."
        )
        yield finding("step-root", ERROR, what, at_least(LEAST_STEP, abs(behind - root)), OWN_RULE)


def _ends(design: TapDesign) -> Findings:
    flutes, blank = design.flutes, design.blank
    least = blank.thread_length + LEAST_RUNOUT
    if flutes.full_depth_length < least:
        what = (
            "The flutes end inside the thread; set flutes.full_depth_length at least "
            f"{ceil_text(least)} mm."
        )
        yield finding("flute-length", ERROR, what, at_least(least, flutes.full_depth_length))
    least_sound = max(1.0, 0.25 * blank.shank_diameter)
    latest = blank.square_start - least_sound
    if flutes.runout_end > latest:
        shorter = flutes.full_depth_length - (flutes.runout_end - latest)
        what = (
            f"The flutes run out too near the square; set flutes.full_depth_length at most "
            f"{floor_text(shorter)} mm or blank.overall_length at least "
            f"{ceil_text(blank.overall_length + flutes.runout_end - latest)} mm."
        )
        yield finding("runout-square", ERROR, what, at_most(latest, flutes.runout_end), OWN_RULE)


def _behind(design: TapDesign) -> Findings:
    flutes, blank = design.flutes, design.blank
    lengths = turned_lengths(blank, design.thread.major)
    reached = max(flutes.full_depth_length, flutes.runout_end)
    gap = clearance(design.thread.major)
    slim, web = smallest_radius_cut(lengths, reached), flutes.core_diameter / 2 + gap
    if slim < web - ROUNDING:
        what = (
            "Neck or shank is thinner than the web of the flutes; set flutes.core_diameter at "
            f"most {floor_text(2 * (slim - gap))} mm or a thicker neck or shank."
        )
        yield finding("core-behind", ERROR, what, at_least(2 * web, 2 * slim), OWN_RULE)
    elif second_cut(section_of(flutes), flutes.full_depth_length, lengths):
        # Behind the whole ball there is nothing left to cut.
        least = flutes.full_depth_length + flutes.cutter_diameter / 2 - blank.thread_length
        what = (
            "The cutter runs out of the neck and cuts the shoulder again; set blank.neck_length "
            f"at least {ceil_text(least)} mm."
        )
        yield finding("runout-shoulder", ERROR, what, at_least(least, blank.neck_length))
