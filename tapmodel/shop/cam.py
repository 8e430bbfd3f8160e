"""Where the ball of the cutter goes, in the frame of the model, for a mill that is programmed.

The frame is the model's own: z is the tap's axis and begins at the front face, +z runs towards the
square, and the cutter of the first flute stands along x. A left-hand tap is the mirror image in the
plane y = 0, so its flutes lie on the other side of x and follow each other the other way round.
"""

import math
from dataclasses import dataclass

from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

BEFORE = 1.0
"""Air between the ball and the plane of the front face where it comes down [mm]."""

Point = tuple[float, float, float]
"""x, y and z [mm]."""


@dataclass(frozen=True, slots=True)
class BallPath:
    """One flute, milled in one pass at full depth.

    All are places of the ball's centre.

    Attributes:
        turned: direction of the cutter's axis about z, counter-clockwise seen from the square and
            counted from x, 0 to 360 [deg].
        front: in front of the blank, the ball with `BEFORE` of air before the plane of its front.
        last: where it stops at full depth.
        lifted: straight out from there along the cutter's axis, just clear of thread and shank.
    """

    turned: float
    front: Point
    last: Point
    lifted: Point


@dataclass(frozen=True, slots=True)
class CutterReach:
    """Lengths of the cutter that must be free below its holder, from the tip [mm].

    Attributes:
        over_thread: with the holder's face on the crests.
        over_all: so that the holder passes over the thickest part: thread, shank or square.
    """

    over_thread: float
    over_all: float


def ball_paths(tap: Tap) -> tuple[BallPath, ...]:
    """The paths of the ball, flute by flute, in the order in which they follow each other about z.

    Source: derived here from the definition of the flutes.
    """
    sense = 1 if tap.thread.hand is Hand.RIGHT else -1
    paths = (_path(tap, sense, angle) for angle in tap.flutes.angles)
    return tuple(sorted(paths, key=lambda path: path.turned))


def _path(tap: Tap, sense: int, angle: float) -> BallPath:
    flutes, turned = tap.flutes, sense * math.radians(angle)
    along, across = (math.cos(turned), math.sin(turned)), sense * flutes.offset
    ball, stop = flutes.cutter_diameter / 2, flutes.full_depth_length

    def at(out: float, z: float) -> Point:
        return out * along[0] - across * along[1], out * along[1] + across * along[0], z

    return BallPath(
        turned=(sense * angle) % 360,
        front=at(flutes.centre_radius, -ball - BEFORE),
        last=at(flutes.centre_radius, stop),
        lifted=at(thickest(tap) + ball, stop),
    )


def thickest(tap: Tap) -> float:
    """Radius that clears thread, shank and square, which is milled out of the shank [mm].

    Source: derived here.
    """
    return max(tap.thread.major, tap.blank.shank_diameter) / 2


def cutter_reach(tap: Tap) -> CutterReach:
    """How far the cutter must stand out of its holder.

    Source: derived here.
    """
    tip = tap.flutes.centre_radius - tap.flutes.cutter_diameter / 2
    return CutterReach(tap.thread.major / 2 - tip, thickest(tap) - tip)
