"""ISO trapezoidal threads, as the design room asks for them."""

from tapmodel.sources import Source
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.cut_tap import cut_class, cut_limits_by
from tapmodel.standards.family_rules import FamilyRules, settled_pitch
from tapmodel.standards.thread_forms import TRAPEZOIDAL
from tapmodel.standards.trapezoidal.hole_limits import trapezoidal_hole_limits
from tapmodel.standards.trapezoidal.pitches import check_size
from tapmodel.words import Certainty


def _settle(designation: Designation) -> Designation:
    """The text says it all; only the range of the program is checked."""
    check_size(designation.text, designation.diameter, settled_pitch(designation))
    return designation


RULES = FamilyRules(
    form=TRAPEZOIDAL,
    settle=_settle,
    hole_limits=trapezoidal_hole_limits,
    tap_class=cut_class,
    tap_limits=cut_limits_by(trapezoidal_hole_limits),
    drop_to_drill=0.95,
    default_class=Source(
        "ISO 2903:1977", "quality medium, normal length of engagement", Certainty.MEMORY
    ),
)
