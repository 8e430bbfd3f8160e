"""Limits of the ISO trapezoidal nut that a tap is to cut."""

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.family_rules import settled_pitch
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound, Unlisted
from tapmodel.standards.metric.tolerances import TableValue
from tapmodel.standards.thread_forms import TRAPEZOIDAL
from tapmodel.standards.trapezoidal.pitches import listed_pairs
from tapmodel.standards.trapezoidal.tolerances import (
    STARTS,
    clearance,
    minor_tolerance,
    pitch_tolerance,
    start_factor,
)
from tapmodel.values import NO_VALUES, Values
from tapmodel.words import Certainty

SIZES = Source("ISO 2904:1977", "D4 = d + 2 a_c, D1 = d - P, D2 = d - P/2", Certainty.MEMORY)


def trapezoidal_hole_limits(designation: Designation) -> HoleLimitsFound:
    """Limits of an internal thread, by printed tolerance where there is one, else by formula.

    Args:
        designation: settled, of class 7H, 8H or 9H.

    Raises:
        InputError: the pitch-diameter tolerance is wider than the thread is deep.

    Source: ISO 2903:1977 and ISO 2904:1977, as the functions it calls.
    """
    diameter, pitch = designation.diameter, settled_pitch(designation)
    grade = int(designation.effective_class[0])
    wide, low = pitch_tolerance(diameter, pitch, grade), minor_tolerance(pitch)
    factor = start_factor(designation.starts)
    pitch_min = diameter - TRAPEZOIDAL.pitch_drop * pitch
    minor_min = diameter - TRAPEZOIDAL.minor_drop * pitch
    # Rounding only takes away the noise of binary fractions, but for the factor of the starts.
    limits = HoleLimits(
        major_min=round(diameter + 2 * clearance(pitch), 6),
        pitch_min=round(pitch_min, 6),
        pitch_max=round(pitch_min + round(wide.micrometres * factor) / 1000, 6),
        minor_min=round(minor_min, 6),
        minor_max=round(minor_min + low.micrometres / 1000, 6),
    )
    if limits.pitch_max >= diameter:
        raise InputError(
            "designation",
            designation.text,
            "a coarser pitch at this diameter, or a closer class than "
            f"{designation.effective_class}: its tolerance exceeds the depth of the thread",
        )
    note = _note(diameter, pitch, (wide, low))
    starts = (STARTS,) if factor > 1 else ()
    sources = (wide.source, low.source, *starts, SIZES, TRAPEZOIDAL.source)
    return HoleLimitsFound(limits, not note, tuple(dict.fromkeys(sources)), note)


def _note(diameter: float, pitch: float, tolerances: tuple[TableValue, ...]) -> Values:
    why: list[str] = []
    if (diameter, pitch) not in listed_pairs():
        why.append(Unlisted.TRAPEZOIDAL_PITCH)
    if not all(value.printed for value in tolerances):
        why.append(Unlisted.TRAPEZOIDAL_TOLERANCES)
    return Values(why=tuple(why), diameter=diameter, pitch=pitch) if why else NO_VALUES
