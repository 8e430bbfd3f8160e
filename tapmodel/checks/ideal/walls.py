"""The flutes in polar terms: where a flute's two walls stand at a radius, and who owns a point.

Written from the definitions in `tapmodel.tap.tap`, not from the geometry room: these
numbers judge that room's solid.
"""

import numpy as np
from numpy.typing import NDArray

from tapmodel.tap.tap import Flutes

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


def half_width(flutes: Flutes, z: Floats) -> Floats:
    """Half width of the void in a section at z [mm]: the cutter's radius, then its run-out.

    Beyond the full-depth length a section of ball and shank is again a disc and a strip, both of
    half width `sqrt(b**2 - (z - full_depth_length)**2)`.
    """
    beyond = np.maximum(z - flutes.full_depth_length, 0.0)
    return np.sqrt(np.maximum((flutes.cutter_diameter / 2) ** 2 - beyond**2, 0.0))


def floor_radius(flutes: Flutes, half: Floats) -> Floats:
    """Least radius of a void of half width `half` [mm]: the floor of the flute."""
    return np.hypot(flutes.centre_radius, flutes.offset) - half


def wall_angles(flutes: Flutes, radius: Floats, half: Floats) -> tuple[Floats, Floats]:
    """Polar angles of heel and cutting face at `radius`, from the flute's direction.

    Args:
        flutes: record of the flutes.
        radius: radii, any shape [mm]; below the floor both walls stand where the floor is.
        half: half width of the void at the same section [mm].

    Returns:
        Angle of the heel wall and of the cutting face [deg].
    """
    c, e = flutes.centre_radius, flutes.offset
    r = np.maximum(radius, 1e-12)
    reach = np.hypot(c, e)
    # cosine rule in the triangle axis - ball's centre - point of the arc
    cosine = (r**2 + reach**2 - half**2) / (2 * r * reach)
    # at the floor exactly 0, where rounding of the cosine would leave its root
    opening = np.where(r > reach - half, np.arccos(np.clip(cosine, -1.0, 1.0)), 0.0)
    middle = np.arctan2(e, c)
    heel, face = middle - opening, middle + opening
    on_face = r >= np.hypot(c, e + half)
    on_heel = r >= np.hypot(c, e - half)
    face = np.where(on_face, np.arcsin(np.clip((e + half) / r, -1.0, 1.0)), face)
    heel = np.where(on_heel, np.arcsin(np.clip((e - half) / r, -1.0, 1.0)), heel)
    return np.degrees(heel), np.degrees(face)


def crest_edge(flutes: Flutes, major: float) -> float:
    """Angle of the cutting face at the diameter `major` [mm] from the flute's direction [deg]."""
    half = np.asarray(flutes.cutter_diameter / 2)
    return float(wall_angles(flutes, np.asarray(major / 2), half)[1])


def spacing(flutes: Flutes) -> float:
    """Angle from one flute to the next [deg]."""
    return 360.0 / flutes.count


def owner(flutes: Flutes, theta: Floats, radius: Floats, half: Floats) -> tuple[Indices, Floats]:
    """Land that owns a point, and the point's angle behind the crest direction of its flute.

    The border between two lands is the middle of the void at the point's own radius, so that a
    point of an overhanging face or heel belongs to the land that carries that wall.

    Args:
        flutes: record of the flutes.
        theta: polar angles [deg].
        radius: radii [mm].
        half: half width of the void at the points' z [mm].

    Returns:
        Index of the land and the angle from the direction of that land's flute [deg].
    """
    heel, face = wall_angles(flutes, radius, half)
    middle = (heel + face) / 2
    behind = (theta - middle - np.asarray(flutes.angles)[:, None]) % 360.0
    land = np.argmin(behind, axis=0)
    return land, np.take_along_axis(behind, land[None, :], axis=0)[0] + middle


def wall_sweep(flutes: Flutes, half: Floats, heel_top: Floats, face_top: Floats) -> Floats:
    """Half the line integral of x dy - y dx down the heel wall and up the cutting face [mm²].

    Args:
        flutes: record of the flutes.
        half: half width of the void [mm].
        heel_top: radius at which the heel wall meets the land before the flute [mm].
        face_top: radius at which the cutting face meets the land behind the flute [mm].

    Returns:
        The flute's part of Green's sum for the area of the section.
    """
    c, e = flutes.centre_radius, flutes.offset
    (heel, _), (_, face) = (wall_angles(flutes, r, half) for r in (heel_top, face_top))
    u_heel, u_face = (r * np.cos(np.radians(a)) for r, a in ((heel_top, heel), (face_top, face)))
    t_heel, t_face = (r * np.sin(np.radians(a)) for r, a in ((heel_top, heel), (face_top, face)))
    # direction from the ball's centre, through 180 degrees at the floor; straight walls stop it
    start = np.arctan2(t_heel - e, np.minimum(u_heel - c, 0.0)) % (2 * np.pi)
    end = np.arctan2(t_face - e, np.minimum(u_face - c, 0.0)) % (2 * np.pi)
    arc = half**2 * (end - start)
    arc += c * half * (np.sin(end) - np.sin(start)) - e * half * (np.cos(end) - np.cos(start))
    lines = (e - half) * np.maximum(u_heel - c, 0.0) - (e + half) * np.maximum(u_face - c, 0.0)
    return (arc + lines) / 2
