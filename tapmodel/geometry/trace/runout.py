"""Edges of the flute's run-out: the ball-nose cutter where it stops, behind the full depth."""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.trace import keys
from tapmodel.geometry.trace.keys import FaceKey, FaceKind, FacePair
from tapmodel.geometry.trace.loci import Loci
from tapmodel.geometry.trace.zeros import Function
from tapmodel.numerics import border
from tapmodel.shape.form import Form
from tapmodel.shape.walls import FACE, HEEL, Walls

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Cosine of the rim's parameter below which a point is its far end.
_FAR_END = 1e-12


class _RunOut(Loci):
    """Loci numbered by flute; the parameter is the angle about the cutter's axis.

    It runs from 0 at the face wall over pi/2 at the far end to pi at the heel wall.
    """

    # The rim bends far more in the latitudes of the ball than in space.
    least_degree = 9
    # Short enough for the curve to be followed in the latitudes of the ball as well.
    longest_span = float(np.radians(22.5))

    def __init__(self, form: Form) -> None:
        self.form = form
        self.b = float(form.walls.b)
        self.lower = np.zeros(form.lands)
        self.upper = np.full(form.lands, np.pi)


class BallRim(_RunOut):
    """Half circle between the ball and the cutter's round shank."""

    def at(self, i: Indices, t: Floats) -> Floats:
        u, v, z = self._frame(t)
        return self.form.flute_points(i, u, v, z)

    def _frame(self, t: Floats) -> tuple[Floats, Floats, Floats]:
        c, e = self.form.walls.c, self.form.walls.e
        z = self.form.full_depth + self.b * np.sin(t)
        return np.full_like(t, c), e + self.b * np.cos(t), z

    def conditions(self, i: Indices, t: Floats) -> Floats:
        del i
        u, v, z = self._frame(t)
        return (self.form.body_radius(z) - np.hypot(u, v))[None]

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        del t
        return [
            (keys.run_out(FaceKind.RUN_OUT, flute), keys.run_out(FaceKind.BALL, flute))
            for flute in i.tolist()
        ]


class Opening(_RunOut):
    """The rim of the run-out on the turned blank.

    At the height z the cutter's section is the flute's with the radius `b' = sqrt(b² - (z - z0)²)`
    in place of b, so the rim is where its two walls meet the blank. The parameter a runs up the
    face side, over the far end at pi/2 and down the heel side: `z = z0 + rise * sin(a)`, in which
    the rim is smooth everywhere.
    """

    def __init__(self, form: Form, bodies: list[FaceKey]) -> None:
        super().__init__(form)
        self.bodies = bodies
        self.rise = opening_end(form) - form.full_depth

    def _polar(self, t: Floats) -> tuple[Floats, Floats, Floats, Floats]:
        """Angle from the cutter's axis, radius and z of the rim, and how far it lies beyond c."""
        form = self.form
        climb = self.rise * np.sin(t)
        z, r = form.full_depth + climb, form.body_radius(form.full_depth + climb)
        section = np.sqrt(np.maximum(self.b**2 - climb**2, 0.0))
        # At the far end the two sides are one point; rounding must not tear it apart.
        section = np.where(np.abs(np.cos(t)) < _FAR_END, 0.0, section)
        walls = Walls(form.walls.c, form.walls.e, section)
        faceward = np.cos(t) > 0
        angle = np.where(faceward, walls.angle(FACE, r), walls.angle(HEEL, r))
        turn = np.where(faceward, walls.turn_radius(FACE), walls.turn_radius(HEEL))
        return angle, r, z, r - turn

    def at(self, i: Indices, t: Floats) -> Floats:
        """Points of the rim."""
        angle, r, z, _ = self._polar(t)
        return self.form.flute_points(i, r * np.cos(angle), r * np.sin(angle), z)

    def cuts(self) -> list[Function]:
        """Where it passes from ball to round shank, over the far end, and from body to body."""
        heights = [piece.end for piece in self.form.turned[: len(self.bodies) - 1]]
        return [
            lambda _i, t: self._polar(t)[3],
            # The far end is a corner too: the seam of the turned face starts there.
            lambda _i, t: t - np.pi / 2,
            *(self._over(height) for height in heights),
        ]

    def _over(self, height: float) -> Function:
        return lambda _i, t: self._polar(t)[2] - height

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        """The turned face and the run-out's ball or round shank."""
        _, _, z, beyond = self._polar(t)
        ends = [piece.end for piece in self.form.turned[: len(self.bodies) - 1]]
        numbers: list[int] = np.searchsorted(ends, z).tolist()
        lands: list[int] = np.where(t < np.pi / 2, i, (i - 1) % self.form.lands).tolist()
        rows = zip(i.tolist(), numbers, lands, (beyond > 0).tolist(), strict=True)
        return [
            (
                self.bodies[number].on_land(land),
                keys.run_out(FaceKind.RUN_OUT if shank else FaceKind.BALL, flute),
            )
            for flute, number, land, shank in rows
        ]


class TurnedArcs(Loci):
    """Circle between two turned lengths, between the flutes that cut through it."""

    longest_span = float(np.radians(45.0))

    def __init__(self, form: Form, number: int, bodies: list[FaceKey]) -> None:
        self.form, self.number, self.bodies = form, number, bodies
        self.z = form.turned[number].end
        self.radius = form.turned[number].end_radius
        past = max(self.z - form.full_depth, 0.0)
        b = np.sqrt(float(form.walls.b) ** 2 - past**2)
        ends = [float(form.wall_phi(side, np.asarray(self.radius), b)) for side in (FACE, HEEL)]
        self.lower = np.full(form.lands, ends[0])
        self.upper = np.full(form.lands, ends[1])

    def at(self, i: Indices, t: Floats) -> Floats:
        return self.form.points(i, t, np.full_like(t, self.radius), np.full_like(t, self.z))

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        del t
        below, above = self.bodies[self.number : self.number + 2]
        return [(below.on_land(land), above.on_land(land)) for land in i.tolist()]


def opening_end(form: Form) -> float:
    """Height at which the run-out leaves the turned blank [mm]."""
    b = float(form.walls.b)
    reach = float(np.hypot(form.walls.c, form.walls.e))

    def cut(z: float) -> bool:
        section = np.sqrt(max(b**2 - (z - form.full_depth) ** 2, 0.0))
        return float(form.body_radius(np.asarray(z))) > reach - section

    steps = np.linspace(form.full_depth, form.full_depth + b, 257)
    last = max((n for n, z in enumerate(steps.tolist()) if cut(z)), default=0)
    if last == len(steps) - 1:
        return float(steps[-1])
    low, high = border(cut, float(steps[last]), float(steps[last + 1]))
    return (low + high) / 2


def cut_bodies(form: Form) -> list[FaceKey]:
    """Keys of the turned lengths the flutes cut; the last goes round the tap as one face."""
    top = opening_end(form)
    number = sum(piece.end < top for piece in form.turned)
    return [*map(keys.turned, range(number)), keys.ring(number)]


def families(form: Form, bodies: list[FaceKey]) -> Iterator[tuple[Loci, str]]:
    """All loci of this file."""
    # A circle, but no circle of latitude of the ball: readers place a spline on it better.
    yield BallRim(form), "spline"
    yield Opening(form, bodies), "spline"
    for number in range(len(bodies) - 1):
        yield TurnedArcs(form, number, bodies), "circle"
