"""The tap behind its thread before it is fluted: neck, shoulder, shank, square and rear centre."""

from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.preview.grid import Centre, closed_mesh
from tapmodel.shape.form import Form

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Largest angle between two columns [rad].
STEP = float(np.radians(3.0))
# Flats that end nearer to one another meet in a corner [rad].
_LEAST = 1e-9


def rear_mesh(form: Form) -> tuple[Floats, Indices]:
    """Closed mesh of everything behind the plane in which the thread ends, not fluted.

    Args:
        form: surfaces of the right-hand tap.

    Returns:
        Vertices (n, 3) [mm] and triangles (m, 3).
    """
    blank = form.tap.blank
    angles = _angles(blank.square_across_flats, blank.shank_diameter)
    radius, z = (np.stack(np.broadcast_arrays(*row), axis=-1) for row in _rows(form, angles))
    points = np.stack(
        [radius * np.cos(angles)[:, None], radius * np.sin(angles)[:, None], z], axis=-1
    )
    return closed_mesh(points, 0, Centre(), Centre(blank.rear_centre))


def _angles(across: float, shank: float) -> Floats:
    """Angles of the columns, among them those at which the flats of the square end [rad]."""
    half = min(float(np.arccos(min(across / shank, 1.0))), np.pi / 4)
    marks = (np.array([-half, half]) + np.pi / 2 * np.arange(4)[:, None]).ravel()
    marks = np.append(marks, marks[0] + 2 * np.pi)
    runs = [
        np.linspace(a, b, int(np.ceil((b - a) / STEP)), endpoint=False)
        for a, b in pairwise(marks.tolist())
        if b - a > _LEAST
    ]
    return np.concatenate(runs)


def _rows(form: Form, angles: Floats) -> tuple[list[Floats], list[Floats]]:
    """Radius and height of each row in the columns at `angles` [mm]."""
    blank, shank = form.tap.blank, form.tap.blank.shank_diameter / 2
    end, bevel = blank.overall_length, blank.rear_chamfer
    flat = (
        blank.square_across_flats / 2 / np.maximum(np.abs(np.cos(angles)), np.abs(np.sin(angles)))
    )
    squared = np.minimum(shank, flat)
    # The bevel cuts a flat along a hyperbola, which the columns meet between its two rims.
    crossing = end - np.clip(squared - (shank - bevel), 0.0, bevel)
    turned = [(form.turned[0].start_radius, form.turned[0].start)]
    turned += [(piece.end_radius, piece.end) for piece in form.turned[:-1]]
    rows = [
        *turned,
        (shank, blank.square_start),
        (squared, blank.square_start),
        (squared, crossing),
        (np.minimum(squared, shank - bevel), end),
    ]
    radii, heights = ([np.asarray(row[k], dtype=np.float64) for row in rows] for k in (0, 1))
    return [np.broadcast_to(r, angles.shape) for r in radii], [
        np.broadcast_to(h, angles.shape) for h in heights
    ]
