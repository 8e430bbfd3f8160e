"""Points of the ideal flutes: both walls and the floor, from the front to the run-out's end."""

import math

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.ideal.laws import blank_radius
from tapmodel.checks.ideal.points.spread import polar, strewn
from tapmodel.checks.ideal.walls import floor_radius, half_width, wall_angles
from tapmodel.tap.design import TapDesign

Floats = NDArray[np.float64]
LEAST_HEIGHTS = 16  # on each stretch
RADII = 2  # on either wall, at each height


def flute_points(design: TapDesign) -> dict[str, Floats]:
    """Candidates on the right-hand tap, some beyond what other features leave of them."""
    blank, flutes = design.blank, design.flutes
    full, stop = flutes.full_depth_length, flutes.full_depth_length + flutes.cutter_diameter / 2
    thread, teeth = blank.thread_length, math.ceil(blank.thread_length / design.thread.pitch)
    top = np.full(1, max(design.thread.major, blank.shank_diameter) / 2)
    behind, runout = _heights(thread, full), _heights(full, min(flutes.runout_end, stop))
    return {
        "flute": _walls(design, np.concatenate([_heights(0.0, thread, teeth), behind]), top),
        "flute rim": _rim(design, behind),
        "run-out": _walls(design, runout, blank_radius(blank, runout)),
        "run-out rim": _rim(design, runout),
    }


def _heights(start: float, end: float, least: int = 0) -> Floats:
    """Heights between two, both ends included, closer towards the end where a ball leaves."""
    turn = np.linspace(0.0, math.pi / 2, max(least, LEAST_HEIGHTS))
    return start + (end - start) * np.sin(turn)


def _walls(design: TapDesign, z: Floats, top: Floats) -> Floats:
    """Points of both walls between floor and `top` at heights, and of the floor."""
    floor = floor_radius(design.flutes, half_width(design.flutes, z))
    share, _ = strewn(len(z), RADII)
    share[:, 0] = 0.0
    radius = floor[:, None] + (np.maximum(top, floor) - floor)[:, None] * share
    return _on_walls(design, radius, z[:, None])


def _rim(design: TapDesign, z: Floats) -> Floats:
    return _on_walls(design, blank_radius(design.blank, z), z)


def _on_walls(design: TapDesign, radius: Floats, z: Floats) -> Floats:
    flutes = design.flutes
    r, height = np.broadcast_arrays(radius, z)
    sides = wall_angles(flutes, r, half_width(flutes, height))
    made = [polar(r, side + angle, height) for side in sides for angle in flutes.angles]
    return np.concatenate(made)
