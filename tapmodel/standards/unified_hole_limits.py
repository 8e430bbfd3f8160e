"""Limits of the Unified internal thread that a tap is to cut."""

from dataclasses import dataclass

from tapmodel.sources import Source
from tapmodel.standards.inches import MM, printed
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound
from tapmodel.standards.thread_forms import UNIFIED
from tapmodel.standards.unified_tolerances import (
    SMALL,
    minor_tolerance,
    pitch_tolerance,
    rounded_pitch,
)
from tapmodel.words import Certainty

PITCH_SOURCE = Source("ASME B1.1-2019", "formulas of limits of size, TD2", Certainty.MEMORY)
MINOR_SOURCE = Source("ASME B1.1-2019", "formulas of limits of size, TD1", Certainty.MEMORY)
MINOR_READ = Source(
    "ASME B1.1-2019",
    "TD1 of classes 1B and 2B, as read in Machinery's Handbook 31st ed. p. 1996 ff. table 6",
    Certainty.READ,
)
NOTE = (
    "No series of ASME B1.1 has this pairing: its formulas for special threads, with a length of "
    "engagement of 9 pitches, gave the limits."
)

THREE_PLACES = 0.138
"""From this size [in] on the standard prints the least minor diameter to three places (class 3B
adds a zero), and the greatest one of classes 1B and 2B too; else to four. From memory; every row
read of 1B and 2B agrees."""


@dataclass(frozen=True, slots=True)
class UnifiedThread:
    """A settled Unified thread in inches.

    Attributes:
        diameter: basic major diameter, to the four places that the standard prints.
        tpi: threads per inch.
        series: UNC, UNF, UNEF, UN or UNS.
    """

    diameter: float
    tpi: float
    series: str

    @property
    def basic_pitch_diameter(self) -> float:
        """D2 [in], to four places."""
        return printed(self.diameter - UNIFIED.pitch_drop * rounded_pitch(self.tpi), 4)

    @property
    def basic_minor_diameter(self) -> float:
        """D1 [in], to four places."""
        return printed(self.diameter - UNIFIED.minor_drop * rounded_pitch(self.tpi), 4)


def unified_hole_limits(thread: UnifiedThread, hole_class: str) -> HoleLimitsFound:
    """Limits of a class 1B, 2B or 3B [mm], exact conversions of the inches that are printed.

    Source: ASME B1.1-2019 (formulas from memory; its rounding read in Machinery's Handbook 31st
    ed. p. 1996 ff.): D2 and D1 to four places before the tolerances are added.
    """
    diameter, tpi = thread.diameter, thread.tpi
    pitch_min, minor_min = thread.basic_pitch_diameter, thread.basic_minor_diameter
    pitch_max = printed(pitch_min + pitch_tolerance(diameter, tpi, thread.series, hole_class), 4)
    minor_max = printed(minor_min + minor_tolerance(diameter, tpi, hole_class), 4)
    if diameter >= THREE_PLACES:
        minor_min = printed(minor_min, 3)
        minor_max = minor_max if hole_class == "3B" else printed(minor_max, 3)
    listed = thread.series != "UNS"
    return HoleLimitsFound(
        limits=HoleLimits(
            major_min=diameter * MM,
            pitch_min=pitch_min * MM,
            pitch_max=pitch_max * MM,
            minor_min=minor_min * MM,
            minor_max=minor_max * MM,
        ),
        listed=listed,
        sources=(PITCH_SOURCE, _minor_source(diameter, hole_class)),
        note="" if listed else NOTE,
    )


def _minor_source(diameter: float, hole_class: str) -> Source:
    return MINOR_READ if hole_class != "3B" and diameter >= SMALL else MINOR_SOURCE
