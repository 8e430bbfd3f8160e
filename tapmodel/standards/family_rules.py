"""The record by which the design room asks any family of threads for its sizes and limits."""

from collections.abc import Callable
from dataclasses import dataclass

from tapmodel.sources import Source
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.limits import HoleLimitsFound, TapLimits
from tapmodel.standards.thread_forms import ThreadForm


@dataclass(frozen=True, slots=True)
class FamilyRules:
    """One family of threads. All functions take a settled designation: its pitch is known.

    Attributes:
        form: basic profile.
        settle: fills in the pitch and the series that a text leaves to the standard. Raises
            InputError when the standard has no such pairing or the size is out of range.
        hole_limits: of a settled designation with its class. Raises InputError.
        tap_class: the class of tap that suits the hole; the first choice of a maker who cuts the
            thread on a lathe.
        ground_class: that of the ground taps which the standard has for the hole, by the number of
            its class, None for none.
        tap_limits: of a settled designation and a class of tap. Raises InputError that names
            `thread.tap_class` and the allowed ones.
        drop_to_drill: nominal diameter less the drill aimed at, in pitches; the drill is then held
            inside the minor limits.
        default_class: who says which class is meant when none is written.
    """

    form: ThreadForm
    settle: Callable[[Designation], Designation]
    hole_limits: Callable[[Designation], HoleLimitsFound]
    tap_class: Callable[[Designation], str]
    tap_limits: Callable[[Designation, str], TapLimits]
    drop_to_drill: float
    default_class: Source
    ground_class: Callable[[Designation], int | None] = lambda _designation: None


def settled_pitch(designation: Designation) -> float:
    """The pitch of a settled designation [mm].

    Raises:
        ValueError: when it is not settled.
    """
    if designation.pitch is None:
        raise ValueError(designation.text)
    return designation.pitch
