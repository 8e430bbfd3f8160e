"""Torque against depth: the chamfer enters tooth by tooth, cuts, and leaves or stops."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.torque.cutting import SAME, together
from tapmodel.prediction.torque.friction import RubbingThread, engaged_length, land_friction
from tapmodel.prediction.torque.record import Course
from tapmodel.standards.materials.work import WorkMaterial

Floats = NDArray[np.float64]

_PLAIN = 24
"""Places between which the friction, which has no steps, is drawn."""


@dataclass(frozen=True, slots=True)
class Way:
    """What changes on the way through a hole.

    Attributes:
        heights: z of the teeth, ascending, (n,) [mm].
        torques: of the teeth, (n,) [N·m].
        rubbing: the full thread.
        material: of the work.
        reach: thickness of the work; `inf` for a hole with a bottom [mm].
        stop: depth of the front where the tap is turned back [mm].
    """

    heights: Floats
    torques: Floats
    rubbing: RubbingThread
    material: WorkMaterial
    reach: float
    stop: float

    def friction(self, fronts: Floats) -> Floats:
        """Of the lands, for places of the front: least, likely and greatest, (3, n) [N·m]."""
        engaged = engaged_length(self.rubbing, fronts, self.reach)
        return land_friction(self.rubbing, self.material, engaged)

    def turning_points(self) -> Floats:
        """Every place of the front where torque steps or bends, and the stop, (n,) [mm]."""
        rubs = np.array([self.rubbing.begins, self.rubbing.ends])
        places = [self.heights, rubs]
        if math.isfinite(self.reach):
            places += [self.heights + self.reach, rubs + self.reach]
        found = np.concatenate(places)
        return np.append(found[(found > 0) & (found < self.stop)], self.stop)


def stop_of(heights: Floats, chamfer_length: float, depth: float, *, blind: bool) -> float:
    """Depth of the front where the thread is finished [mm].

    In a hole with a bottom the full thread reaches so deep and the chamfer stands below it; through
    the work the tap goes until its last cutting tooth is out, and by a hundredth of that more.

    Source: derived here.
    """
    if blind or not heights.size:
        return depth + chamfer_length
    return 1.01 * max(depth + float(heights[-1]), depth + chamfer_length)


def course_in(way: Way, scale: Floats) -> Course:
    """The band of the way in.

    Args:
        way: through the hole.
        scale: cutting torque of its lines in that of the teeth, (3,).

    Source: derived here.
    """
    places = way.turning_points()
    fronts = np.sort(
        np.concatenate(
            (
                np.linspace(0.0, way.stop, _PLAIN),
                places,
                # Either side of a step: before a tooth meets the work, and after it has left.
                np.maximum(places - SAME, 0.0),
                np.minimum(places[:-1] + 2 * SAME, way.stop),
            )
        )
    )
    cutting = together(way.heights, way.torques, fronts, way.reach)
    low, likely, high = np.outer(scale, cutting) + way.friction(fronts)
    # Where one end has more friction and less cutting than the middle, the lines would cross.
    return Course(fronts, np.minimum(low, likely), likely, np.maximum(high, likely))


def course_back(way: Way, roots: Floats) -> Course:
    """The band of the way back: first the roots of the chips, then friction until the tap is out.

    Args:
        way: through the hole.
        roots: torque that shears them, least, likely and greatest, (3,) [N·m].

    Source: derived here.
    """
    plain = np.linspace(0.0, way.stop, _PLAIN)
    fronts = np.sort(np.concatenate((plain, way.turning_points())))[::-1]
    band = way.friction(fronts)
    # A chip is off before the tap has turned back by a chip's width, so it takes no depth.
    band[:, 0] += roots
    return Course(fronts, *band)
