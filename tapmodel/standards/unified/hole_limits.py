"""Limits of the Unified internal thread that a tap is to cut."""

import math
from dataclasses import dataclass, replace
from typing import NoReturn

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.standards.inches import MM, printed
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound, Unlisted
from tapmodel.standards.thread_forms import UNIFIED
from tapmodel.standards.unified.series import FINEST_LISTED
from tapmodel.standards.unified.tolerances import (
    SMALL,
    minor_tolerance,
    pitch_tolerance,
    rounded_pitch,
)
from tapmodel.values import NO_VALUES, Values
from tapmodel.words import Certainty

PITCH_SOURCE = Source("ASME B1.1-2019", "formulas of limits of size, TD2", Certainty.MEMORY)
MINOR_SOURCE = Source("ASME B1.1-2019", "formulas of limits of size, TD1", Certainty.MEMORY)
MINOR_READ = Source(
    "ASME B1.1-2019",
    "TD1 of classes 1B and 2B, as read in Machinery's Handbook 31st ed. p. 1996 ff. table 6",
    Certainty.READ,
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

    Raises:
        InputError: a pitch so fine that the tolerances are wider than the thread is deep.

    Source: ASME B1.1-2019 (formulas from memory; its rounding read in Machinery's Handbook 31st
    ed. p. 1996 ff.): D2 and D1 to four places before the tolerances are added.
    """
    limits = _limits(thread, hole_class)
    if not limits.nested:
        _refuse_too_fine(thread, hole_class)
    listed, beyond = thread.series != "UNS", thread.tpi > FINEST_LISTED
    return HoleLimitsFound(
        limits=limits,
        listed=listed,
        sources=(PITCH_SOURCE, _minor_source(thread.diameter, hole_class)),
        note=NO_VALUES if listed else _note(beyond=beyond),
        beyond_scope=beyond,
    )


def _note(*, beyond: bool) -> Values:
    if beyond:
        return Values(why=(Unlisted.UNIFIED_SCOPE,), finest=FINEST_LISTED)
    return Values(why=(Unlisted.UNIFIED_SERIES,))


def _limits(thread: UnifiedThread, hole_class: str) -> HoleLimits:
    diameter, tpi = thread.diameter, thread.tpi
    pitch_min, minor_min = thread.basic_pitch_diameter, thread.basic_minor_diameter
    pitch_max = printed(pitch_min + pitch_tolerance(diameter, tpi, thread.series, hole_class), 4)
    minor_max = printed(minor_min + minor_tolerance(diameter, tpi, hole_class), 4)
    if diameter >= THREE_PLACES:
        minor_min = printed(minor_min, 3)
        minor_max = minor_max if hole_class == "3B" else printed(minor_max, 3)
    ends = (diameter, pitch_min, pitch_max, minor_min, minor_max)
    return HoleLimits(*(end * MM for end in ends))


def _refuse_too_fine(thread: UnifiedThread, hole_class: str) -> NoReturn:
    """The tolerances are wider than the thread is deep: name the finest that keeps some."""
    coarser = (replace(thread, tpi=float(n)) for n in range(math.floor(thread.tpi), 0, -1))
    finest = next(other for other in coarser if _limits(other, hole_class).nested)
    raise InputError(
        "pitch",
        f"{thread.tpi:g} threads per inch",
        f"{finest.tpi:g} or fewer for a hole of {thread.diameter:g} in in class {hole_class}: by "
        "ASME B1.1 its tolerances grow wider than so fine a thread is deep",
    )


def _minor_source(diameter: float, hole_class: str) -> Source:
    return MINOR_READ if hole_class != "3B" and diameter >= SMALL else MINOR_SOURCE
