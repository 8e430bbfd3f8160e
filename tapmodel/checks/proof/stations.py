"""Sections of a solid at telling heights, against those of its design."""

import numpy as np

from tapmodel.checks.ideal.expected import section_area
from tapmodel.checks.proof.record import Station
from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.measure.section import section_areas
from tapmodel.geometry.kernel.measure.section_general import general_section_area
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.shape.figures import figures_of
from tapmodel.tap.tap import Tap


def cut(tap: Tap, solid: Solid) -> tuple[Station, ...]:
    """Every station with the area measured on the solid and the one it must have.

    Raises:
        KernelError: when the kernel finds no closed outline.
    """
    named = station_heights(tap)
    heights = list(named.values())
    expected = section_area(tap, np.array(heights)).tolist()
    rows = zip(named, heights, _measured(solid, heights), expected, strict=True)
    stations = [Station(z, what, area, due) for what, z, area, due in rows]
    return tuple(sorted(stations, key=lambda station: station.z))


def _measured(solid: Solid, heights: list[float]) -> list[float]:
    try:
        return section_areas(solid, heights)
    except KernelError:
        # surfaces that other programs use and taps of our own do not
        return [general_section_area(solid, z) for z in heights]


def station_heights(tap: Tap) -> dict[str, float]:
    """Heights worth cutting at, by what is cut there [mm].

    The fractions are uneven on purpose: no corner of a regular tap lies there.
    """
    blank, flutes = tap.blank, tap.flutes
    end, length = blank.thread_length, tap.chamfer_length
    runout = figures_of(tap).runout_end
    full = end - length
    heights = {
        "chamfer, near the point": 0.137 * length,
        "chamfer, middle": 0.513 * length,
        "chamfer, last thread": 0.871 * length,
        "full thread, first": length + 0.2371 * full,
        "full thread, second": length + 0.6183 * full,
        "full thread, last": length + 0.9127 * full,
        "behind the thread": end + 0.4142 * (flutes.full_depth_length - end),
        "flute run-out": flutes.full_depth_length + 0.5773 * (runout - flutes.full_depth_length),
        "shank": runout + 0.6180 * (blank.square_start - runout),
        "square": blank.square_start + 0.4571 * blank.square_length,
    }
    if blank.has_neck:
        heights["neck"] = end + 0.7071 * blank.neck_length
    return heights
