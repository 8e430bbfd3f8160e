"""Limits of a lathe-cut tap for threads whose standards give none for taps."""

from collections.abc import Callable

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound, TapLimits
from tapmodel.words import Certainty

CUT = "cut"

ZONE = (0.2, 0.5)
"""Pitch-diameter zone over the hole's least size, in the hole's pitch-diameter tolerance."""

MAJOR_FRACTION = 0.2
"""Least major diameter over the hole's least one, likewise: the tap at its least is the basic
profile moved outwards bodily, so that the crest of a screw at its largest still clears."""

SOURCE = Source(
    "tapmodel",
    "rule of this program: cut from 20 % to 50 % of the hole's pitch-diameter tolerance; the lower "
    "fifth is kept for wear, the upper half for a hole cut larger than the tap",
    Certainty.DERIVED,
)


def cut_class(_designation: Designation) -> str:
    """The only class of tap, whatever the class of the hole."""
    return CUT


def cut_limits_by(
    hole_limits: Callable[[Designation], HoleLimitsFound],
) -> Callable[[Designation, str], TapLimits]:
    """Tap limits of a family whose holes have the limits that `hole_limits` finds."""
    return lambda designation, tap_class: cut_tap_limits(hole_limits(designation).limits, tap_class)


def cut_tap_limits(hole: HoleLimits, tap_class: str) -> TapLimits:
    """Limits of a tap cut on a lathe, from those of the hole [mm].

    Raises:
        InputError: the class is not "cut".

    Source: rule of this program; no standard known to it gives limits of such taps.
    """
    if tap_class.strip().lower() != CUT:
        raise InputError("thread.tap_class", tap_class, f"{CUT}, the only class of this family")
    tolerance = hole.pitch_max - hole.pitch_min
    lower, upper = ZONE
    return TapLimits(
        tap_class="cut thread, by a rule of this program",
        pitch_min=hole.pitch_min + lower * tolerance,
        pitch_max=hole.pitch_min + upper * tolerance,
        major_min=hole.major_min + MAJOR_FRACTION * tolerance,
        source=SOURCE,
    )
