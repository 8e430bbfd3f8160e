"""The tap's own thread: limits, aimed size, crest and root."""

import math

from tapmodel.design.hole import TappedHole
from tapmodel.design.ledger import Ledger, Rule
from tapmodel.design.provenance import OWN_RULE, PRACTICE
from tapmodel.design.tap_design import TapThread
from tapmodel.errors import RefusedError
from tapmodel.standards.limits import TapLimits
from tapmodel.standards.tap_limits import metric_tap_limits, tap_class_for

FLANK_ANGLE = 30.0
PHASE = 0.31
"""First crest middle in pitches behind the front: no corner of the profile falls on the front."""

LEAST_RULED_CREST = 1 / 16
"""A rule never leaves a crest narrower than this, in pitches."""

AIM_RULE = Rule(
    "middle of the zone: as far from the upper limit as from the lower when the last infeed is set",
    OWN_RULE,
    "",
)
ROOT_RULE = Rule(
    "a nose flat of P/8, the least that common threading tools leave; the root cuts nothing",
    PRACTICE,
)


def tap_thread(hole: TappedHole, ledger: Ledger) -> TapThread:
    """Settle the tap's profile.

    With half the flank's included angle a: `crest_flat = P/2 - (major - d2)*tan(a)` and
    `minor = d2 - (P/2 - root_flat)/tan(a)`.

    Raises:
        RefusedError: no depth is left above or below the pitch line.

    Source: limits by ISO 2857 (from memory); profile ISO 68-1, derived here for its flats.
    """
    limits = _limits(hole, ledger)
    pitch_diameter = _pitch_diameter(limits, ledger)
    tangent = math.tan(math.radians(FLANK_ANGLE))
    crest_flat = ledger.given("thread.crest_flat")
    if crest_flat is None:
        major = _major(limits, pitch_diameter, hole.pitch, ledger)
    else:
        major = pitch_diameter + (hole.pitch / 2 - crest_flat) / tangent
    root_flat = ledger.number("thread.root_flat", round(hole.pitch / 8, 6), ROOT_RULE)
    _refuse_no_depth(major, pitch_diameter, root_flat, hole.pitch)
    return TapThread(
        pitch=hole.pitch,
        lead=hole.starts * hole.pitch,
        starts=hole.starts,
        hand=hole.hand,
        flank_angle=FLANK_ANGLE,
        major=major,
        major_min=limits.major_min,
        pitch_diameter=pitch_diameter,
        pitch_min=limits.pitch_min,
        pitch_max=limits.pitch_max,
        minor=pitch_diameter - (hole.pitch / 2 - root_flat) / tangent,
        crest_flat=hole.pitch / 2 - (major - pitch_diameter) * tangent,
        root_flat=root_flat,
        crest_radius=0.0,
        root_radius=0.0,
        first_z=PHASE * hole.pitch,
    )


def _refuse_no_depth(major: float, pitch_diameter: float, root_flat: float, pitch: float) -> None:
    """Crest above, root below the pitch line; else there is no thread that a rule could judge."""
    if root_flat >= pitch / 2:
        raise RefusedError(
            f"thread: a root flat of {root_flat:g} mm leaves no depth at pitch {pitch:g} mm; give "
            f"thread.root_flat about {pitch / 8:g} mm, less than {pitch / 2:g} mm"
        )
    if major <= pitch_diameter:
        raise RefusedError(
            f"thread: the major diameter {major:g} mm does not exceed the pitch diameter "
            f"{pitch_diameter:g} mm; give a larger thread.major or smaller thread.crest_flat"
        )


def _limits(hole: TappedHole, ledger: Ledger) -> TapLimits:
    fitting = tap_class_for(hole.hole_class)
    limits = metric_tap_limits(hole.diameter, hole.pitch, fitting)
    why = f"the tap class for holes of class {hole.hole_class}"
    tap_class = ledger.whole("thread.tap_class", fitting, Rule(why, limits.source, ""))
    return metric_tap_limits(hole.diameter, hole.pitch, tap_class)


def _pitch_diameter(limits: TapLimits, ledger: Ledger) -> float:
    given = ledger.given("thread.pitch_diameter")
    if given is not None:
        return given
    aim = ledger.number("thread.aim", 0.5, AIM_RULE)
    return limits.pitch_min + aim * (limits.pitch_max - limits.pitch_min)


def _major(limits: TapLimits, pitch_diameter: float, pitch: float, ledger: Ledger) -> float:
    tangent = math.tan(math.radians(FLANK_ANGLE))
    sharpest = pitch_diameter + pitch * (1 / 2 - LEAST_RULED_CREST) / tangent
    wanted = math.ceil(round((limits.major_min + 0.02 * pitch) * 100, 6)) / 100
    why = (
        f"least allowed {limits.major_min:g} mm plus 0.02 P to turn to, up to the next 0.01 mm, "
        "unless the crest would be narrower than P/16"
    )
    ruled = max(min(wanted, sharpest), limits.major_min)
    return ledger.number("thread.major", round(ruled, 6), Rule(why, OWN_RULE))


def wear_reserve(thread: TapThread, hole: TappedHole) -> float:
    """How far the pitch diameter may wear before the hole falls below its least size [mm].

    Source: derived here: aimed pitch diameter less the hole's least pitch diameter.
    """
    return thread.pitch_diameter - hole.found.limits.pitch_min
