"""Rules on the thread profile, its limits and the drill."""

import math

from tapmodel.design.drill import drills_inside, neighbours
from tapmodel.design.judging import (
    ERROR,
    NOTE,
    WARNING,
    Context,
    Findings,
    Numbers,
    at_least,
    at_most,
    between,
    finding,
)
from tapmodel.design.legal_value import ceil_text, floor_text
from tapmodel.design.provenance import GEOMETRY, OWN_RULE
from tapmodel.design.tap_design import TapDesign
from tapmodel.design.thread import Flanks, wear_reserve

LEAST_FLAT = 0.02
"""Least crest and root flat in pitches; below that the profile is a knife edge."""


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the thread.

    Source: each names its own.
    """
    yield from _ends(design)
    yield from _sizes(design)
    yield from _drill(design, context)
    yield from _origin(design, context)


def _ends(design: TapDesign) -> Findings:
    thread = design.thread
    least = LEAST_FLAT * thread.pitch
    flanks = Flanks(thread.pitch, thread.pitch_diameter, math.radians(thread.flank_angle))
    crest, rounded = max(thread.crest_flat, thread.crest_radius), thread.crest_radius > 0
    if crest <= least:
        height = flanks.sharp - least * flanks.short if rounded else flanks.height(least)
        largest = thread.pitch_diameter + height
        what = f"The crest is too sharp; set thread.major below {floor_text(largest)} mm."
        yield finding("crest-flat", ERROR, what, at_least(least, crest), OWN_RULE)
    field = "thread.root_radius" if thread.root_radius > 0 else "thread.root_flat"
    root = max(thread.root_flat, thread.root_radius)
    if root <= least:
        what = f"The root is too sharp; set {field} above {ceil_text(least, 4)} mm."
        yield finding("root-flat", ERROR, what, at_least(least, root), OWN_RULE)
    highest = design.hole.minor_min
    if thread.minor > highest:
        depth = thread.pitch_diameter - highest
        most = flanks.flat(depth)
        if thread.root_radius > 0:
            most = (flanks.sharp - depth) / flanks.short
        what = (
            "The root of the tap would cut the minor diameter of the hole; "
            f"set {field} below {floor_text(most, 4)} mm."
        )
        yield finding("root-clearance", ERROR, what, at_most(highest, thread.minor))


def _sizes(design: TapDesign) -> Findings:
    thread, hole = design.thread, design.hole
    if thread.major < thread.major_min:
        what = (
            "The tap is too small over the crests; set thread.major at least "
            f"{ceil_text(thread.major_min, 4)} mm."
        )
        yield finding("major-size", ERROR, what, at_least(thread.major_min, thread.major))
    d2 = thread.pitch_diameter
    if not hole.pitch_min <= d2 <= hole.pitch_max:
        numbers = between(hole.pitch_min, hole.pitch_max, d2)
        what = (
            "The pitch diameter lies outside the hole's own limits; set thread.pitch_diameter "
            f"inside {thread.pitch_min:g} to {thread.pitch_max:g} mm."
        )
        yield finding("pitch-outside-hole", ERROR, what, numbers)
    elif not thread.pitch_min <= d2 <= thread.pitch_max:
        numbers = between(thread.pitch_min, thread.pitch_max, d2)
        what = "The pitch diameter lies outside the tap's zone; set thread.aim between 0 and 1."
        yield finding("pitch-outside-zone", WARNING, what, numbers)


def _drill(design: TapDesign, context: Context) -> Findings:
    low, high, drill = design.hole.minor_min, design.hole.minor_max, design.drill
    if drill >= design.thread.pitch_diameter:
        what = (
            "The drill takes away the thread down to the tap's pitch line; set hole.drill at most "
            f"{floor_text(high)} mm."
        )
        yield finding("drill-size", ERROR, what, between(low, high, drill))
    elif not low <= drill <= high:
        what = "The drill leaves a minor diameter outside its limits; set hole.drill inside them."
        yield finding("drill-size", WARNING, what, between(low, high, drill))
    elif not drills_inside(drill, design.thread.pitch, design.hole, context.hole.drill_sets):
        numbers = between(low, high, drill)
        yield finding("drill-size", WARNING, _between_drills(context), numbers, OWN_RULE)


def _between_drills(context: Context) -> str:
    """Names the drills on hand on both sides of the minor limits."""
    below, above = neighbours(context.hole.found.limits, context.hole.drill_sets)
    sides = [
        f"{drill.name} ({drill.diameter:.3f} mm) is the next {side}"
        for drill, side in ((below, "below"), (above, "above"))
        if drill is not None
    ]
    return (
        f"No drill of the {', '.join(context.hole.drill_sets)} set lies inside the minor limits "
        f"({', '.join(sides)}); ream or bore to hole.drill, name more sets in shop.drills, or "
        "choose a wider hole.class."
    )


def _origin(design: TapDesign, context: Context) -> Findings:
    found = context.hole.found
    numbers = Numbers("a listed pair", design.designation, "any pair; limits by formula")
    if found.beyond_scope:
        yield finding("beyond-scope", WARNING, found.note, numbers, found.sources[0])
    elif not found.listed:
        yield finding("unlisted-pair", NOTE, found.note, numbers, found.sources[0])
    reserve = wear_reserve(design.thread, context.hole)
    if reserve > 0:
        what = (
            f"The tap may wear by {reserve:.4f} mm in pitch diameter before the hole falls below "
            "its least size."
        )
        numbers = between(
            design.hole.pitch_min, design.hole.pitch_max, design.thread.pitch_diameter
        )
        yield finding("wear-reserve", NOTE, what, numbers, GEOMETRY)
