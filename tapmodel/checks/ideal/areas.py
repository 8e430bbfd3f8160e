"""Areas of sections square to the axis, by Green's theorem on their outlines."""

import numpy as np
from numpy.typing import NDArray

from tapmodel.checks.ideal.land_tops import Tops, sweep
from tapmodel.checks.ideal.laws import blank_radius, centre_radius, land_radius
from tapmodel.checks.ideal.quadrature import gauss_legendre
from tapmodel.checks.ideal.walls import (
    crest_edge,
    floor_radius,
    half_width,
    spacing,
    wall_angles,
    wall_sweep,
)
from tapmodel.numerics import bracketed_roots
from tapmodel.tap.tap import Blank, Flutes, Tap

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
# Radii of walls on tops are settled to this [mm].
ROOTS = 1e-13
STRIPS, STRIP_WEIGHTS = gauss_legendre(600)


def threaded_area(tap: Tap, z: Floats) -> Floats:
    """Area at heights below the thread's end, front centre not taken off, shape (n,) [mm²].

    Each land's top counts half the integral of radius squared between the angles at which the
    walls meet it; each flute counts the sweep of its walls up to those same points.
    """
    flutes = tap.flutes
    lands = np.repeat(np.arange(flutes.count), z.size)
    tops, *radii = land_tops(tap, np.tile(z, flutes.count), lands)
    face, heel = (radius.reshape(flutes.count, -1) for radius in radii)
    # A flute cuts the heel of the land just before it in the sense of +theta.
    before = np.arange(flutes.count) - 1
    total = sweep(tap, tops).reshape(flutes.count, -1).sum(axis=0)
    return total + wall_sweep(flutes, half_width(flutes, z), heel[before], face).sum(axis=0)


def land_tops(tap: Tap, z: Floats, land: Indices) -> tuple[Tops, Floats, Floats]:
    """Between which angles the tops of lands run at heights `z` [mm], both of shape (n,).

    Returns:
        The tops, and the radii at which face and heel meet them, (n,) [mm].
    """
    flutes, half = tap.flutes, half_width(tap.flutes, z)
    crest = crest_edge(flutes, tap.thread.major)
    heel = _meeting(tap, z, land, heel=True)
    face = _meeting(tap, z, land, heel=False)
    start = wall_angles(flutes, face, half)[1] - crest
    end = wall_angles(flutes, heel, half)[0] - crest + spacing(flutes)
    return Tops(z, np.asarray(flutes.angles)[land] + crest, start, end), face, heel


def _meeting(tap: Tap, z: Floats, land: Indices, *, heel: bool) -> Floats:
    """Radius at which a wall of each land meets its top [mm]: face, or heel when `heel`."""
    flutes, half = tap.flutes, half_width(tap.flutes, z)
    crest = crest_edge(flutes, tap.thread.major)
    edge = np.asarray(flutes.angles)[land] + crest
    shift = (spacing(flutes) if heel else 0.0) - crest

    def over_top(radius: Floats) -> Floats:
        phi = wall_angles(flutes, radius, half)[0 if heel else 1] + shift
        return radius - land_radius(tap, phi, edge + phi, z)

    floor = floor_radius(flutes, half)
    return bracketed_roots(over_top, floor, np.full_like(z, tap.thread.major), ROOTS)


def fluted_circle_area(flutes: Flutes, radius: Floats, half: Floats) -> Floats:
    """Area of a circle of `radius` less the voids of half width `half` [mm²]."""
    heel, face = wall_angles(flutes, radius, half)
    top = np.maximum(radius, floor_radius(flutes, half))
    void = radius**2 / 2 * np.radians(face - heel) - wall_sweep(flutes, half, top, top)
    return np.pi * radius**2 - flutes.count * np.where(face > heel, void, 0.0)


def squared_circle_area(blank: Blank, radius: Floats) -> Floats:
    """Area of a circle of `radius` inside the drive square [mm²]."""
    side = blank.square_across_flats / 2
    reach = np.clip(radius, side, side * np.sqrt(2.0))
    segment = reach**2 * np.arccos(side / reach) - side * np.sqrt(reach**2 - side**2)
    return np.pi * np.minimum(radius, reach) ** 2 - 4 * segment


def plain_area(tap: Tap, z: Floats) -> Floats:
    """Area at heights from the thread's end on, centres not taken off, shape (n,) [mm²]."""
    flutes, blank = tap.flutes, tap.blank
    radius, half = blank_radius(blank, z), half_width(flutes, z)
    area = fluted_circle_area(flutes, radius, half)
    square = z >= blank.square_start
    area[square] = squared_circle_area(blank, radius[square])
    # only a design built against its own findings has flutes in the square
    fluted = square & (half > 0.0) & (floor_radius(flutes, half) < radius)
    for angle in flutes.angles:
        area[fluted] -= _void_in_square(tap, angle, radius[fluted], half[fluted])
    return area


def _void_in_square(tap: Tap, angle: float, radius: Floats, half: Floats) -> Floats:
    """Area of one flute inside circle and square, by strips along the cutter axis [mm²]."""
    flutes, side = tap.flutes, tap.blank.square_across_flats / 2
    lean = np.pi / 2 * STRIPS
    t = flutes.offset + half[:, None] * np.sin(lean)
    floor = flutes.centre_radius - half[:, None] * np.cos(lean)
    top = np.sqrt(np.maximum(radius[:, None] ** 2 - t**2, 0.0))
    for turned in np.radians(np.arange(0.0, 360.0, 90.0) - angle):
        if np.cos(turned) > 1e-9:
            top = np.minimum(top, (side - t * np.sin(turned)) / np.cos(turned))
    depth = np.maximum(top - floor, 0.0) * np.cos(lean)
    return half * np.pi / 2 * (depth @ STRIP_WEIGHTS)


def centres_area(tap: Tap, z: Floats) -> Floats:
    """Area that the centres in the two end faces take off, flutes not counted twice [mm²]."""
    blank, half = tap.blank, half_width(tap.flutes, z)
    front = centre_radius(blank.front_centre, z)
    rear = centre_radius(blank.rear_centre, blank.overall_length - z)
    return fluted_circle_area(tap.flutes, front, half) + fluted_circle_area(tap.flutes, rear, half)
