"""Where the ball of the cutter goes, in the frame of the model, for a mill that is programmed.

The frame is the model's own: z is the tap's axis and begins at the front face, +z runs towards the
square, and the cutter of the first flute stands along x. A left-hand tap is the mirror image in the
plane y = 0, so its flutes lie on the other side of x and follow each other the other way round.
"""

import math
from dataclasses import dataclass

from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

Point = tuple[float, float, float]
"""x, y and z [mm]."""


@dataclass(frozen=True, slots=True)
class BallPath:
    """One flute, milled in one pass at full depth.

    Attributes:
        turned: direction of the cutter's axis about z, counter-clockwise seen from the square and
            counted from x, 0 to 360 [deg].
        front: the ball's centre over the front face.
        last: the ball's centre where it stops and is lifted along the cutter's axis.
        runout_begin: where the arc that the ball then leaves begins, on the core.
        runout_end: where it leaves the blank; None where the flute runs out in front of `last`.
    """

    turned: float
    front: Point
    last: Point
    runout_begin: Point
    runout_end: Point | None


@dataclass(frozen=True, slots=True)
class CutterReach:
    """Lengths of the cutter that must be free below its holder, from the tip [mm].

    Attributes:
        over_thread: with the holder's face on the crests.
        over_all: so that the holder passes over the thickest part: thread, shank or square.
    """

    over_thread: float
    over_all: float


def ball_paths(tap: Tap, runout_end: float) -> tuple[BallPath, ...]:
    """The paths of the ball, flute by flute.

    Args:
        tap: every number of it.
        runout_end: z where the ball leaves the blank [mm], as `tapmodel.shape.figures` has it.

    Source: derived here from the definition of the flutes. What the ball leaves nearest to the axis
    lies on the ray from there through its centre, so the arc of the run-out lies in the plane of
    that ray and z.
    """
    sense = 1 if tap.thread.hand is Hand.RIGHT else -1
    return tuple(_path(tap, sense, angle, runout_end) for angle in tap.flutes.angles)


def _path(tap: Tap, sense: int, angle: float, runout_end: float) -> BallPath:
    flutes, turned = tap.flutes, sense * math.radians(angle)
    ball, across = flutes.cutter_diameter / 2, sense * flutes.offset
    x = flutes.centre_radius * math.cos(turned) - across * math.sin(turned)
    y = flutes.centre_radius * math.sin(turned) + across * math.cos(turned)
    stop, distance = flutes.full_depth_length, math.hypot(x, y)

    def lowest(z: float) -> Point:
        below = math.sqrt(max(ball**2 - (z - stop) ** 2, 0.0))
        # a cutter that stands in the axis itself leaves no core, which a rule refuses
        share = 1 - below / distance if distance else 0.0
        return share * x, share * y, z

    return BallPath(
        turned=(sense * angle) % 360,
        front=(x, y, 0.0),
        last=(x, y, stop),
        runout_begin=lowest(stop),
        runout_end=lowest(runout_end) if runout_end > stop else None,
    )


def cutter_reach(tap: Tap) -> CutterReach:
    """How far the cutter must stand out of its holder.

    The corners of the square are never thicker than the shank, out of which it is milled.

    Source: derived here.
    """
    flutes, crest = tap.flutes, tap.thread.major / 2
    tip = flutes.centre_radius - flutes.cutter_diameter / 2
    return CutterReach(crest - tip, max(crest, tap.blank.shank_diameter / 2) - tip)
