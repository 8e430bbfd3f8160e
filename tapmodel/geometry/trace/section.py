"""Edges of the flute's own section: line, arc, line.

They lie at the front, at the step, at the full depth, and where the walls are divided.
"""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.trace import keys, levels
from tapmodel.geometry.trace.keys import FaceKey, FaceKind, FacePair
from tapmodel.geometry.trace.levels import Level, Place
from tapmodel.geometry.trace.loci import Loci
from tapmodel.shape.form import Form
from tapmodel.shape.walls import FACE, HEEL

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


class _Section(Loci):
    """Loci along the section of each flute at one level.

    At the front, at a joint and at the full depth the edge shows where material lies outside the
    wall; in the plane that ends the thread only where thread and blank differ in radius: where the
    thread stands proud of the blank (`outwards`), or the blank of the thread.
    """

    least_degree = 9
    wall: FaceKind
    run_out: FaceKind
    # Short enough for the arc to be followed in the latitudes of the ball as well.
    longest_span = float(np.radians(22.5))

    def __init__(self, form: Form, level: Level, outwards: bool) -> None:
        self.form, self.level, self.outwards = form, level, outwards
        self.lower = np.zeros(form.lands)
        self.upper = np.zeros(form.lands)

    def frame(self, t: Floats) -> tuple[Floats, Floats, Floats]:
        """The point in the flute's frame (u, t) and the side of the flute it lies on."""
        raise NotImplementedError

    def at(self, i: Indices, t: Floats) -> Floats:
        u, v, _ = self.frame(t)
        return self.form.flute_points(i, u, v, np.full_like(t, self.level.z))

    def _land(self, i: Indices, t: Floats) -> tuple[Indices, Floats, Floats]:
        u, v, side = self.frame(t)
        land = np.where(side > 0, i, (i - 1) % self.form.lands)
        r: Floats = np.hypot(u, v)
        polar: Floats = np.arctan2(v, u) - self.form.edge_angle
        phi: Floats = np.where(side > 0, polar, polar + self.form.spacing)
        return land, phi, r

    def conditions(self, i: Indices, t: Floats) -> Floats:
        land, phi, r = self._land(i, t)
        z = np.full_like(t, self.level.z)
        if self.level.place is Place.FULL_DEPTH:
            return (self.form.body_radius(z) - r)[None]
        if self.level.place is not Place.THREAD_END:
            return self.form.threaded(land, phi, z) - r
        step = r - self.form.turned[0].start_radius
        excess = self.form.threaded(land, phi, z) - r
        if self.outwards:
            return np.concatenate([step[None], excess])
        return np.stack([-step, -excess.min(axis=0)])

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        length = int(self.form.length_of_wall(np.asarray(self.level.z)))
        walls = [keys.wall(self.wall, flute, length) for flute in i.tolist()]
        return list(zip(walls, self._beyond(i, t, length), strict=True))

    def _beyond(self, i: Indices, t: Floats, length: int) -> list[FaceKey]:
        """What the wall's length number `length` meets in the plane."""
        flutes: list[int] = i.tolist()
        match self.level.place:
            case Place.FRONT:
                return [keys.FRONT] * len(flutes)
            case Place.JOINT:
                return [keys.wall(self.wall, flute, length + 1) for flute in flutes]
            case Place.THREAD_END:
                lands: list[int] = self._land(i, t)[0].tolist()
                return [keys.thread_end(land, outwards=self.outwards) for land in lands]
            case Place.FULL_DEPTH:
                return [keys.run_out(self.run_out, flute) for flute in flutes]


class WallLine(_Section):
    """The straight wall; the parameter is u."""

    longest_span = float(np.inf)
    run_out = FaceKind.RUN_OUT

    def __init__(self, form: Form, level: Level, outwards: bool, side: int) -> None:
        super().__init__(form, level, outwards)
        self.wall = keys.wall_kind(side)
        self.side = side
        outermost = max(form.crest_radius, *(p.end_radius for p in form.turned))
        self.lower[:] = form.walls.c
        # Never empty: a shallow flute has no straight wall, and its condition is then negative.
        self.upper[:] = max(outermost, form.walls.c) * 1.01

    def frame(self, t: Floats) -> tuple[Floats, Floats, Floats]:
        v = self.form.walls.e + self.side * float(self.form.walls.b)
        return t, np.full_like(t, v), np.full_like(t, self.side)


class FloorArc(_Section):
    """The ball's arc; the parameter is the angle from its deepest point, + towards the face."""

    wall = FaceKind.FLOOR
    run_out = FaceKind.BALL

    def __init__(self, form: Form, level: Level, outwards: bool) -> None:
        super().__init__(form, level, outwards)
        self.lower[:] = -np.pi / 2
        self.upper[:] = np.pi / 2

    def frame(self, t: Floats) -> tuple[Floats, Floats, Floats]:
        walls = self.form.walls
        u = walls.c - walls.b * np.cos(t)
        v = walls.e + walls.b * np.sin(t)
        side = np.where(np.arctan2(v, u) > np.arctan2(walls.e, walls.c), FACE, HEEL)
        return u, v, side.astype(float)


def families(form: Form) -> Iterator[tuple[Loci, str]]:
    """All loci of this file."""
    front, end, deep = levels.FRONT, levels.thread_end(form), levels.full_depth(form)
    before = [(level, False) for level in (front, *levels.joints(form))]
    for level, outwards in (*before, (end, False), (end, True), (deep, True)):
        for side in (FACE, HEEL):
            yield WallLine(form, level, outwards, side), "line"
        # A circle, but no circle of latitude of the ball: readers place a spline on it better.
        yield FloorArc(form, level, outwards), "spline" if level is deep else "circle"
