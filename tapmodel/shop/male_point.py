"""The male point by which a tap without a front centre is held while it is made."""

import math
from dataclasses import dataclass

from tapmodel.designing.choose.steps import down
from tapmodel.tap.tap import Tap

ANGLE = 60.0
"""Of the point [deg], as of the centres that it runs in."""

SHARE = 0.9
"""Of the web between the flutes, or of the point where that is thinner: the cutter passes over it,
and a shoulder stays to touch. Rule of this program."""

_STEP = 0.01


@dataclass(frozen=True, slots=True)
class MalePoint:
    """A cone in front of the front face, parted off last.

    Attributes:
        diameter: where it stands on the front face, at most [mm].
        length: from there to its sharp tip [mm].
    """

    diameter: float
    length: float


def male_point(tap: Tap) -> MalePoint | None:
    """The largest one that is in nobody's way; None where a front centre holds the tap.

    Source: rule of this program, `SHARE`; length by the angle of the cone.
    """
    if tap.blank.front_centre > 0:
        return None
    diameter = down(SHARE * min(tap.flutes.core_diameter, tap.chamfer.point_diameter), _STEP)
    return MalePoint(diameter, diameter / 2 / math.tan(math.radians(ANGLE / 2)))
