"""The figures by which taps are compared, with their names, as numbers and as text."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from tapmodel.comparing.figures import UNITS, figures_by_name
from tapmodel.comparing.variant import Cell
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Area, Length, Quantity, Torque, Words
from tapmodel.report.units import LBF_IN_PER_NM, MM_PER_INCH, Units, as_text

LABELS: Mapping[str, str] = {
    "rake_crest": "rake at the crest",
    "rake_pitch": "rake at the pitch line",
    "rake_at_wall": "rake at the drilled wall",
    "chordal_hook": "chordal hook",
    "land_width": "land, width",
    "land_angle": "land, angle",
    "core_diameter": "core (web)",
    "cutter_diameter": "cutter",
    "depth_from_top": "depth below the top",
    "flute_area": "area of one flute",
    "torque_likely": "torque, likely",
    "torque_low": "torque, least",
    "torque_high": "torque, most",
    "bears": "safe up to",
    "margin": "safety factor",
    "chip_thickness": "chip of each tooth",
    "chip_min": "thinnest chip",
    "chip_max": "thickest chip",
    "chamfer_length": "chamfer, length",
    "chamfer_pitches": "chamfer in pitches",
    "chamfer_teeth": "teeth of the chamfer",
    "chamfer_clearance_um": "chamfer clear at the heel",
    "flank_rubbing": "flanks rub along",
    "chamfer_rubbing": "chamfer rubs along",
    "thread_relief.heel_drop": "thread, drop at the heel",
    "chamfer_relief.heel_drop": "chamfer, drop at the heel",
    "chip_room": "thread whose chips the flutes hold",
    "runout_end": "end of the flute run-out",
}
"""Those that the page shows, in the order of a table, by their names of `comparing.figures`."""

_DIGITS: Mapping[str, int] = {
    "chip_thickness": 4,
    "chip_min": 4,
    "chip_max": 4,
    "chip_room": 1,
    "thread_relief.heel_drop": 4,
    "chamfer_relief.heel_drop": 4,
}
"""Decimals of a length in mm, 2 where none stand here."""


@dataclass(frozen=True, slots=True)
class NamedFigure:
    """One figure of a tap.

    Attributes:
        key: of `LABELS`.
        label: its name.
        text: with its unit; "–" where it is not foreseen.
        value: the number; None where it is not foreseen [mm, deg, N·m ... as `UNITS` has it].
    """

    key: str
    label: str
    text: str
    value: float | None


def named_figures(design: TapDesign, units: Units) -> tuple[NamedFigure, ...]:
    """All of `LABELS`."""
    found = figures_by_name(design)
    return tuple(
        NamedFigure(key, label, figure_text(key, found[key], units), figure_number(found[key]))
        for key, label in LABELS.items()
    )


def figure_number(value: Cell) -> float | None:
    """A figure as a number; None for none, and for one without end."""
    return value if isinstance(value, float | int) and math.isfinite(value) else None


def figure_text(key: str, value: Cell, units: Units) -> str:
    """A figure with its unit; "–" for none."""
    number = figure_number(value)
    return "–" if number is None else as_text(_quantity(key, number), units)


def _quantity(key: str, value: float) -> Quantity:
    match UNITS[key]:
        case "mm":
            return Length(value, _DIGITS.get(key, 2))
        case "µm":
            return Length(value / 1000, 4)
        case "deg":
            return Angle(value)
        case "N·m":
            return Torque((value,))
        case "mm²":
            return Area(value)
        case _:
            return Words(str(value) if isinstance(value, int) else f"{value:.3g}")


def unit_told(unit: str, units: Units) -> str:
    """What a unit of figures is on a scale for a reader."""
    return _IN_INCHES.get(unit, (unit, 1.0))[0] if units is Units.INCH else unit


def per_unit(unit: str, units: Units) -> float:
    """How many of the units of a scale one of a unit of figures is."""
    return _IN_INCHES.get(unit, (unit, 1.0))[1] if units is Units.INCH else 1.0


_IN_INCHES = {
    "mm": ("in", 1 / MM_PER_INCH),
    "µm": ("0.0001 in", 10 / 25.4),
    "mm²": ("in²", 1 / MM_PER_INCH**2),
    "N·m": ("lbf·in", LBF_IN_PER_NM),
}
