"""Points of the ideal flutes: both walls and the floor, from the front to the run-out's end."""

import math

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.ideal.laws import blank_radius
from tapmodel.checks.ideal.points.spread import polar, strewn
from tapmodel.checks.ideal.walls import floor_radius, half_width, wall_angles
from tapmodel.numerics import bracketed_roots
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]
LEAST_HEIGHTS = 16  # on each stretch
STEPS = 513  # between the full depth and where the ball stops
RADII = 2  # on either wall, at each height


def flute_points(tap: Tap) -> dict[str, Floats]:
    """Candidates on the right-hand tap, some beyond what other features leave of them."""
    blank, flutes = tap.blank, tap.flutes
    full = flutes.full_depth_length
    thread, teeth = blank.thread_length, math.ceil(blank.thread_length / tap.thread.pitch)
    top = np.full(1, max(tap.thread.major, blank.shank_diameter) / 2)
    behind, runout = _heights(thread, full), _heights(full, _runout_end(tap))
    return {
        "flute": _walls(tap, np.concatenate([_heights(0.0, thread, teeth), behind]), top),
        "flute rim": _rim(tap, behind),
        "run-out": _walls(tap, runout, blank_radius(blank, runout)),
        "run-out rim": _rim(tap, runout),
    }


def _runout_end(tap: Tap) -> float:
    """Where the ball leaves the blank [mm]."""
    full, ball = tap.flutes.full_depth_length, tap.flutes.cutter_diameter / 2
    middle = math.hypot(tap.flutes.centre_radius, tap.flutes.offset)

    def cut(z: Floats) -> Floats:
        reach = np.sqrt(np.maximum(ball**2 - (z - full) ** 2, 0.0))
        return blank_radius(tap.blank, z) - (middle - reach)

    z = np.linspace(full, full + ball, STEPS)
    last = int(np.max(np.nonzero(cut(z) > 0)[0], initial=0))
    if last == STEPS - 1:
        return float(z[-1])
    return float(bracketed_roots(cut, z[last : last + 1], z[last + 1 : last + 2])[0])


def _heights(start: float, end: float, least: int = 0) -> Floats:
    """Heights between two, both ends included, closer towards the end where a ball leaves."""
    turn = np.linspace(0.0, math.pi / 2, max(least, LEAST_HEIGHTS))
    return start + (end - start) * np.sin(turn)


def _walls(tap: Tap, z: Floats, top: Floats) -> Floats:
    """Points of both walls between floor and `top` at heights, and of the floor."""
    floor = floor_radius(tap.flutes, half_width(tap.flutes, z))
    share, _ = strewn(len(z), RADII)
    share[:, 0] = 0.0
    radius = floor[:, None] + (np.maximum(top, floor) - floor)[:, None] * share
    return _on_walls(tap, radius, z[:, None])


def _rim(tap: Tap, z: Floats) -> Floats:
    return _on_walls(tap, blank_radius(tap.blank, z), z)


def _on_walls(tap: Tap, radius: Floats, z: Floats) -> Floats:
    flutes = tap.flutes
    r, height = np.broadcast_arrays(radius, z)
    sides = wall_angles(flutes, r, half_width(flutes, height))
    made = [polar(r, side + angle, height) for side in sides for angle in flutes.angles]
    return np.concatenate(made)
