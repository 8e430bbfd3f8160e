"""The tap's own thread: limits, aimed size, crest and root."""

import math
from dataclasses import dataclass, replace

from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.ledger import Ledger, by_rule
from tapmodel.designing.choose.steps import down, step_for, up
from tapmodel.designing.codes import Code
from tapmodel.designing.judging import ERROR, at_least, at_most, finding, less, more
from tapmodel.designing.limits.crests import sharpest
from tapmodel.designing.provenance import OWN_RULE, PRACTICE
from tapmodel.errors import NoTapError
from tapmodel.standards.limits import TapLimits
from tapmodel.tap.flanks import Flanks
from tapmodel.tap.tap import TapThread
from tapmodel.values import Values

PHASE = 0.31
"""First crest middle in pitches behind the front: no corner of the profile falls on the front."""

ROOT_CLEARANCE = 0.02
"""Least radial gap that a rule leaves between the tap's root and the hole's crest, in pitches."""

STEEP_FLANK = 25.0
"""Flank angle [deg] from which on a root flat of P/8 lies well below the hole's crest."""

AIM_RULE = by_rule("aim-middle", OWN_RULE)
ROOT_RULE = by_rule("root-common-tool", PRACTICE)
NARROW_ROOT_RULE = by_rule("root-narrow", OWN_RULE, clearance=ROOT_CLEARANCE)
WIDE_ROOT_RULE = by_rule("root-widest", OWN_RULE, clearance=ROOT_CLEARANCE)
ROUND_ROOT_RULE = by_rule("root-rounded", OWN_RULE, clearance=ROOT_CLEARANCE)


@dataclass(frozen=True, slots=True)
class _End:
    """Crest or root of the profile [mm]: its diameter, and either a flat or an arc."""

    diameter: float
    flat: float = 0.0
    radius: float = 0.0
    rounded: bool = False


def tap_thread(hole: TappedHole, ledger: Ledger) -> tuple[TapThread, TapLimits]:
    """Settle the tap's profile and its limits.

    A tap of a set that goes before another has flat crests, may end below the pitch line, and has
    limits about its own sizes: the zone of its class, moved there.

    With half the flank's included angle a: `crest_flat = P/2 - (major - d2)*tan(a)` and
    `minor = d2 - (P/2 - root_flat)/tan(a)`; an arc of radius R ends `R*(1/sin(a) - 1)` before the
    place where the flanks would meet, `P/(4*tan(a))` from the pitch line.

    Raises:
        NoTapError: no depth is left above or below the pitch line.

    Source: limits by the family's standard; profile derived here for the tap's crest and root.
    """
    limits = _limits(hole, ledger)
    pitch_diameter = _pitch_diameter(limits, ledger)
    lean = math.radians(hole.rules.form.flank_angle)
    flanks = Flanks(hole.pitch, pitch_diameter, lean)
    crest, root = _crest(hole, flanks, limits, ledger), _root(hole, flanks, ledger)
    _refuse_no_depth(crest, root, flanks, root.diameter if roughs(ledger) else flanks.diameter)
    thread = TapThread(
        pitch=hole.pitch,
        starts=hole.starts,
        hand=hole.hand,
        flank_angle=hole.rules.form.flank_angle,
        major=crest.diameter,
        pitch_diameter=pitch_diameter,
        minor=root.diameter,
        rounded_crest=crest.rounded,
        rounded_root=root.rounded,
        first_z=PHASE * hole.pitch,
        back_taper=ledger.given("thread.back_taper") or 0.0,
    )
    return thread, _about(thread, limits) if roughs(ledger) else limits


def roughs(ledger: Ledger) -> bool:
    """Whether the tap is one of a set that goes before another."""
    number, taps = ledger.peek("set.number"), ledger.peek("set.taps")
    return number is not None and taps is not None and number < taps


def _about(thread: TapThread, limits: TapLimits) -> TapLimits:
    """The zone of the pitch diameter about that of the tap, and as wide a one below its crests.

    It ends where that of the last tap begins: of two taps in limits the last cuts all flanks.
    """
    width = _width(limits)
    low, high = thread.pitch_diameter - width / 2, thread.pitch_diameter + width / 2
    high = min(high, max(thread.pitch_diameter, limits.pitch_min))
    return replace(limits, pitch_min=low, pitch_max=high, major_min=thread.major - width)


def _refuse_no_depth(crest: _End, root: _End, flanks: Flanks, least: float) -> None:
    """Crest above, root below the pitch line; else there is no thread that a rule could judge.

    `least` is what the crest must exceed [mm].
    """
    pitch_diameter, pitch = flanks.diameter, flanks.pitch
    if root.diameter >= pitch_diameter:
        field, size, most = "thread.root_flat", root.flat, pitch / 2
        if root.rounded:
            field, size, most = "thread.root_radius", root.radius, flanks.sharp / flanks.short
        judged, levers = (field, size, at_most(most)), (less(field, size, pitch / 8),)
        values = Values(pitch=pitch)
        raise NoTapError(finding(Code.THREAD_DEPTH, ERROR, *judged, values=values, levers=levers))
    if crest.diameter <= least:
        levers = (
            more("thread.major", crest.diameter),
            less("thread.pitch_diameter", pitch_diameter),
            *(
                less(f"thread.crest_{name}", size)
                for name, size in (("flat", crest.flat), ("radius", crest.radius))
                if size > 0
            ),
        )
        judged = ("thread.major", crest.diameter, at_least(least))
        raise NoTapError(finding(Code.THREAD_HEIGHT, ERROR, *judged, levers=levers))


def _limits(hole: TappedHole, ledger: Ledger) -> TapLimits:
    rules = hole.rules
    fitting = rules.tap_class(hole.thread)
    source = rules.tap_limits(hole.thread, fitting).source
    rule = by_rule("tap-class-only", source)
    if hole.thread.effective_class:
        rule = by_rule("tap-class-for-hole", source, hole_class=hole.thread.effective_class)
    ground = rules.ground_class(hole.thread)
    if ground is not None:
        cut = _width(rules.tap_limits(hole.thread, fitting))
        narrow = _width(rules.tap_limits(hole.thread, str(ground)))
        rule = by_rule("tap-class-cut-or-ground", source, cut=cut, ground=ground, narrow=narrow)
    chosen = ledger.word_or_number("thread.tap_class", fitting, rule)
    return rules.tap_limits(hole.thread, str(chosen))


def _width(limits: TapLimits) -> float:
    """Of the pitch diameter's zone [mm]."""
    return limits.pitch_max - limits.pitch_min


def _pitch_diameter(limits: TapLimits, ledger: Ledger) -> float:
    given = ledger.given("thread.pitch_diameter")
    if given is not None:
        return given
    aim = ledger.number("thread.aim", 0.5, AIM_RULE)
    return limits.pitch_min + aim * (limits.pitch_max - limits.pitch_min)


def _crest(hole: TappedHole, flanks: Flanks, limits: TapLimits, ledger: Ledger) -> _End:
    flat, radius = ledger.given("thread.crest_flat"), ledger.given("thread.crest_radius")
    if flat is not None:
        return _End(flanks.diameter + flanks.height(flat), flat=flat)
    if radius is not None:
        major = flanks.diameter + flanks.arc_height(radius)
        return _End(major, radius=radius, rounded=True)
    rounded = hole.rules.form.crest_radius > 0 and not roughs(ledger)
    major = _major(limits, flanks, rounded=rounded, ledger=ledger)
    height = major - flanks.diameter
    if rounded:
        return _End(major, radius=flanks.radius(height), rounded=True)
    return _End(major, flat=flanks.flat(height))


def _major(limits: TapLimits, flanks: Flanks, *, rounded: bool, ledger: Ledger) -> float:
    pitch = flanks.pitch
    step = step_for(0.01, 0.02 * pitch)
    wanted = up(limits.major_min + 0.02 * pitch, step)
    rule = by_rule("major-to-turn-to", OWN_RULE, least=limits.major_min, step=step, rounded=rounded)
    ruled = max(min(wanted, sharpest(flanks, rounded=rounded)), limits.major_min)
    return ledger.number("thread.major", round(ruled, 6), rule)


def _root(hole: TappedHole, flanks: Flanks, ledger: Ledger) -> _End:
    form, pitch = hole.rules.form, hole.pitch
    if ledger.has("thread.root_flat") or (
        form.root_radius == 0 and not ledger.has("thread.root_radius")
    ):
        flat = _root_flat(hole, flanks, ledger)
        return _End(flanks.diameter - flanks.height(flat), flat=flat)
    depth = flanks.diameter - _clear_root(hole)
    largest = flanks.radius(depth)
    own = form.root_radius * pitch
    ruled = own if own <= largest else down(largest, step_for(0.01, 0.02 * pitch))
    radius = ledger.number("thread.root_radius", round(ruled, 6), ROUND_ROOT_RULE)
    minor = flanks.diameter - flanks.arc_height(radius)
    return _End(minor, radius=radius, rounded=True)


def _root_flat(hole: TappedHole, flanks: Flanks, ledger: Ledger) -> float:
    widest = flanks.flat(flanks.diameter - _clear_root(hole))
    if hole.rules.form.flank_angle < STEEP_FLANK:
        return ledger.number("thread.root_flat", down(widest, 0.01), WIDE_ROOT_RULE)
    usual = round(hole.pitch / 8, 6)
    if usual <= widest:
        return ledger.number("thread.root_flat", usual, ROOT_RULE)
    return ledger.number("thread.root_flat", down(widest, 1e-4), NARROW_ROOT_RULE)


def _clear_root(hole: TappedHole) -> float:
    return hole.found.limits.minor_min - 2 * ROOT_CLEARANCE * hole.pitch
