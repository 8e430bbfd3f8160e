"""Rules on the thread profile, its limits and the drill."""

from tapmodel.designing.choose.drill import drills_inside, neighbours, percentage_left
from tapmodel.designing.choose.hole import engagement_allowed
from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
    ERROR,
    NOTE,
    WARNING,
    Findings,
    at_least,
    at_most,
    between,
    exactly,
    finding,
    less,
    more,
    over,
    under,
)
from tapmodel.designing.limits.crests import MOST_OVER
from tapmodel.designing.provenance import GEOMETRY, OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.context import Context
from tapmodel.findings import Held, Limit
from tapmodel.spec.units import Unit
from tapmodel.standards.drill_sets import LARGEST_DRILL
from tapmodel.values import Value, Values

LEAST_FLAT = 0.02
"""Least crest and root flat in pitches; below that the profile is a knife edge."""

MOST_UNDER = 0.6
"""Of the tap's root under the least minor diameter of the hole, in pitches: the grooves of all
thread forms with the least nose reach that or less (ISO metric: 0.40), and deeper ones hold no
chip better but make teeth and web weaker."""

MOST_TAPER = 0.2
"""Loss of diameter towards the shank [mm in 100 mm]: twice the most that is usual."""


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the thread.

    Source: each names its own.
    """
    yield from _ends(design)
    if not design.roughs:
        yield from _sizes(design)
    yield from _back_taper(design)
    yield from _drill(design, context)
    yield from _engagement(design, context)
    yield from _origin(design, context)


def _ends(design: TapDesign) -> Findings:
    thread = design.tap.thread
    least = LEAST_FLAT * thread.pitch
    flanks = thread.flanks
    rounded = thread.rounded_crest
    crest = thread.crest_radius if rounded else thread.crest_flat
    if under(crest, least):
        field = f"thread.crest_{'radius' if rounded else 'flat'}"
        height = flanks.arc_height(least) if rounded else flanks.height(least)
        largest = thread.pitch_diameter + height
        levers = (
            less("thread.major", thread.major, largest),
            more(field, crest, least),
            more("thread.pitch_diameter", thread.pitch_diameter),
        )
        limit = at_least(least)
        yield finding(Code.CREST_FLAT, ERROR, field, crest, limit, OWN_RULE, levers=levers)
    field = "thread.root_radius" if thread.rounded_root else "thread.root_flat"
    root = thread.root_radius if thread.rounded_root else thread.root_flat
    if under(root, least):
        levers = (more(field, root, least),)
        yield finding(Code.ROOT_FLAT, ERROR, field, root, at_least(least), OWN_RULE, levers=levers)
    highest = design.hole.minor_min
    if over(thread.minor, highest):
        depth = thread.pitch_diameter - highest
        most = flanks.radius(depth) if thread.rounded_root else flanks.flat(depth)
        levers = (less(field, root, most), less("thread.pitch_diameter", thread.pitch_diameter))
        judged, limit = "thread.minor", at_most(highest)
        yield finding(Code.ROOT_CLEARANCE, ERROR, judged, thread.minor, limit, levers=levers)


def _sizes(design: TapDesign) -> Findings:
    thread, hole = design.tap.thread, design.hole
    major = thread.major
    if under(major, design.limits.major_min):
        ends = ("crest_radius", thread.crest_radius), ("crest_flat", thread.crest_flat)
        levers = (
            more("thread.major", major, design.limits.major_min),
            *(less(f"thread.{name}", size) for name, size in ends if size > 0),
        )
        limit = at_least(design.limits.major_min)
        yield finding(Code.MAJOR_SIZE, ERROR, "thread.major", major, limit, levers=levers)
    yield from _depths(design)
    d2 = thread.pitch_diameter
    field = "thread.pitch_diameter"
    low = d2 < design.limits.pitch_min
    lever = (
        more(field, d2, design.limits.pitch_min)
        if low
        else less(field, d2, design.limits.pitch_max)
    )
    if under(d2, hole.pitch_min) or over(d2, hole.pitch_max):
        limit = between(hole.pitch_min, hole.pitch_max)
        yield finding(Code.PITCH_SIZE, ERROR, field, d2, limit, levers=(lever,))
    elif under(d2, design.limits.pitch_min) or over(d2, design.limits.pitch_max):
        limit = between(design.limits.pitch_min, design.limits.pitch_max)
        yield finding(Code.PITCH_SIZE, WARNING, field, d2, limit, levers=(lever,))


def _depths(design: TapDesign) -> Findings:
    """Crests and roots that go much deeper than the thread of the hole asks for."""
    thread, flanks = design.tap.thread, design.tap.thread.flanks
    most = design.limits.major_min + MOST_OVER * thread.pitch
    if over(thread.major, most):
        height = (most - thread.pitch_diameter) / 2
        crest = (
            more("thread.crest_radius", thread.crest_radius)
            if thread.rounded_crest
            else more("thread.crest_flat", thread.crest_flat, flanks.flat(2 * height))
        )
        field, levers = "thread.major", (less("thread.major", thread.major, most), crest)
        limit = at_most(most)
        yield finding(
            Code.MAJOR_LARGE, WARNING, field, thread.major, limit, OWN_RULE, levers=levers
        )
    least = design.hole.minor_min - MOST_UNDER * thread.pitch
    if under(thread.minor, least):
        depth = thread.pitch_diameter - least
        root = (
            more("thread.root_radius", thread.root_radius, flanks.radius(depth))
            if thread.rounded_root
            else more("thread.root_flat", thread.root_flat, flanks.flat(depth))
        )
        field, limit = "thread.minor", at_least(least)
        yield finding(Code.ROOT_DEEP, WARNING, field, thread.minor, limit, OWN_RULE, levers=(root,))


def _back_taper(design: TapDesign) -> Findings:
    field, taper = "thread.back_taper", design.tap.thread.back_taper
    if over(taper, MOST_TAPER):
        limit, levers = at_most(MOST_TAPER, Unit.IN_100), (less(field, taper, MOST_TAPER),)
        values = Values(by=2 * design.tap.thread.narrowing * design.tap.thread.lead)
        yield finding(
            Code.BACK_TAPER, WARNING, field, taper, limit, OWN_RULE, values=values, levers=levers
        )


def _drill(design: TapDesign, context: Context) -> Findings:
    low, high, drill = design.hole.minor_min, design.hole.minor_max, design.drill
    field, limit = "hole.drill", between(low, high)
    # One that is sold comes first: a limit to the micrometre is nothing to drill with.
    levers = (
        exactly(field, context.hole.ruled_drill),
        more(field, drill, low) if drill < low else less(field, drill, high),
    )
    # Below the tap's roots no tooth cuts: its cone would have to press its way in.
    if drill >= design.tap.thread.pitch_diameter or under(drill, design.tap.thread.minor):
        yield finding(Code.DRILL_SIZE, ERROR, field, drill, limit, levers=levers)
    elif under(drill, low) or over(drill, high):
        yield finding(Code.DRILL_SIZE, WARNING, field, drill, limit, levers=levers)
    elif not drills_inside(drill, design.tap.thread.pitch, design.hole, context.hole.drill_sets):
        # Whoever has only the drills that the rule counts on was told by the choice to bore.
        usual = context.hole.drill_sets == context.hole.ruled_sets
        if usual and low > LARGEST_DRILL:
            return
        values, severity = _next_drills(context), NOTE if usual else WARNING
        yield finding(Code.DRILL_BETWEEN, severity, field, drill, limit, OWN_RULE, values=values)


def _engagement(design: TapDesign, context: Context) -> Findings:
    """A wish that the minor limits cut short; what the drill leaves instead stands with it."""
    field, hole = "hole.engagement", context.hole
    wanted = design.number(field)
    if wanted is None:
        return
    least, most = engagement_allowed(hole.thread, hole.rules, hole.found.limits)
    if under(wanted, least) or over(wanted, most):
        short = wanted < least
        lever = more(field, wanted, least) if short else less(field, wanted, most)
        left = percentage_left(design).of_engagement
        values = Values(drill=design.drill, left=left)
        limit = between(least, most, "%")
        yield finding(
            Code.ENGAGEMENT_WISH, WARNING, field, wanted, limit, values=values, levers=(lever,)
        )


def _next_drills(context: Context) -> Values:
    """The sets on hand, and their drills on both sides of the minor limits by name and size."""
    below, above = neighbours(context.hole.found.limits, context.hole.drill_sets)
    held: dict[str, Value] = {"sets": context.hole.drill_sets}
    for drill, side in ((below, "below"), (above, "above")):
        if drill is not None:
            held |= {side: drill.name, f"{side}_size": drill.diameter}
    return Values(**held)


def _origin(design: TapDesign, context: Context) -> Findings:
    found = context.hole.found
    if found.beyond_scope or not found.listed:
        code, severity = Code.UNLISTED_PAIR, NOTE
        if found.beyond_scope:
            code, severity = Code.BEYOND_SCOPE, WARNING
        pair, limit = design.designation, Limit(held=Held.LISTED_PAIR)
        source, values = found.sources[0], found.note
        yield finding(code, severity, "designation", pair, limit, source, values=values)
    if design.wear_reserve > 0 and not design.roughs:
        field, d2 = "thread.pitch_diameter", design.tap.thread.pitch_diameter
        limit = between(design.hole.pitch_min, design.hole.pitch_max)
        values = Values(by=design.wear_reserve)
        yield finding(Code.WEAR_RESERVE, NOTE, field, d2, limit, GEOMETRY, values=values)
