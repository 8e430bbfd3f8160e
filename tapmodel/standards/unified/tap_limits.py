"""Limits of the tap's own thread, Unified: cut thread, or ground to an H or L number."""

import re
from functools import cache

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.standards.inches import MM, printed
from tapmodel.standards.limits import TapLimits
from tapmodel.standards.tables import Row, cell_source, read_table
from tapmodel.standards.thread_forms import UNIFIED
from tapmodel.standards.unified.hole_limits import UnifiedThread
from tapmodel.standards.unified.series import FINEST_LISTED
from tapmodel.standards.unified.tolerances import pitch_tolerance, rounded_pitch
from tapmodel.words import Certainty

STANDARD = "ASME B94.9"
ALLOWED = "cut (cut thread), or ground H1 to H11 or L1 to L5, of ASME B94.9"
STEP = 0.0005
"""What one H or L number moves the pitch diameter [in]."""

RULED = Source(
    "tapmodel",
    "rule of this program, in the manner of the cut-thread tables of ASME B94.9: least pitch "
    "diameter 0.001 in over basic from 7/8 in, below that 0.0002 in from 36 threads per inch, else "
    "0.0005 in (finer than 80 threads per inch at most a tenth of TD2); zone 2/5 of TD2 of class "
    "2B; least major diameter higher than basic by as much plus H/16",
    Certainty.DERIVED,
)
GROUND = Source(
    STANDARD,
    "H and L numbers up to 1 in, as read in Machinery's Handbook 31st ed. p. 972; major diameter "
    "by a formula that gives the 7 rows read on pp. 996 to 1000",
    Certainty.READ,
)
GROUND_LARGE = Source(STANDARD, "H and L numbers, zones over 1 in", Certainty.MEMORY)

# Width of the zone of the pitch diameter of ground taps: (up to this size [in], width [in]).
_GROUND_ZONES = ((1.0, 0.0005), (1.5, 0.0010), (2.5, 0.0015), (6.0, 0.0020))

# Width of the zone of the major diameter of ground taps: (from so many threads per inch, share of
# the pitch). Read rows hold 0.087 at 80, 0.076 at 40, 0.065 at 8, 12 and 14; the ends are recalled.
_MAJOR_ZONES = ((48, 0.087), (36, 0.076), (0, 0.065))

_LARGE, _FINE = 0.875, 36
"""Size [in] and threads per inch from which cut taps lie by another amount over basic."""

_NUMBER = re.compile(r"H([1-9]|10|11)|L[1-5]")


def unified_tap_limits(thread: UnifiedThread, tap_class: str) -> TapLimits:
    """Limits of a tap [mm]: class "cut", "H1" to "H11" or "L1" to "L5".

    Raises:
        InputError: another class.

    Source: ASME B94.9 (rows of cut threads read, rules of ground ones partly from memory); a rule
    of this program for cut threads that its tables as known here do not list.
    """
    name = tap_class.strip().upper()
    if name == "CUT":
        return _cut_limits(thread)
    if _NUMBER.fullmatch(name) is None:
        raise InputError("thread.tap_class", tap_class, ALLOWED)
    return _ground_limits(thread, name[0], int(name[1:]))


_SAME_SIZE = 0.00011
"""A size [in] and its row may differ by this: 5/32 is printed as 0.1563, elsewhere as 0.1562."""


@cache
def _cut_rows() -> tuple[tuple[float, float, Row], ...]:
    table = read_table("unified_cut_tap")
    return tuple((float(row["major"]), float(row["tpi"]), row) for row in table)


def _cut_row(thread: UnifiedThread) -> Row | None:
    return next(
        (
            row
            for major, tpi, row in _cut_rows()
            if tpi == thread.tpi and abs(major - thread.diameter) < _SAME_SIZE
        ),
        None,
    )


def _cut_limits(thread: UnifiedThread) -> TapLimits:
    row = _cut_row(thread)
    if row is None:
        return _ruled_cut_limits(thread)
    return TapLimits(
        tap_class=f"cut thread of {STANDARD}",
        pitch_min=float(row["pitch_min"]) * MM,
        pitch_max=float(row["pitch_max"]) * MM,
        major_min=float(row["major_min"]) * MM,
        source=cell_source(STANDARD, "cut-thread taps", row["read"]),
    )


def _ruled_cut_limits(thread: UnifiedThread) -> TapLimits:
    diameter, pitch = thread.diameter, rounded_pitch(thread.tpi)
    over = _over_basic(diameter, thread.tpi)
    tolerance = pitch_tolerance(diameter, thread.tpi, thread.series, "2B")
    if thread.tpi > FINEST_LISTED:
        over = min(over, printed(0.1 * tolerance, 4))
    zone = printed(0.4 * tolerance, 4)
    pitch_min = thread.basic_pitch_diameter + over
    return TapLimits(
        tap_class="cut thread in the manner of ASME B94.9",
        pitch_min=pitch_min * MM,
        pitch_max=(pitch_min + zone) * MM,
        major_min=(diameter + over + printed(UNIFIED.height / 16 * pitch, 4)) * MM,
        source=RULED,
    )


def _over_basic(diameter: float, tpi: float) -> float:
    """Least pitch diameter over the basic one [in], as all 50 rows of the two tables have it."""
    if diameter >= _LARGE:
        return 0.0010
    return 0.0002 if tpi >= _FINE else 0.0005


def _ground_limits(thread: UnifiedThread, letter: str, number: int) -> TapLimits:
    pitch = rounded_pitch(thread.tpi)
    zone = next(width for size, width in _GROUND_ZONES if thread.diameter <= size)
    basic = thread.basic_pitch_diameter
    pitch_min = basic + number * STEP - zone if letter == "H" else basic - number * STEP
    major_zone = next(share for least, share in _MAJOR_ZONES if thread.tpi >= least)
    # Halves go up here: the rows of 8 and 40 threads per inch end in 0.0163 and 0.0033.
    major_max = printed(0.130 * pitch + 1e-6, 4)
    return TapLimits(
        tap_class=f"{letter}{number} of {STANDARD}",
        pitch_min=pitch_min * MM,
        pitch_max=(pitch_min + zone) * MM,
        major_min=(thread.diameter + major_max - printed(major_zone * pitch, 4)) * MM,
        source=GROUND if thread.diameter <= 1 else GROUND_LARGE,
    )
