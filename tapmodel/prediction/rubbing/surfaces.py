"""The three surfaces of a land that may touch the work: what each is relieved by, and where."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.rubbing.land import (
    Edges,
    clearances,
    edges_of,
    heel_phi,
    squareness,
)
from tapmodel.prediction.rubbing.need import needed_drop
from tapmodel.shape.flute_section import section_of
from tapmodel.shape.relief import concentric
from tapmodel.tap.tap import Relief, Tap
from tapmodel.words import ReliefKind, ReliefPlace

Floats = NDArray[np.float64]

# Evenly spaced heights at which flanks and cone are looked at.
_HEIGHTS = 9
# Angles on a land, edge and heel among them.
_ANGLES = 129
# Least radius over the core at which a land is looked at [mm]; at the core both walls are one.
_ABOVE_CORE = 1e-3


@dataclass(frozen=True, slots=True)
class Surface:
    """A surface of a land.

    Attributes:
        edges: points of its edge, the first at the radius that is told.
        relief: what it drops by.
        advance: rise of the surface while the tap turns by a degree [mm].
        square: share of the clearance along the radius that is told, (k,); 1 but for flanks.
    """

    edges: Edges
    relief: Relief
    advance: float
    square: Floats


@dataclass(frozen=True, slots=True)
class Land:
    """Clearance over a land: `phi` [deg] and `clearance` [mm], each (k, n), edge to heel."""

    phi: Floats
    clearance: Floats


@dataclass(frozen=True, slots=True)
class Surfaces:
    """The middle of the crest in full thread, a flank, and the chamfer's cone."""

    crest: Surface
    flank: Surface
    chamfer: Surface


def surfaces_of(tap: Tap, bore: float) -> Surfaces:
    """The surfaces of a land above the bore of diameter `bore` [mm].

    Flanks are the same in chamfer and full thread.

    Source: derived here; a thread relieved as a whole takes its crest along, relief of the crest
    leaves the flanks as they are.
    """
    relief = tap.relief.thread
    crest = Surface(edges_of(tap, np.array([tap.thread.major / 2])), relief, 0.0, np.ones(1))
    low = _lowest(tap, bore / 2)
    on_cone = _lowest(tap, max(bore, tap.chamfer.point_diameter) / 2)
    edges = edges_of(tap, _heights(tap, low))
    of_cone = edges if on_cone == low else edges_of(tap, _heights(tap, on_cone))
    return Surfaces(crest, _flank(tap, edges), _chamfer(tap, of_cone))


def _flank(tap: Tap, edges: Edges) -> Surface:
    relief, slope = tap.relief.thread, 1 / math.tan(math.radians(tap.thread.flank_angle))
    if relief.applies_to is not ReliefPlace.THREAD:
        relief = concentric(ReliefPlace.CREST)
    return Surface(edges, relief, 0.0, squareness(edges, relief, slope))


def _chamfer(tap: Tap, edges: Edges) -> Surface:
    advance = needed_drop(tap.thread, tap.chamfer, 1.0)
    return Surface(edges, tap.relief.chamfer, advance, np.ones(len(edges.radii)))


def _lowest(tap: Tap, radius: float) -> float:
    """The thread has nothing below its root, and a land nothing below its web."""
    web = tap.flutes.core_diameter / 2 + _ABOVE_CORE
    return min(max(radius, tap.thread.minor / 2, web), tap.thread.major / 2)


def _heights(tap: Tap, low: float) -> Floats:
    """The pitch line, evenly spaced heights, and where the walls pass into the ball's arc."""
    high, section = tap.thread.major / 2, section_of(tap.flutes)
    turns = (
        math.hypot(section.centre_radius, section.offset + side * section.ball_radius)
        for side in (1, -1)
    )
    first, *others = (min(max(r, low), high) for r in (tap.thread.pitch_diameter / 2, *turns))
    return np.array([first, *np.linspace(low, high, _HEIGHTS), *others])


def land_of(surface: Surface, count: int = _ANGLES) -> Land:
    """Clearance over a whole land at `count` angles behind each point of the edge.

    Where a margin ends the drop bends; an angle of every row stands there.

    Source: `tapmodel.prediction.rubbing.land`.
    """
    edges, relief = surface.edges, surface.relief
    start = edges.phi[:, None]
    end = heel_phi(edges, relief, surface.advance)[:, None]
    phi = start + (end - start) * np.linspace(0.0, 1.0, count)
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        phi = np.sort(np.hstack([phi, np.clip(relief.margin_angle, start, end)]), axis=1)
    found = clearances(edges, relief, surface.advance, phi) * surface.square[:, None]
    return Land(phi, found)
