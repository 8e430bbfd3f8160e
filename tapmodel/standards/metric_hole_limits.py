"""Limits of the ISO metric internal thread that a tap is to cut."""

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.hole_class import GRADES, HoleClass
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound
from tapmodel.standards.metric_pitches import check_size
from tapmodel.standards.metric_tolerances import (
    TableValue,
    fundamental_deviation,
    minor_tolerance,
    pitch_tolerance,
)
from tapmodel.standards.thread_forms import METRIC


def metric_hole_limits(diameter: float, pitch: float, hole_class: HoleClass) -> HoleLimitsFound:
    """Limits of an internal thread, by printed table where there is one, else by formula.

    Args:
        diameter: nominal diameter D, 1 to 300 [mm].
        pitch: P, 0.2 to 8 and at most D/2 [mm].
        hole_class: grades of pitch and minor diameter with the position, e.g. 6H or 5H6H.

    Raises:
        InputError: size out of range, or a grade so wide that the minor diameter could reach
            the pitch diameter, or the pitch diameter the major diameter.

    Source: ISO 965-1:2013 tables 1, 2, 4, else clause 13 of ISO 965-1:1998; basic sizes by
    ISO 68-1 rounded to 0.001 mm as ISO 724 prints them.
    """
    check_size(diameter, pitch)
    values = {
        "pitch-diameter tolerance": pitch_tolerance(diameter, pitch, hole_class.pitch_grade),
        "minor-diameter tolerance": minor_tolerance(pitch, hole_class.minor_grade),
        "fundamental deviation": fundamental_deviation(pitch, hole_class.position),
    }
    limits = _limits(diameter, pitch, *(value.micrometres for value in values.values()))
    _check_nested(limits, diameter, pitch, hole_class)
    computed = [name for name, value in values.items() if not value.printed]
    return HoleLimitsFound(
        limits=limits,
        listed=not computed,
        sources=_sources(tuple(values.values())),
        note=_note(diameter, pitch, hole_class, computed),
        deviation=values["fundamental deviation"].micrometres / 1000,
    )


def _limits(
    diameter: float, pitch: float, pitch_um: int, minor_um: int, deviation_um: int
) -> HoleLimits:
    """Basic sizes [mm] plus deviation and tolerances [µm]; whole micrometres throughout."""
    deviation = deviation_um / 1000
    pitch_min = METRIC.pitch_diameter(diameter, pitch) + deviation
    minor_min = METRIC.minor_diameter(diameter, pitch) + deviation
    # The sums are whole micrometres (the major diameter as fine as it was given); rounding only
    # takes away the noise of binary fractions.
    return HoleLimits(
        major_min=round(diameter + deviation, 9),
        pitch_min=round(pitch_min, 3),
        pitch_max=round(pitch_min + pitch_um / 1000, 3),
        minor_min=round(minor_min, 3),
        minor_max=round(minor_min + minor_um / 1000, 3),
    )


def _check_nested(limits: HoleLimits, diameter: float, pitch: float, hole_class: HoleClass) -> None:
    """Refuse tolerances, always computed ones, that are wider than the thread is deep."""
    if limits.minor_max < limits.pitch_min and limits.pitch_max < limits.major_min:
        return
    above = 1000 * METRIC.pitch_drop * pitch - 1
    below = 1000 * (METRIC.minor_drop - METRIC.pitch_drop) * pitch - 1
    pitch_grade = max(g for g in GRADES if pitch_tolerance(diameter, pitch, g).micrometres < above)
    minor_grade = max(g for g in GRADES if minor_tolerance(pitch, g).micrometres < below)
    raise InputError(
        "hole.class",
        str(hole_class),
        f"for M{diameter:g}x{pitch:g} grades up to {pitch_grade} for the pitch diameter and up to "
        f"{minor_grade} for the minor diameter, as wider tolerances exceed the depth of the thread",
    )


def _sources(values: tuple[TableValue, ...]) -> tuple[Source, ...]:
    """Each source once, in the order of importance."""
    return tuple(dict.fromkeys(value.source for value in values))


def _note(diameter: float, pitch: float, hole_class: HoleClass, computed: list[str]) -> str:
    if not computed:
        return ""
    return (
        f"ISO 965-1 prints no {', '.join(computed)} for M{diameter:g}x{pitch:g} "
        f"{hole_class}: computed by the formulas of its clause 13, rounded to the R40 series and "
        "whole micrometres."
    )
