"""Series of the Unified threads: which pairings of diameter and pitch bear which name."""

from collections.abc import Mapping
from dataclasses import replace
from functools import cache

from tapmodel.errors import InputError
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.family_rules import settled_pitch
from tapmodel.standards.inches import inches, threads_per_inch
from tapmodel.standards.tables import read_table

NAMED = ("UNC", "UNF", "UNEF")
LEAST_SIZE, GREATEST_SIZE = 0.06, 6.0
"""Range of diameters of the standard's series [in]."""

COARSEST, FINEST_LISTED = 4.0, 80.0
"""Range of threads per inch of the standard's series."""

FINEST = 508.0
"""Most threads per inch that this program designs: a pitch of 0.05 mm."""

LARGEST_OF_SIXTEENTHS = 2.0
"""Up to this size [in] the constant-pitch series go by 1/16, above by 1/8."""


@cache
def named_pitches() -> Mapping[float, Mapping[str, float]]:
    """Threads per inch in UNC, UNF and UNEF of each basic major diameter [in].

    Source: ASME B1.1 (from memory).
    """
    return {
        float(row["major"]): {name: float(row[name]) for name in NAMED if row[name]}
        for row in read_table("unified_series")
    }


def constant_pitch_sizes(tpi: float) -> tuple[float, ...]:
    """Basic major diameters [in] that the constant-pitch series of `tpi` lists.

    Source: ASME B1.1 (from memory).
    """
    ranges = {
        float(row["tpi"]): (float(row["least"]), float(row["greatest"]))
        for row in read_table("unified_constant_pitch")
    }
    if tpi not in ranges:
        return ()
    least, greatest = ranges[tpi]
    numbers = [size for size in named_pitches() if size < 0.25]
    steps = [n / 16 for n in range(4, 97) if n % 2 == 0 or n <= 16 * LARGEST_OF_SIXTEENTHS]
    return tuple(size for size in (*numbers, *steps) if least <= size <= greatest)


def series_of(diameter: float, tpi: float) -> str:
    """Name of a pairing: UNC, UNF, UNEF, UN, or UNS for one that no series has; diameter in inches.

    Source: ASME B1.1 (from memory).
    """
    for name, listed in named_pitches().get(diameter, {}).items():
        if listed == tpi:
            return name
    return "UN" if diameter in constant_pitch_sizes(tpi) else "UNS"


def settle(designation: Designation) -> Designation:
    """Fill in the series, or hold the one named to the table.

    UN is also said of any pairing, as its form is called: one of no series is UNS then.

    Raises:
        InputError: size out of range, or a series that has another pitch at that size.

    Source: ASME B1.1 (from memory).
    """
    diameter = inches(designation.diameter)
    tpi = threads_per_inch(settled_pitch(designation))
    _check_size(diameter, tpi)
    series = series_of(diameter, tpi)
    loosely = (designation.series, series) == ("UN", "UNS")
    if designation.series not in ("", series) and not loosely:
        raise InputError("designation", designation.text, _cure(designation, series))
    return replace(designation, series=series)


def _cure(designation: Designation, series: str) -> str:
    """The pairing under its right name, and the named series with its right pitch."""
    size, wrong = designation.size, designation.series
    rest = designation.suffixes
    right = f"{size}-{threads_per_inch(settled_pitch(designation)):g} {series}{rest}"
    diameter = inches(designation.diameter)
    tpi = named_pitches().get(diameter, {}).get(wrong)
    if tpi is not None:
        return f"{right}, or {size}-{tpi:g} {wrong}{rest}, which is the only {wrong} of that size"
    if wrong == "UNS":
        return f"{right}; UNS is for pairings of no series"
    return f"{right}; the series {wrong} has no thread of that size"


def _check_size(diameter: float, tpi: float) -> None:
    if not LEAST_SIZE <= diameter <= GREATEST_SIZE:
        allowed = f"Unified threads of {LEAST_SIZE:.3f} to {GREATEST_SIZE:.3f} in"
        raise InputError("diameter", f"{diameter:g} in", allowed)
    # Past a pitch of half the diameter nothing like a core is left.
    coarsest = max(COARSEST, 2 / diameter)
    if not coarsest <= tpi <= FINEST:
        allowed = f"{coarsest:.4g} to {FINEST:g} threads per inch for a size of {diameter:g} in"
        raise InputError("pitch", f"{tpi:g} threads per inch", allowed)
