"""ISO metric threads, as the design room asks for them."""

from dataclasses import replace

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.designations.record import Designation
from tapmodel.spec.hole_class import parse_hole_class
from tapmodel.standards.cut_tap import CUT, cut_class, cut_tap_limits
from tapmodel.standards.family_rules import FamilyRules, settled_pitch
from tapmodel.standards.limits import HoleLimitsFound, TapLimits
from tapmodel.standards.metric.hole_limits import metric_hole_limits
from tapmodel.standards.metric.pitches import coarse_pitch, within_scope
from tapmodel.standards.metric.tap_limits import (
    D_NUMBERS,
    LARGEST_D_NUMBER,
    d_number_limits,
    metric_tap_limits,
    tap_class_for,
)
from tapmodel.standards.thread_forms import METRIC
from tapmodel.words import Certainty


def _settle(designation: Designation) -> Designation:
    if designation.pitch is not None:
        return designation
    return replace(designation, pitch=coarse_pitch(designation.diameter, designation.suffixes))


def _hole_limits(designation: Designation) -> HoleLimitsFound:
    hole_class = parse_hole_class(designation.effective_class)
    return metric_hole_limits(designation.diameter, settled_pitch(designation), hole_class)


def _ground_class(designation: Designation) -> int | None:
    """That of ISO 2857, as far as ISO 965-1 reaches."""
    if not within_scope(designation.diameter, settled_pitch(designation)):
        return None
    return tap_class_for(parse_hole_class(designation.effective_class))


def _tap_limits(designation: Designation, tap_class: str) -> TapLimits:
    diameter, pitch, word = designation.diameter, settled_pitch(designation), tap_class.upper()
    if word in ("1", "2", "3"):
        return metric_tap_limits(diameter, pitch, int(word))
    if word == CUT.upper():
        return cut_tap_limits(_hole_limits(designation).limits, tap_class)
    if diameter <= LARGEST_D_NUMBER and word in D_NUMBERS:
        return d_number_limits(diameter, pitch, int(word[1:]))
    raise InputError(
        "thread.tap_class",
        tap_class,
        f"{CUT}, a rule of this program for a lathe-cut tap; of ground taps 1, 2 or 3 of ISO 2857, "
        f"or {D_NUMBERS[0]} to {D_NUMBERS[-1]} of ASME B94.9 up to {LARGEST_D_NUMBER:g} mm",
    )


RULES = FamilyRules(
    form=METRIC,
    settle=_settle,
    hole_limits=_hole_limits,
    tap_class=cut_class,
    tap_limits=_tap_limits,
    drop_to_drill=1.0,
    default_class=Source("ISO 965-1", "", Certainty.MEMORY),
    ground_class=_ground_class,
)
