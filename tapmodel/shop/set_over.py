"""How far the tailstock is set over to turn what is not parallel to the axis of a tap."""

import math

from tapmodel.shop.male_point import male_point
from tapmodel.tap.tap import Tap

MOST_LEAN = 5.0
"""Of the work between its centres [deg]: beyond, they bear on an edge. From memory."""

MOST_SET_OVER = 10.0
"""Way of the tailstock of a small lathe to one side [mm]. From memory."""


def tailstock_set_over(tap: Tap) -> float:
    """Half the taper over the whole length that is held between the centres [mm].

    Set over so that the tool cuts deeper towards the shank; the shank, which stays a cylinder, is
    turned before. The thread's pitch is then that of the lathe within a millionth.

    Args:
        tap: any.

    Source: common practice of turning tapers between centres.
    """
    return tap.thread.narrowing * tap.blank.overall_length


def between_centres(tap: Tap) -> float:
    """Length of the work between its centres while the tap is turned [mm].

    Source: derived here: the tap, and in front the male point of one without a front centre.
    """
    point = male_point(tap)
    return tap.blank.overall_length + (point.stub + point.cone if point else 0.0)


def chamfer_set_over(tap: Tap) -> float | None:
    """How far the tailstock is set over to turn the chamfer with the carriage's own feed [mm].

    None where the work has no centre at the rear, leans by more than `MOST_LEAN`, or the tailstock
    would have to go further than `MOST_SET_OVER`.

    Source: common practice of turning tapers between centres; the work is as long as it was, so its
    axis leans by the angle whose sine is the way over the length.
    """
    angle = tap.chamfer.angle
    over = between_centres(tap) * math.sin(math.radians(angle))
    reached = angle <= MOST_LEAN and over <= MOST_SET_OVER
    return over if reached and tap.blank.rear_centre > 0 else None
