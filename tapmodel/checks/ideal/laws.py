"""The ideal solid as plain functions of a point: what the record of a design means.

Angles in degrees, lengths in mm. `phi` counts behind the crest edge of the point's own land.
Everything here describes the right-hand tap; `right_hand` mirrors points of a left-hand one.
"""

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.ideal.walls import crest_edge, half_width, owner
from tapmodel.tap.tap import Blank, Chamfer, Flutes, Relief, Tap, TapThread
from tapmodel.words import Hand, ReliefKind, ReliefPlace

Floats = NDArray[np.float64]
CENTRE_SLOPE = float(np.tan(np.radians(30.0)))  # of a 60-degree centre


def right_hand(tap: Tap, points: Floats) -> Floats:
    """The points as they lie on the right-hand tap, shape (n, 3) [mm]."""
    mirror = -1.0 if tap.thread.hand is Hand.LEFT else 1.0
    return np.asarray(points, dtype=np.float64) * np.array([1.0, mirror, 1.0])


def relief_drop(relief: Relief, major: float, phi: Floats) -> Floats:
    """Radial drop [mm] at `phi` [deg]: fall of the ray's meeting with the relief arc.

    The arc passes through the place where the drop begins, at the tap's own radius. Eccentric, it
    is as large as the tap, so edge, axis and centre make a triangle with two equal sides;
    con-eccentric, it touches the margin's circle, and its centre lies on the radius to there.

    Source: the definition of the relief, recomputed here as ray against circle.
    """
    if relief.kind is ReliefKind.CONCENTRIC:
        return np.zeros_like(phi)
    offset, begin = relief.arc_offset, 0.0
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        begin = relief.margin_angle
        behind, radius, direction = np.maximum(phi, begin), major / 2 - offset, begin
    else:
        behind, radius = phi, major / 2
        direction = -np.degrees(np.arccos(offset / major))

    def reach(angle: Floats) -> Floats:
        ahead = offset * np.cos(np.radians(angle - direction))
        # Beyond the land the ray may miss the circle; its nearest point serves the root finding.
        square = ahead**2 - offset**2 + radius**2
        return ahead + np.sqrt(np.maximum(square, 0.0))

    return reach(np.asarray(begin)) - reach(behind)


def from_crest(thread: TapThread, theta: Floats, z: Floats) -> Floats:
    """Axial distance from the nearest crest's middle, towards the square positive [mm]."""
    along = z - thread.first_z - thread.lead * theta / 360.0
    return (along + thread.pitch / 2) % thread.pitch - thread.pitch / 2


def flank_radius(thread: TapThread, w: Floats) -> Floats:
    """Radius of the flank lines [mm]: a ridge is P/2 wide at the pitch diameter."""
    beyond = thread.pitch / 4 - np.abs(w)
    return thread.pitch_diameter / 2 + beyond / np.tan(np.radians(thread.flank_angle))


def profile_radius(thread: TapThread, w: Floats) -> Floats:
    """Radius of the axial profile [mm]: flanks between crest and root, flat or rounded.

    An arc's centre lies its radius inside the extreme, and the arc reaches as far along the axis
    as its normal leans: to the cosine of the flank angle.
    """
    found = np.clip(flank_radius(thread, w), thread.minor / 2, thread.major / 2)
    reach = np.cos(np.radians(thread.flank_angle))
    crest, root = thread.crest_radius, thread.root_radius
    height = np.sqrt(np.maximum(crest**2 - w**2, 0.0))
    found = np.where(np.abs(w) < crest * reach, thread.major / 2 - crest + height, found)
    beside = thread.pitch / 2 - np.abs(w)
    depth = np.sqrt(np.maximum(root**2 - beside**2, 0.0))
    return np.where(beside < root * reach, thread.minor / 2 + root - depth, found)


def narrowed(tap: Tap, z: Floats) -> Floats:
    """Radius that the thread loses by its back taper at heights z, less than 0 before [mm].

    Nothing is lost where the cone of the chamfer reaches the stated diameter over the crests.
    """
    thread, chamfer = tap.thread, tap.chamfer
    rise = (thread.major - chamfer.point_diameter) / np.tan(np.radians(chamfer.angle))
    return thread.back_taper / 100 * (z - rise / 2) / 2


def crest_may_rise(tap: Tap) -> bool:
    """Whether the arc of a crest relieved alone is met in front of the edge, where it rises.

    Behind a back taper the edge of a face with negative rake lies there; the flanks rise with it.
    """
    relief, place = tap.relief.thread, tap.relief.thread.applies_to
    eccentric = relief.kind is ReliefKind.ECCENTRIC and place is ReliefPlace.CREST
    return eccentric and tap.thread.back_taper > 0


def cone_radius(chamfer: Chamfer, z: Floats) -> Floats:
    """Radius of the chamfer cone at the edge [mm]."""
    return chamfer.point_diameter / 2 + z * np.tan(np.radians(chamfer.angle))


def land_radii(tap: Tap, phi: Floats, theta: Floats, z: Floats) -> list[Floats]:
    """Radii of all surfaces over a land; the solid's own is the least of them [mm].

    Args:
        tap: the tap.
        phi: angles behind the crest edge [deg].
        theta: polar angles [deg].
        z: heights [mm].

    Returns:
        Thread profile, chamfer cone and, where only the crest is relieved, the crest's limit.
    """
    thread, place = tap.thread, tap.relief.thread.applies_to
    drop = relief_drop(tap.relief.thread, thread.major, phi)
    lost = narrowed(tap, z)
    profile = profile_radius(thread, from_crest(thread, theta, z)) - lost
    cone = cone_radius(tap.chamfer, z) - relief_drop(tap.relief.chamfer, thread.major, phi)
    if place is ReliefPlace.THREAD:
        return [profile - drop, cone]
    if place is ReliefPlace.CREST:
        if crest_may_rise(tap):
            flank = flank_radius(thread, from_crest(thread, theta, z)) - lost
            profile = np.where(profile < thread.major / 2 - lost, profile, flank)
        return [profile, cone, thread.major / 2 - drop - lost]
    return [profile, cone]


def land_radius(tap: Tap, phi: Floats, theta: Floats, z: Floats) -> Floats:
    """Radius of the solid over a land [mm]; arguments as `land_radii`."""
    return np.minimum.reduce(land_radii(tap, phi, theta, z))


def blank_radius(blank: Blank, z: Floats) -> Floats:
    """Radius of the turned blank behind the thread [mm]: neck, shoulder, shank, rear chamfer."""
    shank = blank.shank_diameter / 2
    neck = blank.neck_diameter / 2 if blank.has_neck else shank
    behind = np.maximum(z - blank.thread_length - blank.neck_length, 0.0)
    rise = behind * np.tan(np.radians(blank.shoulder_angle))
    turned = np.minimum(neck + rise, shank) if shank > neck else np.maximum(neck - rise, shank)
    return np.minimum(turned, shank - blank.rear_chamfer + (blank.overall_length - z))


def centre_radius(rim: float, depth: Floats) -> Floats:
    """Radius of a centre of rim diameter `rim` at `depth` below its face [mm], 0 past its tip."""
    return np.maximum(rim / 2 - depth * CENTRE_SLOPE, 0.0)


def in_flute(flutes: Flutes, points: Floats) -> NDArray[np.bool_]:
    """Whether each point lies in any flute's void."""
    return void_depth(flutes, points).max(axis=0) > 0.0


def void_depth(flutes: Flutes, points: Floats) -> Floats:
    """Depth of each point inside each flute's void, negative outside, shape (flutes, n) [mm].

    The cutter's passage is everything within its radius of the quarter-plane t = offset,
    u >= centre_radius, z <= full_depth_length, so the depth is a true distance.
    """
    turn = np.radians(np.asarray(flutes.angles))[:, None]
    u = points[:, 0] * np.cos(turn) + points[:, 1] * np.sin(turn)
    t = points[:, 1] * np.cos(turn) - points[:, 0] * np.sin(turn)
    below = np.maximum(flutes.centre_radius - u, 0.0)
    beyond = np.maximum(points[:, 2] - flutes.full_depth_length, 0.0)
    return flutes.cutter_diameter / 2 - np.sqrt(below**2 + (t - flutes.offset) ** 2 + beyond**2)


def land_angles(tap: Tap, points: Floats) -> tuple[Floats, Floats, Floats]:
    """Radius [mm], polar angle [deg] and angle behind the crest edge [deg] of each point."""
    flutes = tap.flutes
    radius = np.hypot(points[:, 0], points[:, 1])
    theta = np.degrees(np.arctan2(points[:, 1], points[:, 0]))
    _, behind = owner(flutes, theta, radius, half_width(flutes, points[:, 2]))
    return radius, theta, behind - crest_edge(flutes, tap.thread.major)


def inside(tap: Tap, points: Floats) -> NDArray[np.bool_]:
    """Whether each point lies in the ideal solid.

    Args:
        tap: the tap.
        points: shape (n, 3) [mm].
    """
    points = right_hand(tap, points)
    blank, z = tap.blank, points[:, 2]
    radius, theta, phi = land_angles(tap, points)
    turned = np.where(
        z < blank.thread_length,
        land_radius(tap, phi, theta, z),
        blank_radius(blank, z),
    )
    widest = np.maximum(np.abs(points[:, 0]), np.abs(points[:, 1]))
    centres = np.maximum(
        centre_radius(blank.front_centre, z),
        centre_radius(blank.rear_centre, blank.overall_length - z),
    )
    return (
        (z >= 0.0)
        & (z <= blank.overall_length)
        & (radius <= turned)
        & (radius >= centres)
        & ((z < blank.square_start) | (widest <= blank.square_across_flats / 2))
        & ~in_flute(tap.flutes, points)
    )
