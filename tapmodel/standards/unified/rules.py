"""Unified threads, as the design room asks for them."""

from tapmodel.sources import Source
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.family_rules import FamilyRules, settled_pitch
from tapmodel.standards.inches import inches, printed, threads_per_inch
from tapmodel.standards.limits import HoleLimitsFound, TapLimits
from tapmodel.standards.thread_forms import UNIFIED
from tapmodel.standards.unified.hole_limits import UnifiedThread, unified_hole_limits
from tapmodel.standards.unified.series import settle
from tapmodel.standards.unified.tap_limits import unified_tap_limits
from tapmodel.words import Certainty


def _thread(designation: Designation) -> UnifiedThread:
    return UnifiedThread(
        diameter=printed(inches(designation.diameter), 4),
        tpi=threads_per_inch(settled_pitch(designation)),
        series=designation.series,
    )


def _hole_limits(designation: Designation) -> HoleLimitsFound:
    return unified_hole_limits(_thread(designation), designation.effective_class)


def _tap_class(designation: Designation) -> str:
    """Cut thread for every class of hole: it lies inside the zone of 3B too."""
    del designation
    return "cut"


def _tap_limits(designation: Designation, tap_class: str) -> TapLimits:
    return unified_tap_limits(_thread(designation), tap_class)


RULES = FamilyRules(
    form=UNIFIED,
    settle=settle,
    hole_limits=_hole_limits,
    tap_class=_tap_class,
    tap_limits=_tap_limits,
    drop_to_drill=1.0,
    default_class=Source("ASME B1.1", "class 2B is the one in general use", Certainty.MEMORY),
)
