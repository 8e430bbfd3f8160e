"""How far points lie from the boundary of the ideal solid, and on which surface they lie.

The solid is written as least and greatest of signed distances to its surfaces, positive outside.
Planes, ball, cutter and centres are exact, flanks and cones scaled by their own slope, relieved
surfaces out by 1 - cos(relief angle) of the distance. So a point of the true boundary gives 0, a
point near it its distance, and a point on something that should have been cut away the depth of
what is left standing.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.ideal.laws import land_angles, right_hand, void_depth
from tapmodel.checks.ideal.surfaces import Layer, closest, front, land, named, rear, square, widest
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Deviation:
    """Distances of n points to the ideal solid.

    Attributes:
        distance: signed, positive outside the solid, shape (n,) [mm].
        surface: name of the surface each point lies nearest, shape (n,): "thread", "chamfer",
            "flute", "run-out", "blank", "square" or "front".
    """

    distance: Floats
    surface: NDArray[np.str_]


def distance_to_ideal(tap: Tap, points: Floats) -> Deviation:
    """Signed distance of points to the ideal solid.

    Args:
        tap: the tap.
        points: shape (n, 3), in the frame of the model, of either hand [mm].

    Returns:
        Distances and surfaces.

    Source: derived here from the definitions of the record.
    """
    points, blank = right_hand(tap, points), tap.blank
    radius, theta, phi = land_angles(tap, points)
    z = points[:, 2]
    threaded, turned = land(tap, radius, theta, phi, z), rear(blank, radius, z)
    # where both reach, neither ends: the plane between them is no boundary there
    body = closest(
        widest(threaded, named(z - blank.thread_length, "blank")),
        widest(turned, named(blank.thread_length - z, "blank")),
        widest(threaded, turned),
    )
    cut = [_flutes(tap, points), square(blank, points), front(blank, radius, z)]
    return Deviation(*widest(body, *cut))


def largest_by_surface(deviation: Deviation) -> dict[str, float]:
    """Largest distance, without sign, on each surface that has points [mm]."""
    return {
        str(name): float(np.abs(deviation.distance[deviation.surface == name]).max())
        for name in np.unique(deviation.surface)
    }


def _flutes(tap: Tap, points: Floats) -> Layer:
    depth = void_depth(tap.flutes, points).max(axis=0)
    beyond = points[:, 2] > tap.flutes.full_depth_length
    return Layer(depth, np.where(beyond, "run-out", "flute"))
