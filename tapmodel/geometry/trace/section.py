"""Edges of the flute's own section: line, arc, line.

They lie at the front, at the step, at the full depth, and where the walls are divided.
"""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.trace.outline import end_key
from tapmodel.geometry.trace.tracing import Family, Function, SheetPair
from tapmodel.shape.form import Form
from tapmodel.shape.walls import FACE, HEEL

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


class _Section:
    """Loci along the section of each flute at one height.

    At the front, at a joint and at the full depth the edge shows where material lies outside the
    wall; in the plane that ends the thread only where thread and blank differ in radius: where the
    thread stands proud of the blank (`outwards`), or the blank of the thread.
    """

    least_degree = 9
    density = 1
    wall: str
    run_out: str
    # Short enough for the arc to be followed in the latitudes of the ball as well.
    longest_span = float(np.radians(22.5))

    def __init__(self, form: Form, z: float, outwards: bool) -> None:
        self.form, self.z, self.outwards = form, z, outwards
        self.lower = np.zeros(form.lands)
        self.upper = np.zeros(form.lands)

    def frame(self, t: Floats) -> tuple[Floats, Floats, Floats]:
        """The point in the flute's frame (u, t) and the side of the flute it lies on."""
        raise NotImplementedError

    def at(self, i: Indices, t: Floats) -> Floats:
        u, v, _ = self.frame(t)
        return self.form.flute_points(i, u, v, np.full_like(t, self.z))

    def _land(self, i: Indices, t: Floats) -> tuple[Indices, Floats, Floats]:
        u, v, side = self.frame(t)
        land = np.where(side > 0, i, (i - 1) % self.form.lands)
        r: Floats = np.hypot(u, v)
        polar: Floats = np.arctan2(v, u) - self.form.edge_angle
        phi: Floats = np.where(side > 0, polar, polar + self.form.spacing)
        return land, phi, r

    def margins(self, i: Indices, t: Floats) -> Floats:
        land, phi, r = self._land(i, t)
        z = np.full_like(t, self.z)
        if self.z < self.form.thread_end:
            return self.form.threaded(land, phi, z) - r
        if self.z > self.form.thread_end:
            return (self.form.body_radius(z) - r)[None]
        step = r - self.form.turned[0].start_radius
        excess = self.form.threaded(land, phi, z) - r
        if self.outwards:
            return np.concatenate([step[None], excess])
        return np.stack([-step, -excess.min(axis=0)])

    def cuts(self) -> list[Function]:
        return []

    def kinks(self) -> list[Function]:
        return []

    def sheets(self, i: Indices, t: Floats) -> list[SheetPair]:
        flutes = i.tolist()
        length = int(self.form.length_of_wall(np.asarray(self.z)))
        walls = [(self.wall, flute, length) for flute in flutes]
        if self.z == 0:
            return [(wall, ("front",)) for wall in walls]
        if self.z < self.form.thread_end:
            return [
                (wall, (self.wall, flute, length + 1))
                for wall, flute in zip(walls, flutes, strict=True)
            ]
        if self.z > self.form.thread_end:
            return [
                (wall, (self.run_out, flute)) for wall, flute in zip(walls, flutes, strict=True)
            ]
        lands = self._land(i, t)[0].tolist()
        ends = [end_key(land, self.outwards) for land in lands]
        return list(zip(walls, ends, strict=True))


class WallLine(_Section):
    """The straight wall; the parameter is u."""

    longest_span = np.inf
    run_out = "run-out"

    def __init__(self, form: Form, z: float, outwards: bool, side: int) -> None:
        super().__init__(form, z, outwards)
        self.wall = "face" if side == FACE else "heel"
        self.side = side
        outermost = max(form.crest_radius, *(p.end_radius for p in form.turned))
        self.lower[:] = form.walls.c
        # Never empty: a shallow flute has no straight wall, and its margin is then negative.
        self.upper[:] = max(outermost, form.walls.c) * 1.01

    def frame(self, t: Floats) -> tuple[Floats, Floats, Floats]:
        v = self.form.walls.e + self.side * float(self.form.walls.b)
        return t, np.full_like(t, v), np.full_like(t, self.side)


class FloorArc(_Section):
    """The ball's arc; the parameter is the angle from its deepest point, + towards the face."""

    wall = "floor"
    run_out = "ball"

    def __init__(self, form: Form, z: float, outwards: bool) -> None:
        super().__init__(form, z, outwards)
        self.lower[:] = -np.pi / 2
        self.upper[:] = np.pi / 2

    def frame(self, t: Floats) -> tuple[Floats, Floats, Floats]:
        walls = self.form.walls
        u = walls.c - walls.b * np.cos(t)
        v = walls.e + walls.b * np.sin(t)
        side = np.where(np.arctan2(v, u) > np.arctan2(walls.e, walls.c), FACE, HEEL)
        return u, v, side.astype(float)


def families(form: Form) -> Iterator[tuple[Family, str]]:
    """All loci of this file."""
    end = form.thread_end
    heights = [(0.0, False), *((z, False) for z in form.joints.tolist())]
    for z, outwards in (*heights, (end, False), (end, True), (form.full_depth, True)):
        for side in (FACE, HEEL):
            yield WallLine(form, z, outwards, side), "line"
        # A circle, but no circle of latitude of the ball: readers place a spline on it better.
        yield FloorArc(form, z, outwards), "spline" if z == form.full_depth else "circle"
