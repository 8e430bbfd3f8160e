"""The axial profile of the thread over one pitch, from crest to crest: lines, and arcs if rounded.

The axial offset w is measured from the middle of a crest towards the square; the profile repeats
every pitch. An arc touches both flanks, so a rounded profile has no corners.
"""

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import overload

import numpy as np
from numpy.typing import NDArray

from tapmodel.tap.tap import TapThread

Floats = NDArray[np.float64]


class Part(StrEnum):
    """Parts of the profile in the order of w, from the middle of a crest towards the square."""

    CREST = "crest"
    REAR_FLANK = "rear flank"
    ROOT = "root"
    FRONT_FLANK = "front flank"

    # Form looks parts up all the time; an enum's own hash is ten times as slow.
    __hash__ = str.__hash__

    @property
    def is_flank(self) -> bool:
        """Whether it is one of the two flanks."""
        return self in (Part.REAR_FLANK, Part.FRONT_FLANK)

    @property
    def following(self) -> "Part":
        """The next part; after the front flank that is the crest of the next turn."""
        parts = list(Part)
        return parts[(parts.index(self) + 1) % len(parts)]


@dataclass(frozen=True, slots=True)
class Segment:
    """A piece of the profile: from (`start`, `start_radius`) to (`end`, `end_radius`).

    `start` and `end` are axial offsets from the crest's middle [mm], radii in mm.

    Attributes:
        arc: radius of the arc that the piece is, + about a centre nearer to the axis (a crest),
            - about one farther away (a root); 0 for a straight piece [mm].
    """

    part: Part
    start: float
    end: float
    start_radius: float
    end_radius: float
    arc: float = 0.0

    @property
    def is_arc(self) -> bool:
        """Whether the piece is an arc, and not straight."""
        return self.arc != 0

    @property
    def middle(self) -> float:
        """Axial offset of the middle, an arc's highest or lowest point [mm]."""
        return (self.start + self.end) / 2

    @property
    def slope(self) -> float:
        """Rise of the radius with the offset, from end to end."""
        rise = self.end_radius - self.start_radius
        return rise / (self.end - self.start) if rise else 0.0

    @property
    def arc_centre(self) -> float:
        """Distance of an arc's centre from the axis [mm]."""
        half = (self.end - self.start) / 2
        return self.start_radius - math.copysign(math.sqrt(self.arc**2 - half**2), self.arc)

    @overload
    def radius(self, w: float) -> float: ...

    @overload
    def radius(self, w: Floats) -> Floats: ...

    def radius(self, w: Floats | float) -> Floats | float:
        """Radius at axial offsets w [mm].

        Lines go on beyond their ends; an arc goes on to where it stands upright, and stays there.
        """
        if not self.is_arc:
            return self.start_radius + self.slope * (w - self.start)
        height = np.sqrt(np.maximum(self.arc**2 - (w - self.middle) ** 2, 0.0))
        return self.arc_centre + np.copysign(height, self.arc)


def segments(thread: TapThread) -> tuple[Segment, ...]:
    """Crest, rear flank (falling towards the square), root, front flank, in order of w.

    Source: basic profile of the thread form with the tap's own crest and root (derived here).
    """
    pitch = thread.pitch
    crest_half, crest = _end(thread, thread.crest_flat, thread.crest_radius, thread.major / 2)
    root_half, root = _end(thread, thread.root_flat, -thread.root_radius, thread.minor / 2)
    root_start, root_end = pitch / 2 - root_half, pitch / 2 + root_half
    return (
        Segment(Part.CREST, -crest_half, crest_half, crest, crest, thread.crest_radius),
        Segment(Part.REAR_FLANK, crest_half, root_start, crest, root),
        Segment(Part.ROOT, root_start, root_end, root, root, -thread.root_radius),
        Segment(Part.FRONT_FLANK, root_end, pitch - crest_half, root, crest),
    )


def _end(thread: TapThread, flat: float, arc: float, extreme: float) -> tuple[float, float]:
    """Half the axial width of a crest or root, and the radius at which the flanks meet it [mm].

    An arc touches a flank where its normal leans by the flank angle from the axis.
    """
    if arc == 0:
        return flat / 2, extreme
    lean = math.radians(thread.flank_angle)
    return abs(arc) * math.cos(lean), extreme - arc * (1 - math.sin(lean))


def uncrested_radius(parts: tuple[Segment, ...], w: Floats) -> Floats:
    """The same with the flanks carried on over the crest until they meet."""
    crest, flank, _, front = parts
    pitch = front.end - crest.start
    away = np.abs(w - pitch * np.round(w / pitch))
    return np.where(away < crest.end, flank.radius(away), profile_radius(parts, w))


def profile_radius(parts: tuple[Segment, ...], w: Floats) -> Floats:
    """Radius of the whole profile at any axial offsets [mm].

    Args:
        parts: as `segments` gives them.
        w: offsets from a crest's middle [mm].
    """
    crest, flank, root, front = parts
    pitch = front.end - crest.start
    away = np.abs(w - pitch * np.round(w / pitch))
    found = np.where(away < crest.end, crest.radius(away), flank.radius(away))
    return np.where(away > root.start, root.radius(away), found)
