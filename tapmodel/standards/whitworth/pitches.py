"""Diameters and threads per inch of the series BSW and BSF, and the program's range of both."""

from collections.abc import Mapping
from functools import cache

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.designations.reading.inches import inches_of
from tapmodel.standards.tables import cell_source, read_table

SERIES = ("BSW", "BSF")
MIN_INCHES, MAX_INCHES = 1 / 16, 6.0
MIN_THREADS, MAX_THREADS = 2.5, 80.0


@cache
def series_pitches(series: str) -> Mapping[float, float]:
    """Threads per inch by diameter [inch] of the series "BSW" or "BSF", ascending.

    Source: BS 84:1956 (read in a transcription but for BSW 1/16, 3/32 and 5/32, from memory).
    """
    rows = (
        (_inches(row["diameter"]), row[series.lower()]) for row in read_table("whitworth_pitches")
    )
    return {diameter: float(threads) for diameter, threads in rows if threads}


def pairing_source(diameter: float) -> Source:
    """Where the pairing of a listed diameter [inch] was found."""
    rows = read_table("whitworth_pitches")
    row = next(row for row in rows if _inches(row["diameter"]) == diameter)
    return cell_source("BS 84:1956", "basic sizes", row["read"])


def series_of(diameter: float, threads: float) -> str:
    """The series that lists a diameter [inch] with these threads per inch; "" when none does.

    Source: as `series_pitches`.
    """
    return next((name for name in SERIES if series_pitches(name).get(diameter) == threads), "")


def check_range(text: str, diameter: float, threads: float) -> None:
    """Refuse a diameter [inch] or threads per inch outside the range of the program.

    Past a pitch of half the diameter the core of the thread is under 36 % of the diameter.

    Raises:
        InputError: naming the range.
    """
    if not MIN_INCHES <= diameter <= MAX_INCHES:
        raise InputError("designation", text, "Whitworth diameters of 1/16 to 6 inches")
    coarsest = max(MIN_THREADS, 2 / diameter)
    if not coarsest <= threads <= MAX_THREADS:
        raise InputError(
            "designation",
            text,
            f"{coarsest:g} to {MAX_THREADS:g} threads per inch at this diameter",
        )


@cache
def _inches(words: str) -> float:
    return float(inches_of(words) or 0)
