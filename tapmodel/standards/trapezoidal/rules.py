"""ISO trapezoidal threads, as the design room asks for them."""

from dataclasses import replace

from tapmodel.errors import MeantError
from tapmodel.sources import Source
from tapmodel.spec.designations.record import Designation
from tapmodel.spec.designations.refusal import MAX_STARTS
from tapmodel.spec.designations.trapezoidal import COARSEST, write
from tapmodel.standards.cut_tap import cut_class, cut_limits_by
from tapmodel.standards.family_rules import FamilyRules, settled_pitch
from tapmodel.standards.thread_forms import TRAPEZOIDAL
from tapmodel.standards.trapezoidal.hole_limits import trapezoidal_hole_limits
from tapmodel.standards.trapezoidal.pitches import check_size, listed_pairs
from tapmodel.words import Certainty


def _settle(designation: Designation) -> Designation:
    """The text says it all; only the range of the program is checked."""
    _offer_starts(designation)
    check_size(designation.text, designation.diameter, settled_pitch(designation))
    return designation


def _offer_starts(designation: Designation) -> None:
    """Offer a length too long for a pitch as the lead of several starts, of the listed pitches.

    Raises:
        MeantError: with those threads.
    """
    diameter, lead = designation.diameter, settled_pitch(designation)
    if designation.starts > 1 or lead <= COARSEST * diameter:
        return
    parts = [(starts, lead / starts) for starts in range(2, MAX_STARTS + 1)]
    offers = [
        write(replace(designation, pitch=pitch, starts=starts))
        for starts, pitch in parts
        if (diameter, pitch) in listed_pairs()
    ]
    if offers:
        several = " or ".join(offers)
        raise MeantError("designation", designation.text, f"{several}: lead, and pitch behind P")


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
