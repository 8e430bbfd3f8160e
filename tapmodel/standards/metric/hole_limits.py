"""Limits of the ISO metric internal thread that a tap is to cut."""

from typing import NoReturn

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.hole_class import GRADES, HoleClass
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound, Unlisted
from tapmodel.standards.metric.pitches import MIN_PITCH, check_size, within_scope
from tapmodel.standards.metric.tolerances import (
    TableValue,
    fundamental_deviation,
    minor_tolerance,
    pitch_tolerance,
)
from tapmodel.standards.thread_forms import METRIC
from tapmodel.values import NO_VALUES, Values

FINE_STEP = 0.001
"""Step in which the finest pitch of a diameter is named [mm]."""


def metric_hole_limits(diameter: float, pitch: float, hole_class: HoleClass) -> HoleLimitsFound:
    """Limits of an internal thread, by printed table where there is one, else by formula.

    Args:
        diameter: nominal diameter D, 0.3 to 300 [mm].
        pitch: P, 0.05 to 8 and at most D/2 [mm].
        hole_class: grades of pitch and minor diameter with the position, e.g. 6H or 5H6H.

    Raises:
        InputError: size out of range, or a grade so wide that the minor diameter could reach
            the pitch diameter, or the pitch diameter the major diameter; or no grade is narrow
            enough for a pitch so fine on that diameter.

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
        beyond_scope=not within_scope(diameter, pitch),
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
    if limits.nested:
        return
    above, below = _depths(pitch)
    pitch_grades = [g for g in GRADES if pitch_tolerance(diameter, pitch, g).micrometres < above]
    if not pitch_grades:
        _refuse_too_fine(diameter, pitch)
    pitch_grade = max(pitch_grades)
    minor_grade = max(g for g in GRADES if minor_tolerance(pitch, g).micrometres < below)
    raise InputError(
        "hole.class",
        str(hole_class),
        f"for M{diameter:g}x{pitch:g} grades up to {pitch_grade} for the pitch diameter and up to "
        f"{minor_grade} for the minor diameter, as wider tolerances exceed the depth of the thread",
    )


def _depths(pitch: float) -> tuple[float, float]:
    """What a tolerance must stay under [µm]: the depth above and below the pitch line, rounded."""
    above = METRIC.pitch_drop * pitch
    return 1000 * above - 1, 1000 * (METRIC.minor_drop * pitch - above) - 1


def _refuse_too_fine(diameter: float, pitch: float) -> NoReturn:
    """No grade leaves a thread: name the finest pitch of that diameter."""
    steps = (round(n * FINE_STEP, 3) for n in range(round(MIN_PITCH / FINE_STEP), 1000))
    finest = next(p for p in steps if _holds(diameter, p))
    least = pitch_tolerance(diameter, pitch, GRADES[0]).micrometres
    raise InputError(
        "pitch",
        pitch,
        f"{finest:g} mm or coarser for M{diameter:g}: by ISO 965-1 even the finest grade lets the "
        f"pitch diameter of such a hole grow by {least / 1000:g} mm, and its thread ends "
        f"{METRIC.pitch_drop * pitch:.4f} mm above that line",
    )


def _holds(diameter: float, pitch: float) -> bool:
    return pitch_tolerance(diameter, pitch, GRADES[0]).micrometres < _depths(pitch)[0]


def _sources(values: tuple[TableValue, ...]) -> tuple[Source, ...]:
    """Each source once, in the order of importance."""
    return tuple(dict.fromkeys(value.source for value in values))


def _note(diameter: float, pitch: float, hole_class: HoleClass, computed: list[str]) -> Values:
    if not computed:
        return NO_VALUES
    if within_scope(diameter, pitch):
        return Values(
            why=(Unlisted.METRIC_TOLERANCES,),
            diameter=diameter,
            pitch=pitch,
            hole_class=str(hole_class),
            computed=tuple(computed),
        )
    tolerance = pitch_tolerance(diameter, pitch, hole_class.pitch_grade).micrometres
    return Values(
        why=(Unlisted.METRIC_SCOPE,),
        diameter=diameter,
        pitch=pitch,
        hole_class=str(hole_class),
        share=tolerance / (1000 * METRIC.pitch_drop * pitch),
    )
