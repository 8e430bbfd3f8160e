"""Points of the ideal blank: end faces, centres, turned lengths, square, and their edges."""

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.ideal.laws import CENTRE_SLOPE, blank_radius, narrowed
from tapmodel.checks.ideal.points.spread import polar
from tapmodel.tap.tap import Blank, Tap

Floats = NDArray[np.float64]
# Round the tap [deg]: no corner of a regular tap lies at any of these.
ANGLES = 1.7 + np.arange(32) * 11.25
# Across a feature: both its edges, places close to them, and its middle.
SHARES = np.array([0.0, 0.02, 0.5, 0.98, 1.0])
CENTRE_SHARES = np.array([0.0, 0.1, 0.5, 0.95])  # of the depth; the tip itself has no normal


def blank_points(tap: Tap) -> dict[str, Floats]:
    """Candidates on the right-hand tap, some beyond what other features leave of them."""
    blank, rear = tap.blank, tap.blank.overall_length
    bevelled = blank.shank_diameter / 2 - blank.rear_chamfer
    return {
        "front": _plane(0.0, blank.front_centre / 2, tap.chamfer.point_diameter / 2),
        "front centre": _centre(blank.front_centre, 0.0, 1.0),
        "thread end": _thread_end(tap),
        **_turned_lengths(blank),
        "square": _flats(blank),
        "square shoulder": _plane(
            blank.square_start, blank.square_across_flats / 2, blank.shank_diameter / 2
        ),
        "rear face": _plane(rear, blank.rear_centre / 2, bevelled),
        "rear centre": _centre(blank.rear_centre, rear, -1.0),
    }


def _thread_end(tap: Tap) -> Floats:
    """The plane between thread and blank, whichever is the thicker there."""
    thread, end = tap.thread, tap.blank.thread_length
    step = float(blank_radius(tap.blank, np.array([end]))[0])
    # one side of each step of the profile is met, from the root up or from the crest down
    lost = float(narrowed(tap, np.array(end)))
    ends = [d / 2 - lost for d in (thread.minor, thread.major)]
    return np.concatenate([_plane(end, step, radius) for radius in ends])


def _turned_lengths(blank: Blank) -> dict[str, Floats]:
    thread, rear = blank.thread_length, blank.overall_length
    neck, bevel = thread + blank.neck_length, rear - blank.rear_chamfer
    step = abs(blank.shank_diameter - blank.neck_diameter) / 2 if blank.has_neck else 0.0
    shank = neck + step / np.tan(np.radians(blank.shoulder_angle))
    lengths = {
        "neck": (thread, neck),
        "shoulder": (neck, shank),
        "shank": (shank, blank.square_start),
    }
    made = {name: _turned(blank, *ends) for name, ends in lengths.items() if ends[1] > ends[0]}
    made["corners of the square"] = _corners(blank, blank.square_start, bevel)
    if rear > bevel:
        made["rear chamfer"] = _corners(blank, bevel, rear)
    return made


def _corners(blank: Blank, start: float, end: float) -> Floats:
    """What the four flats leave of a turned length, or of its edge at the rear."""
    z = (start + (end - start) * SHARES)[:, None, None]
    radius = blank_radius(blank, z)
    flat = np.degrees(np.arccos(np.minimum(blank.square_across_flats / 2 / radius, 1.0)))
    turn = flat + (90.0 - 2 * flat) * SHARES + 90.0 * np.arange(4)[:, None]
    return polar(radius, turn, z)


def _turned(blank: Blank, start: float, end: float) -> Floats:
    z = (start + (end - start) * SHARES)[:, None]
    return polar(blank_radius(blank, z), ANGLES, z)


def _plane(z: float, inner: float, outer: float) -> Floats:
    radius = inner + (outer - inner) * SHARES
    return polar(radius[:, None], ANGLES, z)


def _centre(rim: float, face: float, inwards: float) -> Floats:
    """Wall of a centre in the face at z = `face` [mm]."""
    if rim == 0.0:
        return np.zeros((0, 3))
    depth = rim / 2 / CENTRE_SLOPE * CENTRE_SHARES[:, None]
    return polar(rim / 2 - depth * CENTRE_SLOPE, ANGLES[::2], face + inwards * depth)


def _flats(blank: Blank) -> Floats:
    """The four flats, with their edges along the tap."""
    side = blank.square_across_flats / 2
    z = blank.square_start + (blank.overall_length - blank.square_start) * SHARES
    reach = np.sqrt(np.maximum(blank_radius(blank, z) ** 2 - side**2, 0.0))
    across = np.minimum(reach, side)[:, None] * np.concatenate([-SHARES[::-1], SHARES])
    flat = np.stack(np.broadcast_arrays(side, across, z[:, None]), axis=-1).reshape(-1, 3)
    x, y, height = flat.T
    turns = [(x, y), (-y, x), (-x, -y), (y, -x)]
    return np.concatenate([np.stack([a, b, height], axis=1) for a, b in turns])
