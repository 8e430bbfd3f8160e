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

STUB = 0.75
"""Length of the stub in diameters of the cutter: half of one for the ball, which starts in front of
the front face, and air before the hollow centre. Rule of this program."""

_STEP = 0.01


@dataclass(frozen=True, slots=True)
class MalePoint:
    """A stub in front of the front face with a cone on its end, parted off last.

    Attributes:
        diameter: of the stub, at most [mm].
        stub: its length from the front face to the cone, at least: the ball starts beside it and
            must not meet the hollow centre that the cone runs in [mm].
        cone: length of the cone to its sharp tip [mm].
    """

    diameter: float
    stub: float
    cone: float


def male_point(tap: Tap) -> MalePoint | None:
    """The largest one that is in nobody's way; None where a front centre holds the tap.

    Source: rule of this program, `SHARE`; lengths by ball and cone.
    """
    if tap.blank.front_centre > 0:
        return None
    diameter = down(SHARE * min(tap.flutes.core_diameter, tap.chamfer.point_diameter), _STEP)
    stub = STUB * tap.flutes.cutter_diameter
    return MalePoint(diameter, stub, diameter / 2 / math.tan(math.radians(ANGLE / 2)))
