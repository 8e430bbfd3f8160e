"""Rules on the thread profile, its limits and the drill."""

from tapmodel.design.choose.drill import drills_inside, neighbours
from tapmodel.design.choose.thread import wear_reserve
from tapmodel.design.judging import (
    ERROR,
    NOTE,
    WARNING,
    Findings,
    Numbers,
    at_least,
    at_most,
    between,
    finding,
    less,
    more,
    over,
    under,
)
from tapmodel.design.provenance import GEOMETRY, OWN_RULE
from tapmodel.design.record import TapDesign
from tapmodel.design.rules.context import Context

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
    thread = design.tap.thread
    least = LEAST_FLAT * thread.pitch
    flanks = thread.flanks
    rounded = thread.rounded_crest
    crest = thread.crest_radius if rounded else thread.crest_flat
    if under(crest, least):
        height = flanks.arc_height(least) if rounded else flanks.height(least)
        largest = thread.pitch_diameter + height
        levers = (
            less("thread.major", thread.major, largest),
            more(f"thread.crest_{'radius' if rounded else 'flat'}", crest, least),
            more("thread.pitch_diameter", thread.pitch_diameter),
        )
        what = "The crest is too sharp."
        yield finding("crest-flat", ERROR, what, at_least(least, crest), OWN_RULE, levers=levers)
    field = "thread.root_radius" if thread.rounded_root else "thread.root_flat"
    root = thread.root_radius if thread.rounded_root else thread.root_flat
    if under(root, least):
        what = "The root is too sharp."
        levers = (more(field, root, least),)
        yield finding("root-flat", ERROR, what, at_least(least, root), OWN_RULE, levers=levers)
    highest = design.hole.minor_min
    if over(thread.minor, highest):
        depth = thread.pitch_diameter - highest
        most = flanks.radius(depth) if thread.rounded_root else flanks.flat(depth)
        what = "The root of the tap would cut the minor diameter of the hole."
        levers = (less(field, root, most), less("thread.pitch_diameter", thread.pitch_diameter))
        yield finding("root-clearance", ERROR, what, at_most(highest, thread.minor), levers=levers)


def _sizes(design: TapDesign) -> Findings:
    thread, hole = design.tap.thread, design.hole
    if under(thread.major, design.limits.major_min):
        what = "The tap is too small over the crests."
        ends = ("crest_radius", thread.crest_radius), ("crest_flat", thread.crest_flat)
        levers = (
            more("thread.major", thread.major, design.limits.major_min),
            *(less(f"thread.{name}", size) for name, size in ends if size > 0),
        )
        numbers = at_least(design.limits.major_min, thread.major)
        yield finding("major-size", ERROR, what, numbers, levers=levers)
    d2 = thread.pitch_diameter
    field = "thread.pitch_diameter"
    low = d2 < design.limits.pitch_min
    lever = (
        more(field, d2, design.limits.pitch_min)
        if low
        else less(field, d2, design.limits.pitch_max)
    )
    if under(d2, hole.pitch_min) or over(d2, hole.pitch_max):
        numbers = between(hole.pitch_min, hole.pitch_max, d2)
        what = "The pitch diameter lies outside the hole's own limits."
        yield finding("pitch-size", ERROR, what, numbers, levers=(lever,))
    elif under(d2, design.limits.pitch_min) or over(d2, design.limits.pitch_max):
        numbers = between(design.limits.pitch_min, design.limits.pitch_max, d2)
        what = "The pitch diameter lies outside the tap's zone."
        yield finding("pitch-size", WARNING, what, numbers, levers=(lever,))


def _drill(design: TapDesign, context: Context) -> Findings:
    low, high, drill = design.hole.minor_min, design.hole.minor_max, design.drill
    numbers = between(low, high, drill)
    lever = more("hole.drill", drill, low) if drill < low else less("hole.drill", drill, high)
    if drill >= design.tap.thread.pitch_diameter:
        what = "The drill takes away the thread down to the tap's pitch line."
        yield finding("drill-size", ERROR, what, numbers, levers=(lever,))
    elif under(drill, low) or over(drill, high):
        what = "The drill leaves a minor diameter outside its limits."
        yield finding("drill-size", WARNING, what, numbers, levers=(lever,))
    elif not drills_inside(drill, design.tap.thread.pitch, design.hole, context.hole.drill_sets):
        yield finding("drill-between", WARNING, _between_drills(context), numbers, OWN_RULE)


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
    reserve = wear_reserve(design.tap.thread, context.hole)
    if reserve > 0:
        what = (
            f"The tap may wear by {reserve:.4f} mm in pitch diameter before the hole falls below "
            "its least size."
        )
        numbers = between(
            design.hole.pitch_min, design.hole.pitch_max, design.tap.thread.pitch_diameter
        )
        yield finding("wear-reserve", NOTE, what, numbers, GEOMETRY)
