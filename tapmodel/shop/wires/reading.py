"""What a value measured over wires means: pitch diameter, verdict, infeed still to take."""

from dataclasses import dataclass
from enum import StrEnum

from tapmodel.errors import InputError
from tapmodel.shape.profile import segments
from tapmodel.shop.compound import along_compound, compound_settings
from tapmodel.shop.wires import over_wires
from tapmodel.shop.wires.asked import MeasuredThread
from tapmodel.shop.wires.over_wires import at_pitch_diameter


class Verdict(StrEnum):
    """What a measured pitch diameter means."""

    IN_LIMITS = "in limits"
    TOO_LARGE = "too large: take more"
    TOO_SMALL = "too small: scrap"
    NO_LIMITS = "no limits to judge by"


@dataclass(frozen=True, slots=True)
class Reading:
    """What a measured value means.

    Attributes:
        measured: over the wires [mm].
        pitch_diameter: that it shows [mm].
        verdict: against the limits.
        compound: angle of the compound slide [deg].
        infeed: along the compound, to the aimed pitch diameter; negative when the thread is
            already smaller than that [mm].
        infeed_least, infeed_most: to the upper and to the lower limit, None without limits [mm].
        infeed_at_compound: the infeed for each usual setting of the compound ([deg], [mm]).
    """

    measured: float
    pitch_diameter: float
    verdict: Verdict
    compound: float
    infeed: float
    infeed_least: float | None
    infeed_most: float | None
    infeed_at_compound: tuple[tuple[float, float], ...]


def read_wires(asked: MeasuredThread, wire: float, measured: float, compound: float) -> Reading:
    """Pitch diameter, verdict and infeed from a measured value.

    Args:
        asked: the thread.
        wire: diameter [mm].
        measured: over the wires [mm].
        compound: angle of the slide, from square to the axis [deg].

    Raises:
        InputError: the value cannot have been measured on this thread.

    Source: `over_wires.pitch_diameter_from`; infeed is half the excess over the target, along the
    compound (derived here).
    """
    _refuse_impossible(asked, wire, measured)
    found = over_wires.pitch_diameter_from(asked.groove, wire, measured)
    excess = (found - asked.target) / 2
    return Reading(
        measured=measured,
        pitch_diameter=found,
        verdict=_verdict(asked, found),
        compound=compound,
        infeed=along_compound(excess, compound),
        infeed_least=_infeed(found, asked.pitch_max, compound),
        infeed_most=_infeed(found, asked.pitch_min, compound),
        infeed_at_compound=tuple(
            (angle, along_compound(excess, angle))
            for angle in compound_settings(asked.groove.flank_angle)
        ),
    )


def _infeed(found: float, limit: float | None, compound: float) -> float | None:
    return None if limit is None else along_compound((found - limit) / 2, compound)


def _verdict(asked: MeasuredThread, found: float) -> Verdict:
    if asked.pitch_min is None or asked.pitch_max is None:
        return Verdict.NO_LIMITS
    if found > asked.pitch_max:
        return Verdict.TOO_LARGE
    return Verdict.TOO_SMALL if found < asked.pitch_min else Verdict.IN_LIMITS


def _refuse_impossible(asked: MeasuredThread, wire: float, measured: float) -> None:
    """A thread cut too shallow lets the wire rest on the crests' corners; then M tells nothing."""
    if asked.thread is None:
        return
    least = over_wires.measurement(at_pitch_diameter(asked.groove, asked.thread.minor), wire)
    highest = over_wires.measurement_touching_at(
        asked.groove, wire, segments(asked.thread)[1].start_radius
    )
    if not least <= measured <= highest:
        span = f"{least:.3f} to {highest:.3f} mm with this wire"
        why = "below it is no such thread, above it the wire rests on the crests"
        raise InputError("measured", measured, f"{span}: {why}")
