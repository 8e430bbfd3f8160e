"""Points of the ideal solid's boundary, on every feature and edge, for finding them on a solid.

Points of a solid held against the ideal never show what is missing from a large face; points of
the ideal held against the solid do. Candidates come from the definitions feature by feature, so
that the smallest gets its share; those that another feature has cut away are dropped.
"""

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.ideal.deviation import distance_to_ideal
from tapmodel.checks.ideal.laws import right_hand
from tapmodel.checks.ideal.points.blank import blank_points
from tapmodel.checks.ideal.points.flutes import flute_points
from tapmodel.checks.ideal.points.thread import thread_points
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]
ON = 1e-9  # distance from the boundary at which a candidate lies on it [mm]


def ideal_points(tap: Tap) -> dict[str, Floats]:
    """Points of the boundary by feature, shape (n, 3) each, features without a point left out.

    Args:
        tap: the tap, of either hand.

    Source: derived here from the definitions of the record.
    """
    found: dict[str, Floats] = {}
    for candidates in (thread_points(tap), flute_points(tap), blank_points(tap)):
        for feature, points in candidates.items():
            own_hand = right_hand(tap, points)  # the mirror image is its own inverse
            kept = own_hand[np.abs(distance_to_ideal(tap, own_hand).distance) < ON]
            if len(kept):
                found[feature] = kept
    return found
