"""Which sizes a solid has: overall length, thread, major diameter, core and cutter.

Each is read from faces or corners that agree with one another to the tolerance of foreign files;
where none agree, nothing is said of that size.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tapmodel import precision
from tapmodel.checks.ideal.laws import narrowed
from tapmodel.geometry.kernel.measure.sampling import Samples
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]

_SAME = 2 * precision.FOREIGN_FACE
_LEVELS = 2  # faces square to the axis between front and rear: behind the thread, at the square
_HEAP = 6  # corners that make out the crests
_CLEAR = 0.05  # away from both ends of the full thread, of its length
_FITTED = 5  # points of a flute's floor that show whether they lie on a circle
_BELOW = 0.95  # of the root's radius, under which nothing is but the flutes


class SizeName(StrEnum):
    """What is measured."""

    OVERALL_LENGTH = "overall-length"
    THREAD_LENGTH = "thread-length"
    MAJOR = "major"
    CORE = "core"
    CUTTER = "cutter"


@dataclass(frozen=True, slots=True)
class SizeSeen:
    """A size that is not as wanted [mm]."""

    name: SizeName
    seen: float
    wanted: float


def sizes_seen(
    tap: Tap, faces: TrimmedFaces, samples: Samples, foot: tuple[float, float, float]
) -> tuple[SizeSeen, ...]:
    """The sizes of a solid that are others than the tap's, as far as they are made out.

    Args:
        tap: the tap.
        faces: of a solid that lies along z.
        samples: several points of each of its faces.
        foot: where its axis meets its front [mm].

    Source: derived here.
    """
    corners, points = faces.corners - np.array(foot), samples.points - np.array(foot)
    wanted = {
        SizeName.OVERALL_LENGTH: tap.blank.overall_length,
        SizeName.THREAD_LENGTH: tap.blank.thread_length,
        SizeName.MAJOR: tap.thread.major,
        SizeName.CORE: tap.flutes.core_diameter,
        SizeName.CUTTER: tap.flutes.cutter_diameter,
    }
    overall = float(np.ptp(corners[:, :, 2]))
    found = {SizeName.OVERALL_LENGTH: overall}
    thread = _thread_length(corners, faces, overall)
    if thread is not None:
        found[SizeName.THREAD_LENGTH] = thread
        found |= _major(tap, corners, thread)
        found |= _flutes(tap, points[samples.faces.argsort(kind="stable")], np.sort(samples.faces))
    return tuple(
        SizeSeen(name, size, wanted[name])
        for name, size in found.items()
        if abs(size - wanted[name]) > _SAME
    )


def _thread_length(corners: Floats, faces: TrimmedFaces, overall: float) -> float | None:
    """Height of the lower one of the two faces that are square to the axis between the ends."""
    ends = np.concatenate([[0], np.cumsum(faces.sizes)])
    heights = [corners[low:high, :, 2] for low, high in pairwise(ends.tolist()) if high > low]
    flat = sorted(float(z.mean()) for z in heights if np.ptp(z) <= precision.FOREIGN_FACE)
    between = [z for z in flat if _SAME < z < overall - _SAME]
    steps = [z for n, z in enumerate(between) if n == 0 or z - between[n - 1] > _SAME]
    return steps[0] if len(steps) == _LEVELS else None


def _major(tap: Tap, corners: Floats, thread: float) -> dict[SizeName, float]:
    """The crests' diameter at the cutting edges, where no relief has taken anything off.

    Nothing of a rounded crest, whose top need not be a corner.
    """
    if tap.thread.rounded_crest:
        return {}
    x, y, z = corners.reshape(-1, 3).T
    begin = tap.chamfer_length
    gap = _CLEAR * (thread - begin)
    full = (z > begin + gap) & (z < thread - gap)
    radius = np.sort(np.hypot(x[full], y[full]) + narrowed(tap, z[full]))
    top = radius[radius > radius[-1] - _SAME] if len(radius) else radius
    return {SizeName.MAJOR: 2 * float(np.median(top))} if len(top) >= _HEAP else {}


def _flutes(tap: Tap, points: Floats, owners: NDArray[np.intp]) -> dict[SizeName, float]:
    """Core and cutter, where the floors of all flutes are arcs that agree."""
    starts = np.flatnonzero(np.diff(owners, prepend=-1))
    floors = np.array(list(_floors(tap, np.split(points, starts[1:]))))
    if not len(floors) or (np.ptp(floors, axis=0) > _SAME).any():
        return {}
    ball, away = np.median(floors, axis=0).tolist()
    return {SizeName.CORE: 2 * (away - ball), SizeName.CUTTER: 2 * ball}


def _floors(tap: Tap, faces: list[Floats]) -> Iterator[tuple[float, float]]:
    """Radius of the arc of each flute's floor, and how far its middle is from the axis [mm]."""
    root = _BELOW * tap.thread.minor / 2
    for points in faces:
        x, y, z = points[:, 0], points[:, 1], points[:, 2]
        lowest = float(np.hypot(x, y).min())
        if len(points) < _FITTED or lowest > root or np.ptp(z) < tap.thread.pitch:
            continue
        # x² + y² = 2 a x + 2 b y + c on the circle about (a, b)
        rows = np.stack([2 * x, 2 * y, np.ones_like(x)], axis=1)
        a, b, _ = np.linalg.lstsq(rows, x**2 + y**2)[0].tolist()
        radii = np.hypot(x - a, y - b)
        ball, away = float(radii.mean()), float(np.hypot(a, b))
        # the axis lies outside the arc of a flute, inside every other round face
        if np.ptp(radii) <= precision.FOREIGN_FACE and ball < away < tap.thread.major:
            yield ball, away
