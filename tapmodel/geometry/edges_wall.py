"""Edges on the flute walls within the full depth: where land, blank and end planes meet them."""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.edges_thread import inside_ends, land_turns
from tapmodel.geometry.form import PARTS, Form
from tapmodel.geometry.tracing import Family, Function, SheetKey
from tapmodel.geometry.walls import FACE, HEEL

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Radius and wall angle depend on each other through the relief; each round of substitution
# gains at least a factor of two even on steep walls.
_ROUNDS = 60
_ROUND_ENOUGH = 1e-15


class _WallFamily:
    """Loci on one side wall of the lands."""

    density = 1
    longest_span = np.inf

    def __init__(self, form: Form, side: int, lands: Indices) -> None:
        self.form, self.side, self.lands = form, side, lands
        self.turn_radius = float(form.walls.turn_radius(side))
        self.lower = np.zeros(len(lands))
        self.upper = np.zeros(len(lands))

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        """Radius and height at parameter t."""
        raise NotImplementedError

    def at(self, i: Indices, t: Floats) -> Floats:
        r, z = self.curve(i, t)
        return self.form.points(self.lands[i], self.form.wall_phi(self.side, r), r, z)

    def cuts(self) -> list[Function]:
        return [lambda i, t: self.curve(i, t)[0] - self.turn_radius]

    def kink_angles(self) -> list[float]:
        return []

    def kinks(self) -> list[Function]:
        return [self._at_angle(angle) for angle in self.kink_angles()]

    def _at_angle(self, angle: float) -> Function:
        return lambda i, t: self.form.wall_phi(self.side, self.curve(i, t)[0]) - angle

    def wall(self, i: int, t: float) -> SheetKey:
        r, _ = self.curve(np.array([i]), np.array([t]))
        return self.form.wall_key(int(self.lands[i]), self.side, float(r[0]))


class ThreadOnWall(_WallFamily):
    """Part `part` of the profile on the wall; the parameter is the axial offset w."""

    def __init__(self, form: Form, side: int, part: int) -> None:
        lands, turns = land_turns(form, 0.0, form.thread_end)
        super().__init__(form, side, lands)
        self.turns, self.part = turns, part
        segment = form.segments[part]
        low, high = form.phi_range()
        starts, ends = form.part_limits(part, np.linspace(low, high, 33))
        hair = 0.02 * (segment.end - segment.start)
        self.lower[:] = float(np.min(starts)) - hair
        self.upper[:] = float(np.max(ends)) + hair

    def _phi(self, w: Floats) -> Floats:
        form = self.form
        phi = form.wall_phi(self.side, np.full_like(w, form.crest_radius))
        for _ in range(_ROUNDS):
            r = form.part_radius(self.part, w, phi)
            following = form.wall_phi(self.side, r)
            moved = float(np.max(np.abs(following - phi), initial=0.0))
            phi = following
            if moved < _ROUND_ENOUGH:
                break
        return phi

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        phi = self._phi(t)
        r = self.form.part_radius(self.part, t, phi)
        return r, t + self.form.offset_to_z(self.lands[i], self.turns[i], phi)

    def margin(self, i: Indices, t: Floats) -> Floats:
        phi = self._phi(t)
        r = self.form.part_radius(self.part, t, phi)
        z = t + self.form.offset_to_z(self.lands[i], self.turns[i], phi)
        start, end = self.form.part_limits(self.part, phi)
        below = self.form.cone_radius(phi, z) - r
        return np.minimum.reduce([t - start, end - t, inside_ends(self.form, z), below])

    def kink_angles(self) -> list[float]:
        return self.form.part_kinks(PARTS[self.part])

    def sheets(self, i: int, t: float) -> tuple[SheetKey, SheetKey]:
        strip = ("strip", int(self.lands[i]), int(self.turns[i]), self.part)
        return strip, self.wall(i, t)


class ConeOnWall(_WallFamily):
    """The chamfer cone on the wall; the parameter is the radius."""

    def __init__(self, form: Form, side: int) -> None:
        super().__init__(form, side, np.arange(form.lands))
        core = form.design.flutes.core_diameter / 2
        self.lower[:] = core + 0.5 * max(form.point_radius - core, 0.0) * 0.2
        self.upper[:] = form.crest_radius * 1.01
        # One locus passes every turn of the chamfer.
        climb = (form.crest_radius - form.point_radius) / form.cone_tan
        self.density = 3 + int(climb / form.pitch)

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        del i
        phi = self.form.wall_phi(self.side, t)
        return t, (t + self.form.cone_drop(phi) - self.form.point_radius) / self.form.cone_tan

    def margin(self, i: Indices, t: Floats) -> Floats:
        r, z = self.curve(i, t)
        phi = self.form.wall_phi(self.side, r)
        below = self.form.thread_radius(self.lands[i], phi, z) - r
        return np.minimum(inside_ends(self.form, z), below)

    def kink_angles(self) -> list[float]:
        return self.form.cone_kinks()

    def sheets(self, i: int, t: float) -> tuple[SheetKey, SheetKey]:
        return ("cone", int(self.lands[i])), self.wall(i, t)


class TurnedOnWall(_WallFamily):
    """Turned length number `number` of the blank on the wall; the parameter is z."""

    def __init__(self, form: Form, side: int, number: int, body: SheetKey) -> None:
        super().__init__(form, side, np.arange(form.lands))
        piece = form.turned[number]
        self.body = body
        self.lower[:] = piece.start
        self.upper[:] = min(piece.end, form.full_depth)

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        del i
        return self.form.body_radius(t), t

    def margin(self, i: Indices, t: Floats) -> Floats:
        del i
        return np.ones_like(t)

    def sheets(self, i: int, t: float) -> tuple[SheetKey, SheetKey]:
        body = (*self.body, int(self.lands[i])) if self.body[0] == "turned" else self.body
        return body, self.wall(i, t)


class WallFoot(_WallFamily):
    """Line in which the straight wall passes into the floor; the parameter is z."""

    def __init__(self, form: Form, side: int) -> None:
        super().__init__(form, side, np.arange(form.lands))
        self.upper[:] = form.full_depth

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        del i
        return np.full_like(t, self.turn_radius), t

    def margin(self, i: Indices, t: Floats) -> Floats:
        phi = self.form.wall_phi(self.side, np.full_like(t, self.turn_radius))
        return self.form.envelope(self.lands[i], phi, t) - self.turn_radius

    def cuts(self) -> list[Function]:
        return []

    def sheets(self, i: int, _t: float) -> tuple[SheetKey, SheetKey]:
        flute = self.form.flute_of(int(self.lands[i]), self.side)
        return ("face" if self.side == FACE else "heel", flute), ("floor", flute)


def families(form: Form, bodies: list[SheetKey]) -> Iterator[tuple[Family, str]]:
    """All loci of this file; `bodies` are the keys of the turned lengths that a flute cuts."""
    for side in (FACE, HEEL):
        for part, name in enumerate(PARTS):
            straight = name in ("crest", "root")
            yield ThreadOnWall(form, side, part), "line" if straight else "spline"
        yield ConeOnWall(form, side), "spline"
        yield WallFoot(form, side), "line"
        for number, body in enumerate(bodies):
            piece = form.turned[number]
            if piece.start < form.full_depth:
                round_ = piece.start_radius == piece.end_radius
                yield TurnedOnWall(form, side, number, body), "line" if round_ else "spline"
