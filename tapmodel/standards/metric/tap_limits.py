"""Limits of the tap's own thread, ISO metric."""

from collections.abc import Mapping
from functools import cache

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.spec.hole_class import HoleClass
from tapmodel.standards.limits import TapLimits
from tapmodel.standards.metric.pitches import check_size
from tapmodel.standards.metric.tolerances import pitch_tolerance
from tapmodel.standards.tables import Row, cell_source, read_table
from tapmodel.standards.thread_forms import METRIC
from tapmodel.words import Certainty

SOURCE = Source(
    "ISO 2857:1973",
    "classes 1 to 3 in fractions of t = TD2 grade 5, as a tap maker's catalogue 2021 p. 645 draws "
    "them; least major diameter 0.4 t over the nominal one",
    Certainty.MEMORY,
)

ZONES = {1: (0.1, 0.3), 2: (0.3, 0.5), 3: (0.5, 0.7)}
"""Pitch-diameter zone of each tap class over the basic size, in t."""

D_STEP = 0.013
"""Step of the D numbers [mm]."""

D_NUMBERS = tuple(f"D{n}" for n in range(1, 13))
LARGEST_D_NUMBER = 25.0
"""Diameter [mm] up to which the table of widths goes."""

SMALL_D_NUMBER = 6.3
"""Diameter [mm] up to which its narrower column holds."""

READ_CLASS = 2
"""The class of which rows were read."""

MAJOR_FRACTION = 0.4
"""Least major diameter of any class over the nominal one, in t."""


def metric_tap_limits(diameter: float, pitch: float, tap_class: int) -> TapLimits:
    """Limits of a tap's thread.

    Args:
        diameter: nominal diameter D, 0.3 to 300 [mm].
        pitch: P, 0.05 to 8 and at most D/2 [mm].
        tap_class: 1, 2 or 3.

    Raises:
        InputError: size or class out of range.

    Source: ISO 2857:1973 (from memory; 20 rows of class 2 read, which the formula gives); t by ISO
    965-1 as in `metric_tolerances`.
    """
    check_size(diameter, pitch)
    if tap_class not in ZONES:
        raise InputError("tap_class", tap_class, "1, 2 or 3")
    t = pitch_tolerance(diameter, pitch, 5).micrometres / 1000
    basic = METRIC.pitch_diameter(diameter, pitch)
    lower, upper = ZONES[tap_class]
    # t is whole micrometres, so the limits are whole tenths: rounding removes binary noise only.
    return TapLimits(
        tap_class=f"{tap_class} of ISO 2857",
        pitch_min=round(basic + lower * t, 4),
        pitch_max=round(basic + upper * t, 4),
        major_min=round(diameter + MAJOR_FRACTION * t, 4),
        source=_source(diameter, pitch, tap_class),
    )


def _source(diameter: float, pitch: float, tap_class: int) -> Source:
    row = _read_rows().get((diameter, pitch)) if tap_class == READ_CLASS else None
    if row is None:
        return SOURCE
    place = "class 2; least major diameter 0.4 t over the nominal one, from memory; pitch diameter"
    return cell_source("ISO 2857:1973", place, row["read"])


@cache
def _read_rows() -> Mapping[tuple[float, float], Row]:
    """Rows that were read, by diameter and pitch."""
    rows = read_table("iso_2857_class_2")
    return {(float(row["diameter"]), float(row["pitch"])): row for row in rows}


def d_number_limits(diameter: float, pitch: float, number: int) -> TapLimits:
    """Limits of a ground tap with a D number: its pitch diameter ends `number` steps over basic.

    The zone below that end is as wide as the table has it for the pitch, or for the next coarser
    one that it lists.

    Args:
        diameter: nominal diameter D, 1 to 25 [mm].
        pitch: P [mm].
        number: 1 to 12.

    Source: ASME B94.9 (step read; widths of the zones partly read, partly from memory).
    """
    basic = METRIC.pitch_diameter(diameter, pitch)
    upper = round(basic + number * D_STEP, 4)
    width, read = _d_number_width(diameter, pitch)
    return TapLimits(
        tap_class=f"D{number} of ASME B94.9",
        pitch_min=round(upper - width, 4),
        pitch_max=upper,
        major_min=metric_tap_limits(diameter, pitch, 2).major_min,
        source=cell_source(
            "ASME B94.9",
            "D numbers in steps of 0.013 mm over the basic pitch diameter, as read in a text that "
            "cites Machinery's Handbook 25th ed. p. 893; least major diameter as in ISO 2857; "
            "width of the zone",
            read,
        ),
    )


def _d_number_width(diameter: float, pitch: float) -> tuple[float, str]:
    """Width of the zone of a D number [mm], and where it was read."""
    rows = read_table("d_number_widths")
    row = next((row for row in rows if float(row["pitch"]) >= pitch), rows[-1])
    column = "small" if diameter <= SMALL_D_NUMBER else "large"
    return float(row[column]) / 1000, row[f"read_{column}"]


def tap_class_for(hole_class: HoleClass) -> int:
    """Tap class that suits a hole class, by its pitch grade and position.

    Source: ISO 2857:1973 (from memory) for 4H to 8H and 4G to 6G; 7G and 8G like 6G, derived here.
    """
    if hole_class.position == "H":
        return {4: 1, 5: 1, 6: 2}.get(hole_class.pitch_grade, 3)
    return 2 if hole_class.pitch_grade <= 5 else 3
