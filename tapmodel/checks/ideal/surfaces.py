"""Signed distances to the single surfaces of the ideal solid, positive outside [mm]."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.ideal.laws import (
    CENTRE_SLOPE,
    blank_radius,
    cone_radius,
    crest_may_rise,
    flank_radius,
    from_crest,
    narrowed,
    profile_radius,
    relief_drop,
)
from tapmodel.tap.tap import Blank, Tap, TapThread
from tapmodel.words import ReliefPlace

Floats = NDArray[np.float64]
Names = NDArray[np.str_]


class Layer(NamedTuple):
    """Signed distances of n points to some surfaces, and the surface that gives each."""

    distance: Floats
    surface: Names


def named(distance: Floats, surface: str) -> Layer:
    """The layer of one surface."""
    return Layer(distance, np.full(distance.shape, surface, dtype="U8"))


def widest(*layers: Layer) -> Layer:
    """Common part of solids: the greatest distance."""
    return _picked(layers, np.argmax(np.stack([layer.distance for layer in layers]), axis=0))


def closest(*layers: Layer) -> Layer:
    """Union of solids: the least distance."""
    return _picked(layers, np.argmin(np.stack([layer.distance for layer in layers]), axis=0))


def _picked(layers: tuple[Layer, ...], which: NDArray[np.intp]) -> Layer:
    distances = np.stack([layer.distance for layer in layers])
    names = np.stack([layer.surface for layer in layers])
    return Layer(
        np.take_along_axis(distances, which[None], 0)[0],
        np.take_along_axis(names, which[None], 0)[0],
    )


def land(tap: Tap, radius: Floats, theta: Floats, phi: Floats, z: Floats) -> Layer:
    """Thread and chamfer, without end in z; arguments as `ideal.land_angles` gives them."""
    thread, place = tap.thread, tap.relief.thread.applies_to
    drop = relief_drop(tap.relief.thread, tap.thread.major, phi)
    wide = radius + narrowed(tap, z)
    unmoved = wide + drop if place is ReliefPlace.THREAD else wide
    crest = np.inf if crest_may_rise(tap) else thread.major / 2
    profile = _profile(thread, unmoved, from_crest(thread, theta, z), crest)
    if place is ReliefPlace.CREST:
        profile = np.maximum(profile, wide + drop - thread.major / 2)
    cone = (
        radius
        + relief_drop(tap.relief.chamfer, tap.thread.major, phi)
        - cone_radius(tap.chamfer, z)
    )
    cone *= np.cos(np.radians(tap.chamfer.angle))
    return widest(named(profile, "thread"), named(cone, "chamfer"))


def _profile(thread: TapThread, radius: Floats, w: Floats, highest: float) -> Floats:
    """Distance from the thread without relief, at axial offsets w from a crest's middle [mm].

    A flat crest ends it at the radius `highest`.
    """
    steep = 1 / np.tan(np.radians(thread.flank_angle))
    flank = _square_to(thread, radius, flank_radius(thread, w), steep)
    reach = np.cos(np.radians(thread.flank_angle))
    ridge, crest, root = flank, thread.crest_radius, thread.root_radius
    if crest == 0:
        ridge = np.maximum(radius - highest, flank)
    else:
        lean = np.abs(w) / np.sqrt(np.maximum(crest**2 - w**2, (crest / 4) ** 2))
        arc = _square_to(thread, radius, profile_radius(thread, w), lean)
        ridge = np.where(np.abs(w) < crest * reach, arc, ridge)
    if root == 0:
        return np.minimum(radius - thread.minor / 2, ridge)
    beside = thread.pitch / 2 - np.abs(w)
    lean = beside / np.sqrt(np.maximum(root**2 - beside**2, (root / 4) ** 2))
    arc = _square_to(thread, radius, profile_radius(thread, w), lean)
    return np.where(beside < root * reach, arc, ridge)


def _square_to(thread: TapThread, radius: Floats, surface: Floats, steep: Floats | float) -> Floats:
    """Distance from a screw surface out of the radial one, its profile rising by `steep`."""
    along = steep * thread.lead / (2 * np.pi * np.maximum(radius, thread.minor / 4))
    return (radius - surface) / np.sqrt(1 + np.square(steep) + along**2)


def rear(blank: Blank, radius: Floats, z: Floats) -> Layer:
    """Turned blank with its rear face and centre, carried on to the front without end."""
    step = 1e-6  # mm, for the slope of shoulder and rear chamfer
    rise = (blank_radius(blank, z + step) - blank_radius(blank, z - step)) / (2 * step)
    turned = (radius - blank_radius(blank, z)) / np.sqrt(1 + rise**2)
    left = blank.overall_length - z
    return named(
        np.maximum.reduce([turned, -left, _centre(blank.rear_centre, radius, left)]), "blank"
    )


def front(blank: Blank, radius: Floats, z: Floats) -> Layer:
    """Front plane and front centre."""
    return named(np.maximum(-z, _centre(blank.front_centre, radius, z)), "front")


def _centre(rim: float, radius: Floats, depth: Floats) -> Floats:
    """Distance into a centre of rim diameter `rim`, from its wall."""
    return (rim / 2 - depth * CENTRE_SLOPE - radius) / np.hypot(1.0, CENTRE_SLOPE)


def square(blank: Blank, points: Floats) -> Layer:
    """Drive square: what lies outside the flats, from the square's start on."""
    outside = np.maximum(np.abs(points[:, 0]), np.abs(points[:, 1])) - blank.square_across_flats / 2
    return named(np.minimum(outside, points[:, 2] - blank.square_start), "square")
