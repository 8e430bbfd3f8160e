"""The surface that a cutting edge sweeps, from points of the tap's own surfaces, by search."""

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.numerics import bracketed_roots
from tapmodel.shape.form import Form
from tapmodel.shape.profile import Part
from tapmodel.shape.walls import FACE, HEEL

Floats = NDArray[np.float64]

LAND = 0


@dataclass(frozen=True)
class Swept:
    """One surface of land 0: `radius(phi, z)` of the tap, at heights about `middle` [rad, mm]."""

    form: Form
    radius: Callable[[Floats, Floats], Floats]
    middle: float
    half: float

    def edge(self, radii: Floats) -> tuple[Floats, Floats]:
        """Angle and height of the cutting edge at radii on the face."""
        phi = self.form.wall_phi(FACE, radii)
        low, high = np.full_like(radii, self.middle - self.half), np.full_like(radii, self.middle)
        return phi, bracketed_roots(
            lambda z: self.radius(phi, z) - radii, low, high + self.half, 1e-15
        )

    def heel(self, radii: Floats) -> Floats:
        """Angles at which the land ends on the helices through the edge at `radii`."""
        phi, z = self.edge(radii)

        def beyond(at: Floats) -> Floats:
            ahead = z + self.form.advance * (at - phi)
            return at - self.form.wall_phi(HEEL, self.radius(at, ahead))

        return bracketed_roots(beyond, phi, np.full_like(phi, self.form.spacing))

    def least(self, radii: Floats) -> float:
        """The least lead of the edge over the land, on a dense grid behind `radii` of the edge."""
        at, z = self.edge(radii)
        phi = np.linspace(float(np.min(at)), self.form.spacing, 4001)[:, None]
        land = self.radius(phi + 0 * at, z + self.form.advance * (phi - at))
        on_it = (phi >= at) & (phi <= self.form.wall_phi(HEEL, land))
        return float(np.min(np.where(on_it, radii - land, np.inf)))

    def land_point(self, phi: float, edge_radius: float) -> Floats:
        """(r, phi, z) of the land at `phi`, on the helix through the edge at `edge_radius`."""
        at, z = self.edge(np.array([edge_radius]))
        height = z + self.form.advance * (phi - at)
        return np.array([float(self.radius(np.array([phi]), height)[0]), phi, float(height[0])])

    def lead_of_edge(self, point: Floats) -> float:
        """By how much the swept surface lies outside a point (r, phi, z), along the radius."""
        r, phi, z = point

        def beyond(radii: Floats) -> Floats:
            at, height = self.edge(radii)
            return height + self.form.advance * (phi - at) - z

        low, high = 0.9 * r, 1.1 * r
        found = bracketed_roots(beyond, np.array([low]), np.array([high]), 1e-15)
        return float(found[0]) - r

    def distance(self, point: Floats) -> float:
        """From a point (r, phi, z) to the swept surface, signed + where that is outside.

        Points of the surface on ever smaller windows of edge and turn about the nearest one.
        """
        r, phi, z = point
        place = np.array([r * math.cos(phi), r * math.sin(phi), z])
        radius, turn = r, 0.0
        wide, long = 0.1 * self.form.crest_radius, 0.1
        best = math.inf
        for _ in range(20):
            radii = radius + np.linspace(-wide, wide, 21)
            turns = turn + np.linspace(-long, long, 21)
            at, height = self.edge(radii)
            theta = phi + turns[None, :]
            swept = np.stack(
                [
                    radii[:, None] * np.cos(theta),
                    radii[:, None] * np.sin(theta),
                    (height[:, None] + self.form.advance * (theta - at[:, None])),
                ],
                axis=-1,
            )
            away = np.linalg.norm(swept - place, axis=-1)
            i, j = np.unravel_index(np.argmin(away), away.shape)
            best = float(away[i, j])
            radius, turn = float(radii[i]), float(turns[j])
            wide, long = wide * 0.5, long * 0.5
        return math.copysign(best, self.lead_of_edge(point))


def swept_cone(form: Form) -> Swept:
    """The chamfer's cone of land 0."""
    length = (form.crest_radius - form.point_radius) / form.cone_tan
    return Swept(form, form.cone_radius, length / 2, 3 * length)


def swept_flank(form: Form, part: Part) -> Swept:
    """A flank of land 0, extended both ways."""
    segment = form.segments[part]

    def radius(phi: Floats, z: Floats) -> Floats:
        w = z - form.crest_z[LAND] - form.advance * phi
        return form.part_radius(part, w, phi)

    middle = float(form.crest_z[LAND]) + segment.middle
    return Swept(form, radius, middle, 2 * form.pitch)
