"""Volume and section areas that the solid of a design must have, without any CAD kernel."""

from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.ideal.areas import centres_area, plain_area, threaded_area
from tapmodel.checks.ideal.laws import CENTRE_SLOPE, relief_drop
from tapmodel.checks.ideal.walls import spacing
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]
PANELS_PER_PITCH = 32
PANELS_FULL_PITCH = 96  # of the one pitch that stands for all alike
PANELS_BEHIND = 60
NODES, WEIGHTS = np.polynomial.legendre.leggauss(4)


def section_area(tap: Tap, z: Floats) -> Floats:
    """Area of the ideal solid's section at each height, 0 outside the tap.

    Args:
        tap: the tap.
        z: heights, any shape [mm]; at the thread's end plane the side of the blank counts.

    Returns:
        Areas, same shape [mm²].

    Source: derived here, Green's theorem on the outline that the record defines.
    """
    heights = np.asarray(z, dtype=np.float64).ravel()
    area = np.zeros_like(heights)
    solid = (heights >= 0.0) & (heights <= tap.blank.overall_length)
    threaded = solid & (heights < tap.blank.thread_length)
    plain = solid & ~threaded
    if threaded.any():
        area[threaded] = threaded_area(tap, heights[threaded])
    if plain.any():
        area[plain] = plain_area(tap, heights[plain])
    area[solid] -= centres_area(tap, heights[solid])
    return area.reshape(np.shape(z))


def solid_volume(tap: Tap, refinement: int = 1) -> float:
    """Volume of the ideal solid [mm³]: Gauss over z of the section area, between its breaks.

    Args:
        tap: the tap.
        refinement: factor on the number of panels, for showing that the result has converged.

    Source: derived here.
    """
    start, turns = _alike(tap)
    end = start + turns * tap.thread.pitch
    breaks = _breaks(tap)
    below = np.append(breaks[breaks < start], start)
    above = np.append(end, breaks[breaks > end])
    volume = 0.0
    for low, high in [*pairwise(below.tolist()), *pairwise(above.tolist())]:
        panels = PANELS_BEHIND
        if high <= tap.blank.thread_length:
            panels = int(np.ceil(PANELS_PER_PITCH * (high - low) / tap.thread.pitch))
        volume += _between(tap, low, high, panels * refinement)
    if turns:
        one = (start, start + tap.thread.pitch)
        volume += turns * _between(tap, *one, PANELS_FULL_PITCH * refinement)
    return volume


def _between(tap: Tap, low: float, high: float, panels: int) -> float:
    # the turned variable takes the root out of a section that starts or ends like a ball
    ends = np.linspace(0.0, np.pi, panels + 1)
    half = np.diff(ends)[:, None] / 2
    turn = ends[:-1, None] + half * (1 + NODES)
    area = section_area(tap, low + (high - low) * (1 - np.cos(turn)) / 2)
    return (high - low) / 2 * float((half * WEIGHTS * np.sin(turn) * area).sum())


def _alike(tap: Tap) -> tuple[float, int]:
    """Where the sections begin to repeat with the pitch [mm], and how often they do.

    A screw motion by one pitch takes the thread to itself, unless it narrows; neither chamfer nor
    front centre may reach so far, and the flutes must be at full depth.
    """
    if tap.thread.back_taper:
        return 0.0, 0
    blank, chamfer, thread = tap.blank, tap.chamfer, tap.thread
    land = np.linspace(0.0, spacing(tap.flutes), 181)
    drop = float(relief_drop(tap.relief.chamfer, thread.major, land).max())
    above = thread.major / 2 + drop - chamfer.point_diameter / 2
    start = max(above / np.tan(np.radians(chamfer.angle)), blank.front_centre / 2 / CENTRE_SLOPE)
    end = min(blank.thread_length, tap.flutes.full_depth_length)
    turns = max(int((end - start) / thread.pitch), 0)
    return (float(start), turns) if turns else (0.0, 0)


def _breaks(tap: Tap) -> Floats:
    """Heights at which the section changes its law, both ends included, sorted [mm]."""
    blank, flutes = tap.blank, tap.flutes
    neck_end = blank.thread_length + blank.neck_length
    step = abs(blank.shank_diameter - blank.neck_diameter) / 2 if blank.has_neck else 0.0
    ball = flutes.cutter_diameter / 2
    clear = np.hypot(flutes.centre_radius, flutes.offset) - blank.shank_diameter / 2
    places = [
        0.0,
        blank.front_centre / 2 / CENTRE_SLOPE,
        tap.chamfer_length,
        blank.thread_length,
        neck_end,
        neck_end + step / np.tan(np.radians(blank.shoulder_angle)),
        flutes.full_depth_length,
        flutes.full_depth_length + ball,
        flutes.full_depth_length + np.sqrt(max(ball**2 - max(clear, 0.0) ** 2, 0.0)),
        blank.square_start,
        blank.overall_length - blank.rear_chamfer,
        blank.overall_length - blank.rear_centre / 2 / CENTRE_SLOPE,
        blank.overall_length,
    ]
    return np.unique(np.clip(places, 0.0, blank.overall_length))
