"""What a value measured over wires means: pitch diameter, verdict, infeed still to take."""

from dataclasses import dataclass
from enum import StrEnum

from tapmodel.errors import InputError
from tapmodel.shape.profile import segments
from tapmodel.shop.compound import along_compound, compound_settings
from tapmodel.shop.wires import over_wires
from tapmodel.shop.wires.asked import MeasuredThread
from tapmodel.shop.wires.other_unit import refuse_slip
from tapmodel.shop.wires.told import length_told, span_told
from tapmodel.standards.limits import HoleLimits
from tapmodel.words import Units

LEAST_WEAR = 0.05
"""A tap is scrap when its pitch diameter lies less than this share of the hole's tolerance above
the hole's least: next to nothing of the reserve for wear is left, about as much as a measurement
over wires may be wrong by in a shop. Rule of this program."""


class Verdict(StrEnum):
    """What a measured pitch diameter means, from the smallest to the largest."""

    TOO_SMALL = "too small: scrap"
    BELOW_ZONE = "below the tap's zone: stop"
    IN_LIMITS = "in limits"
    TOO_LARGE = "too large: take more"
    NO_LIMITS = "no limits to judge by"


@dataclass(frozen=True, slots=True)
class Reading:
    """What a measured value means.

    Attributes:
        measured: over the wires, or the pitch diameter itself [mm].
        pitch_diameter: that it shows; where the chamfer ends, of a thread with a back taper [mm].
        verdict: against the limits.
        scrap_below: least pitch diameter of a tap that is of use, None without limits and for a
            tap that another one of its set follows [mm].
        wear_left: until the hole falls below its least size, 0 where it already does, None likewise
            [mm].
        compound: angle of the compound slide, from square to the axis [deg].
        infeed: along the compound, to the aimed pitch diameter; 0 when that is reached [mm].
        infeed_least, infeed_most: to the upper and to the lower limit, 0 when they are reached,
            None without limits [mm].
        infeed_at_compound: the infeed for each usual setting of the compound ([deg], [mm]).
    """

    measured: float
    pitch_diameter: float
    verdict: Verdict
    scrap_below: float | None
    wear_left: float | None
    compound: float
    infeed: float
    infeed_least: float | None
    infeed_most: float | None
    infeed_at_compound: tuple[tuple[float, float], ...]


def read_wires(
    asked: MeasuredThread,
    wire: float,
    measured: float,
    compound: float,
    units: Units = Units.MM,
) -> Reading:
    """Pitch diameter, verdict and infeed from a measured value.

    Args:
        asked: the thread.
        wire: diameter [mm].
        measured: over the wires [mm].
        compound: angle of the slide, from square to the axis [deg].
        units: of the reader, in which a refusal tells first what is allowed.

    Raises:
        InputError: the value cannot have been measured on this thread.

    Source: `over_wires.pitch_diameter_from`; infeed is half the excess over the target, along the
    compound (derived here).
    """
    _refuse_impossible(asked, wire, measured, units)
    found = over_wires.pitch_diameter_from(asked.groove, wire, measured) + asked.lost
    return read_pitch_diameter(asked, found, compound, measured)


def read_pitch_diameter(
    asked: MeasuredThread, found: float, compound: float, measured: float | None = None
) -> Reading:
    """The same from a pitch diameter.

    Args:
        asked: the thread.
        found: its pitch diameter as stated, where the chamfer ends [mm].
        compound: angle of the slide, from square to the axis [deg].
        measured: what showed it, if not that itself [mm].

    Source: as `read_wires`.
    """
    hole = asked.hole
    return Reading(
        measured=found if measured is None else measured,
        pitch_diameter=found,
        verdict=_verdict(asked, found),
        scrap_below=scrap_below(hole) if hole else None,
        wear_left=max(found - hole.pitch_min, 0.0) if hole else None,
        compound=compound,
        infeed=_infeed(found, asked.target, compound),
        infeed_least=_infeed_to(found, asked.pitch_max, compound),
        infeed_most=_infeed_to(found, asked.pitch_min, compound),
        infeed_at_compound=tuple(
            (angle, _infeed(found, asked.target, angle))
            for angle in compound_settings(asked.groove.flank_angle)
        ),
    )


def scrap_below(hole: HoleLimits) -> float:
    """Pitch diameter below which a tap is of no use for a hole [mm].

    Source: rule of this program, `LEAST_WEAR`.
    """
    return hole.pitch_min + LEAST_WEAR * (hole.pitch_max - hole.pitch_min)


def _infeed(found: float, wanted: float, compound: float) -> float:
    """Nothing is left to take from a thread that is smaller already."""
    return along_compound(max(found - wanted, 0.0) / 2, compound)


def _infeed_to(found: float, limit: float | None, compound: float) -> float | None:
    return None if limit is None else _infeed(found, limit, compound)


def _verdict(asked: MeasuredThread, found: float) -> Verdict:
    if asked.pitch_min is None or asked.pitch_max is None:
        return Verdict.NO_LIMITS
    if found > asked.pitch_max:
        return Verdict.TOO_LARGE
    if found >= asked.pitch_min:
        return Verdict.IN_LIMITS
    scrap = asked.hole is not None and found < scrap_below(asked.hole)
    return Verdict.TOO_SMALL if scrap else Verdict.BELOW_ZONE


def _refuse_impossible(asked: MeasuredThread, wire: float, measured: float, units: Units) -> None:
    """What the anvils or the wires rest on the crests for tells nothing of the flanks."""
    thread = asked.thread
    if thread is None:
        return
    crest = thread.major - asked.lost
    highest = over_wires.measurement_touching_at(
        asked.groove, wire, segments(thread)[1].start_radius - asked.lost / 2
    )
    span = f"{span_told(crest, highest, units)} with this wire"

    def fits(value: float) -> bool:
        return crest < value <= highest

    refuse_slip("--measured", (measured,), span, fits)
    if measured <= crest:
        raise InputError("--measured", measured, f"{span}: {_on_the_crests(crest, units)}")
    if measured > highest:
        why = "above it the groove is too shallow, and the wire rests on the corners of the crests"
        raise InputError("--measured", measured, f"{span}: {why}")


def _on_the_crests(crest: float, units: Units) -> str:
    return (
        f"at the major diameter, {length_told(crest, units)}, or below it the anvils rest "
        "on the crests and not on the wires; a thicker wire stands higher"
    )
