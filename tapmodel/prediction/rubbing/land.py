"""A surface of a land against the surface that its own edge has just swept.

While the tap turns, every point of the edge runs along a helix of the thread's lead. A point of the
land at the angle phi behind the crest edge stands where the point of the edge on the same helix
stood before, and that one lies on the cutting face: at the angle phi_e at which the face has the
edge's radius, 0 at the crest and, with positive rake, greater further in. Let the land be

    r = n(w) + advance*phi - drop(phi)    at the offset w from the helix,

with n straight (a crest, a flank, the cone) and `advance` its rise while the tap turns by a degree:
none for a profile, which lies on its helix itself, lead*tan(angle)/360 for the cone. The edge is
that surface at phi_e, so its lead over the land, measured along the radius, is

    clearance = gain(phi) - gain(phi_e),   gain(phi) = drop(phi) - advance*phi.

Source: derived here.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from tapmodel.shape.flute_section import FluteSection, crest_edge_angle, section_of, wall_angles
from tapmodel.shape.relief import drop
from tapmodel.tap.tap import Relief, Tap
from tapmodel.words import ReliefKind

Floats = NDArray[np.float64]

# The heel lies at the radius of the relieved surface, which depends on the angle of the heel. Each
# round leaves of what was wrong the steepness of drop against wall, a tenth or less.
_ROUNDS = 2
# Step over which slopes are taken [mm].
_STEP = 1e-5


@dataclass(frozen=True)
class Edges:
    """Points of the cutting edges of a land, and the walls between which the land lies.

    Attributes:
        section: of the flutes.
        spacing: of the flutes [deg].
        crest: polar angle of the crest edge from the cutter axis [deg].
        major: diameter over the crests [mm].
        lead: of the thread [mm].
        radii: of the points, (k,) [mm].
    """

    section: FluteSection
    spacing: float
    crest: float
    major: float
    lead: float
    radii: Floats

    @cached_property
    def phi(self) -> Floats:
        """Angles of the points behind the crest edge, (k,) [deg]."""
        return self.face(self.radii)

    def face(self, radii: Floats) -> Floats:
        """Angles of the cutting face behind the crest edge [deg]."""
        return wall_angles(self.section, radii, 1) - self.crest

    def heel(self, radii: Floats) -> Floats:
        """Angles of the heel wall behind the crest edge [deg]."""
        return wall_angles(self.section, radii, -1) - self.crest + self.spacing

    @cached_property
    def level_heel(self) -> Floats:
        """Angles of the heel behind the crest edge at the radii of the points, (k,) [deg]."""
        return self.heel(self.radii)

    @cached_property
    def tan_helix(self) -> Floats:
        """Tangents of the angles of the helices through the points, (k,)."""
        return self.lead / (2 * np.pi * self.radii)

    @cached_property
    def per_degree(self) -> Floats:
        """Way along the helix for each degree, (k,) [mm]."""
        return np.radians(1.0) * self.radii * np.hypot(1.0, self.tan_helix)


def edges_of(tap: Tap, radii: Floats) -> Edges:
    """The points of a tap's edges at `radii`, (k,) [mm]."""
    thread, flutes = tap.thread, tap.flutes
    crest = crest_edge_angle(flutes, thread.major)
    section, spacing = section_of(flutes), 360 / flutes.count
    return Edges(section, spacing, crest, thread.major, thread.lead, radii)


def gain(relief: Relief, major: float, advance: float, phi: Floats) -> Floats:
    """Drop beyond what the advance takes [mm]; `advance` [mm/deg], `phi` [deg] of any shape."""
    return drop(relief, major, phi) - advance * phi


def heel_phi(edges: Edges, relief: Relief, advance: float) -> Floats:
    """Angles at which the land ends behind each point of its edge, (k,) [deg].

    Source: derived here; the heel wall at the radius to which the surface has dropped there.
    """
    phi = edges.level_heel
    if relief.kind is ReliefKind.CONCENTRIC and advance == 0:
        return phi
    start = gain(relief, edges.major, advance, edges.phi)
    for _ in range(_ROUNDS):
        fallen = gain(relief, edges.major, advance, phi) - start
        phi = edges.heel(edges.radii - fallen)
    return phi


def clearances(edges: Edges, relief: Relief, advance: float, phi: Floats) -> Floats:
    """Clearance along the radius at angles `phi` behind the crest edge, (k, n) [deg], in mm."""
    start = gain(relief, edges.major, advance, edges.phi)
    return gain(relief, edges.major, advance, phi) - start[:, None]


def squareness(edges: Edges, relief: Relief, slope: float) -> Floats:
    """Share of a clearance along the radius that lies square to a flank, (k,).

    For a flank without helix that is the sine of the flank angle. The helix leans the flank once
    more; and an edge on a relieved thread whose face has rake is not the profile itself.

    Args:
        edges: points of the edge.
        relief: of the flank.
        slope: rise of the profile's radius with the axial offset.

    Source: derived here; the gradient of `r - edge(z - lead*phi/360)`.
    """
    around = edges.face(edges.radii + np.array([[-_STEP], [_STEP]]))
    inner, outer = drop(relief, edges.major, around)
    steep = slope / (1 + (outer - inner) / (2 * _STEP))
    return 1 / np.sqrt(1 + steep**2 * (1 + edges.tan_helix**2))
