"""Limits of the general-purpose Acme internal thread that a tap is to cut."""

import math
from dataclasses import dataclass, replace
from typing import NoReturn

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.standards.inches import MM, printed
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound, Unlisted
from tapmodel.standards.tables import read_table
from tapmodel.standards.thread_forms import ACME
from tapmodel.values import NO_VALUES, Values
from tapmodel.words import Certainty

LEAST_SIZE, GREATEST_SIZE = 0.125, 6.0
"""Range of diameters of the program [in]; the standard lists 1/4 to 5."""

COARSEST, FINEST = 2.0, 20.0
"""Range of threads per inch of the program; the standard lists 2 to 16."""

PITCH_FACTORS = {"2G": (0.030, 0.006), "3G": (0.014, 0.0028), "4G": (0.010, 0.0020)}
"""Pitch-diameter tolerance [in]: so many times the roots of the pitch and of the diameter."""

START_FACTORS = {1: 1.0, 2: 1.5, 3: 1.75}
MOST_STARTS_FACTOR = 2.0
"""How much wider the pitch diameters of several starts lie: 50 % for two, 75 % for three, 100 % for
four and more."""

LEAST_MINOR_TOLERANCE = 0.005
"""Of 0.05 P [in]."""

BASIC_SOURCE = Source(
    "ASME B1.5", "basic sizes, as read in Machinery's Handbook 27th ed. p. 1831", Certainty.READ
)
SOURCE = Source("ASME B1.5-1997", "formulas of allowances and tolerances", Certainty.MEMORY)
STARTS_SOURCE = Source(
    "ASME B1.5",
    "pitch diameters of two, three, four starts and more with 50, 75, 100 % more allowance and "
    "tolerance than of one; its scope lets the limits of one start stand for several (read)",
    Certainty.MEMORY,
)


@dataclass(frozen=True, slots=True)
class AcmeThread:
    """A settled Acme thread: basic major diameter [in], threads per inch, starts."""

    diameter: float
    tpi: float
    starts: int


def is_listed(thread: AcmeThread) -> bool:
    """Whether the standard series has this diameter with this pitch, in one start.

    Source: ASME B1.5 (seven rows read, the rest from memory).
    """
    pairs = {(float(row["major"]), float(row["tpi"])) for row in read_table("acme_sizes")}
    return (thread.diameter, thread.tpi) in pairs and thread.starts == 1


def acme_hole_limits(thread: AcmeThread, hole_class: str) -> HoleLimitsFound:
    """Limits of a class 2G, 3G or 4G [mm], exact conversions of inches to four places.

    Raises:
        InputError: size out of range, or too fine for the tolerance of its starts.

    Source: ASME B1.5-1997 (tolerances from memory): TD2 by `PITCH_FACTORS`, and by `START_FACTORS`
    for several starts; minor diameter 0.05 P; major diameter at least 0.020 in over basic up to 10
    threads per inch, else 0.010 in.
    """
    check_size(thread.diameter, thread.tpi)
    limits = _limits(thread, hole_class)
    if not limits.nested:
        _refuse_too_fine(thread, hole_class)
    return HoleLimitsFound(
        limits=limits,
        listed=is_listed(thread),
        sources=(SOURCE, *((STARTS_SOURCE,) if thread.starts > 1 else ()), BASIC_SOURCE),
        note=_note(thread),
    )


def _limits(thread: AcmeThread, hole_class: str) -> HoleLimits:
    pitch = 1 / thread.tpi
    pitch_min = printed(thread.diameter - ACME.pitch_drop * pitch, 4)
    minor_min = printed(thread.diameter - ACME.minor_drop * pitch, 4)
    by_pitch, by_diameter = PITCH_FACTORS[hole_class]
    one_start = by_pitch * pitch**0.5 + by_diameter * thread.diameter**0.5
    tolerance = one_start * START_FACTORS.get(thread.starts, MOST_STARTS_FACTOR)
    minor_tolerance = max(0.05 * pitch, LEAST_MINOR_TOLERANCE)
    clearance = 0.020 if thread.tpi <= 10 else 0.010
    return HoleLimits(
        major_min=printed(thread.diameter + clearance, 4) * MM,
        pitch_min=pitch_min * MM,
        pitch_max=printed(pitch_min + printed(tolerance, 4), 4) * MM,
        minor_min=minor_min * MM,
        minor_max=printed(minor_min + printed(minor_tolerance, 4), 4) * MM,
    )


def _refuse_too_fine(thread: AcmeThread, hole_class: str) -> NoReturn:
    """The zone of so many starts is wider than the thread is deep: name the finest that fits."""
    coarser = (replace(thread, tpi=float(n)) for n in range(math.floor(thread.tpi), 0, -1))
    finest = next(other for other in coarser if _limits(other, hole_class).nested)
    raise InputError(
        "pitch",
        f"{thread.tpi:g} threads per inch in {thread.starts} starts",
        f"{finest.tpi:g} or fewer for {thread.diameter:g} in in class {hole_class}: the wider "
        "tolerance of several starts would be more than so fine a thread is deep; or fewer starts",
    )


def _note(thread: AcmeThread) -> Values:
    if is_listed(thread):
        return NO_VALUES
    return Values(why=(Unlisted.ACME_STARTS if thread.starts > 1 else Unlisted.ACME_PAIRING,))


def check_size(diameter: float, tpi: float) -> None:
    """Refuse a diameter [in] or threads per inch outside the range of the program.

    Past a pitch of half the diameter the core of the thread is under half the diameter.

    Raises:
        InputError: naming the field, the value and the range.
    """
    if not LEAST_SIZE <= diameter <= GREATEST_SIZE:
        allowed = f"Acme threads of {LEAST_SIZE:g} to {GREATEST_SIZE:g} in"
        raise InputError("diameter", f"{diameter:g} in", allowed)
    coarsest = max(COARSEST, 2 / diameter)
    if not coarsest <= tpi <= FINEST:
        allowed = f"{coarsest:.4g} to {FINEST:g} threads per inch for a size of {diameter:g} in"
        raise InputError("pitch", f"{tpi:g} threads per inch", allowed)
