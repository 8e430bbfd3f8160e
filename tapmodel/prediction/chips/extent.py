"""How thick and how wide the chips are, from many points on the bounds of each."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.edge import CuttingEdge
from tapmodel.prediction.chips.pieces import CONE, HALF, LEAN, RADIUS, Pieces

Floats = NDArray[np.float64]

# Corners of chips lie on each other but for the last digits; of the pitch.
_TOUCHING = 1e-11


@dataclass(frozen=True, slots=True)
class Wall:
    """The edge at the drilled wall: the laws of all teeth there, and the cone of each, (C,)."""

    radius: float
    half: float
    lean: float
    cone: Floats


@dataclass(frozen=True, slots=True)
class Bounds:
    """Bounds of C chips at N radii each, those of its corners among them, (C, N) [mm].

    Attributes:
        radius: where each is looked at.
        half: half the width of the finished thread there.
        front: where the tooth's own edge lies, on its cone or on the front flank.
        before: where the cone of the tooth before it lies.
        lean: cotangent of the angle of the cone's edge to the axis.
        wall: the edge at the drilled wall.
    """

    radius: Floats
    half: Floats
    front: Floats
    before: Floats
    lean: Floats
    wall: Wall

    @property
    def rear(self) -> Floats:
        """Where the chip ends, on the cone of the tooth before or on the rear flank."""
        return np.minimum(self.half, self.before)


def bounds_of(pieces: Pieces, corners: Floats, heights: Floats) -> Bounds:
    """The chips between the neighbouring teeth of each row.

    Args:
        pieces: of the edge.
        corners: of what each tooth has cleared, (all teeth, n, 4).
        heights: of the crests, (rows, teeth) [mm].
    """
    upto, before = heights[:, 1:].reshape(-1, 1), heights[:, :-1].reshape(-1, 1)
    seen = pieces.seen.reshape(-1, pieces.seen.shape[-1])
    pairs = corners.reshape(*heights.shape, *corners.shape[1:])
    shape = len(upto), -1, seen.shape[-1]
    common = np.broadcast_to(seen, (len(upto), *seen.shape))
    every = np.concatenate([pairs[:, 1:].reshape(shape), pairs[:, :-1].reshape(shape), common], 1)
    half, cone, lean, radius = (every[..., law] for law in (HALF, CONE, LEAN, RADIUS))
    at_wall = seen[0].tolist()
    return Bounds(
        radius=radius,
        half=half,
        front=np.maximum(cone - upto, -half),
        before=cone - before,
        lean=lean,
        wall=Wall(at_wall[RADIUS], at_wall[HALF], at_wall[LEAN], at_wall[CONE] - upto[:, 0]),
    )


def thickness_of(bounds: Bounds, edge: CuttingEdge) -> Floats:
    """Greatest thickness of each chip, (C,) [mm].

    A point of the tooth's edge lies off the edge of the tooth before by their distance along the
    axis times the sine of the angle. A chip is thinner where the line square to the edge comes
    first to the drilled wall, or out at the rear flank; the longest of such lines goes through the
    corner of the two.

    Source: derived here, with the edge and the flanks straight over a chip's thickness.
    """
    flank = -1 / edge.parts[1].slope
    long = np.sqrt(1 + bounds.lean**2)
    to_before = (bounds.before - bounds.front) / long
    with np.errstate(divide="ignore", invalid="ignore"):
        to_wall = (bounds.radius - bounds.wall.radius) * long / bounds.lean
        leaving = 1 - bounds.lean * flank
        to_rear = np.where(leaving > 0, (bounds.half - bounds.front) * long / leaving, np.inf)
    # An edge that stands upright looks along the wall and never to it.
    to_wall = np.where(bounds.lean > 0, to_wall, np.inf)
    shortest = np.minimum(np.minimum(to_before, to_wall), to_rear)
    on_thread = bounds.front <= bounds.half + _TOUCHING * edge.tap.thread.pitch
    thick = np.max(np.where(on_thread, shortest, 0.0), axis=1)
    corner = np.minimum(_to_corner(bounds.wall, flank), np.max(to_before, axis=1))
    return np.maximum(thick, corner)


def _to_corner(wall: Wall, flank: float) -> Floats:
    """From the corner of wall and rear flank to each tooth's cone, 0 off the chip, (C,) [mm]."""
    if wall.lean * flank >= 1:
        return np.zeros_like(wall.cone)
    long = math.sqrt(1 + wall.lean**2)
    away = (wall.half - wall.cone) / long
    return np.where(away * (1 + wall.lean * flank) <= 2 * wall.half * long, away, 0.0)


def width_of(bounds: Bounds, edge: CuttingEdge) -> Floats:
    """Width of each chip along the cone from end to end, (C,) [mm].

    Source: derived here.
    """
    angle = math.radians(edge.tap.chamfer.angle)
    along = bounds.radius * math.sin(angle)
    rear = bounds.rear
    here = rear - bounds.front > -_TOUCHING * edge.tap.thread.pitch
    last = np.where(here, rear * math.cos(angle) + along, -np.inf)
    first = np.where(here, bounds.front * math.cos(angle) + along, np.inf)
    return np.max(last, axis=1) - np.min(first, axis=1)
