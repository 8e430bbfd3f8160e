"""Which thread a solid has, read from the points of its flanks: number of starts, pitch diameter.

A flank is a straight line in the axial section, so along it the place on the axis and the radius
make one number that is the same for all of its points, at any angle once the helix is undone: the
points of a flank heap up at that number, those of everything else are strewn.
"""

from dataclasses import dataclass
from math import radians, tan

import numpy as np
from numpy.typing import NDArray

from tapmodel import precision
from tapmodel.checks.ideal.laws import land_angles, narrowed, relief_drop, right_hand
from tapmodel.tap.tap import Tap
from tapmodel.words import ReliefPlace

Floats = NDArray[np.float64]

MOST_STARTS = 12
"""Numbers of starts that are tried."""

# Points of one flank are this near to each other [mm]; so many of them make a heap, which is so
# many times as high as that of any other number of starts.
_NARROW, _HEAP, _CLEARLY = 2 * precision.FOREIGN_FACE, 20, 3
# Away from crest and root, of the height between them.
_CLEAR = 0.05


@dataclass(frozen=True, slots=True)
class ThreadSeen:
    """The thread of a solid whose pitch and flank angle are the tap's.

    Attributes:
        starts: of the thread.
        pitch_diameter: likewise [mm].
    """

    starts: int
    pitch_diameter: float


def thread_seen(tap: Tap, points: Floats, foot: tuple[float, float, float]) -> ThreadSeen | None:
    """Starts and pitch diameter of a solid that lies along z; None where no flank is made out.

    Args:
        tap: the tap, which tells where to look, and the relief of its flanks.
        points: some of each of the solid's faces, on the exact surfaces, shape (n, 3) [mm].
        foot: where its axis meets its front [mm].

    Source: derived here.
    """
    placed = right_hand(tap, points - np.array(foot))
    radius, theta, phi = land_angles(tap, placed)
    thread, z = tap.thread, placed[:, 2]
    radius = radius + narrowed(tap, z)
    if tap.relief.thread.applies_to is ReliefPlace.THREAD:
        radius = radius + relief_drop(tap.relief.thread, thread.major, phi)
    low, high = thread.minor / 2, thread.major / 2
    gap = _CLEAR * (high - low)
    between = (radius > low + gap) & (radius < high - gap)
    inside = between & (z > 0) & (z < tap.blank.thread_length)
    radius, theta, z = radius[inside], theta[inside], z[inside]
    slope = tan(radians(thread.flank_angle))
    found: list[tuple[int, ThreadSeen]] = []
    for starts in range(1, MOST_STARTS + 1):
        along = z - starts * thread.pitch * theta / 360.0
        heaps = [_flank(along + side * slope * radius, thread.pitch) for side in (1, -1)]
        (count, rising), (other, falling) = heaps
        # ridge and groove are equally wide at the pitch diameter: P/2 between the flanks there
        apart = rising - falling - thread.pitch / 2 - slope * thread.pitch_diameter
        more = (apart + thread.pitch / 2) % thread.pitch - thread.pitch / 2
        seen = ThreadSeen(starts, thread.pitch_diameter + more / slope)
        found.append((min(count, other), seen))
    (count, seen), (next_one, _) = sorted(found, key=lambda each: each[0], reverse=True)[:2]
    return seen if count >= max(_HEAP, _CLEARLY * next_one) else None


def _flank(numbers: Floats, pitch: float) -> tuple[int, float]:
    """The heap of a flank that comes once in each pitch, and where; 0 for one that does not.

    In a thread of half the pitch there are two heaps in a pitch, in one of twice or three times the
    pitch the same flank is missing from every second pitch, or from two of three.
    """
    count, place = _heap(numbers, pitch)
    turns = (numbers - place) / pitch
    members = np.abs(turns - np.round(turns)) * pitch <= _NARROW
    if _CLEARLY * _heap(numbers[~members], pitch)[0] > count:
        return 0, place
    numbered = np.round(turns[members]).astype(np.intp)
    for every in (2, 3):
        shares = np.bincount(numbered % every, minlength=every)
        if 2 * every * int(shares.min()) < len(numbered):
            return 0, place
    return count, place


def _heap(numbers: Floats, period: float) -> tuple[int, float]:
    """How many of the numbers lie together, and where, by the period."""
    ordered = np.sort(numbers % period)
    if not len(ordered):
        return 0, 0.0
    around = np.concatenate([ordered, ordered + period])
    ends = np.searchsorted(around, ordered + _NARROW, side="right")
    counts = ends - np.arange(len(ordered))
    best = int(np.argmax(counts))
    return int(counts[best]), float(np.median(around[best : int(ends[best])]))
