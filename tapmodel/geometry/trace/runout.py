"""Edges of the flute's run-out: the ball-nose cutter where it stops, behind the full depth."""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.trace.outline import body_key
from tapmodel.geometry.trace.tracing import Family, Function, SheetKey, SheetPair
from tapmodel.shape.form import Form
from tapmodel.shape.walls import FACE, HEEL, Walls

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

_HALVINGS = 60
# Cosine of the rim's parameter below which a point is its far end.
_FAR_END = 1e-12


class _RunOut:
    """Loci numbered by flute; the parameter is the angle about the cutter's axis.

    It runs from 0 at the face wall over pi/2 at the far end to pi at the heel wall.
    """

    # The rim bends far more in the latitudes of the ball than in space.
    least_degree = 9
    density = 1
    # Short enough for the curve to be followed in the latitudes of the ball as well.
    longest_span = float(np.radians(22.5))

    def __init__(self, form: Form) -> None:
        self.form = form
        self.b = float(form.walls.b)
        self.lower = np.zeros(form.lands)
        self.upper = np.full(form.lands, np.pi)

    def kinks(self) -> list[Function]:
        return []


class BallRim(_RunOut):
    """Half circle between the ball and the cutter's round shank."""

    def at(self, i: Indices, t: Floats) -> Floats:
        u, v, z = self._frame(t)
        return self.form.flute_points(i, u, v, z)

    def _frame(self, t: Floats) -> tuple[Floats, Floats, Floats]:
        c, e = self.form.walls.c, self.form.walls.e
        z = self.form.full_depth + self.b * np.sin(t)
        return np.full_like(t, c), e + self.b * np.cos(t), z

    def margins(self, i: Indices, t: Floats) -> Floats:
        del i
        u, v, z = self._frame(t)
        return (self.form.body_radius(z) - np.hypot(u, v))[None]

    def cuts(self) -> list[Function]:
        return []

    def sheets(self, i: Indices, t: Floats) -> list[SheetPair]:
        del t
        return [(("run-out", flute), ("ball", flute)) for flute in i.tolist()]


class Opening(_RunOut):
    """The rim of the run-out on the turned blank.

    At the height z the cutter's section is the flute's with the radius `b' = sqrt(b² - (z - z0)²)`
    in place of b, so the rim is where its two walls meet the blank. The parameter a runs up the
    face side, over the far end at pi/2 and down the heel side: `z = z0 + rise * sin(a)`, in which
    the rim is smooth everywhere.
    """

    def __init__(self, form: Form, bodies: list[SheetKey]) -> None:
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

    def margins(self, i: Indices, t: Floats) -> Floats:
        """The rim shows all the way."""
        del i
        return np.ones((1, *t.shape))

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

    def sheets(self, i: Indices, t: Floats) -> list[SheetPair]:
        """The turned face and the run-out's ball or round shank."""
        _, _, z, beyond = self._polar(t)
        ends = [piece.end for piece in self.form.turned[: len(self.bodies) - 1]]
        numbers: list[int] = np.searchsorted(ends, z).tolist()
        lands: list[int] = np.where(t < np.pi / 2, i, (i - 1) % self.form.lands).tolist()
        names: list[str] = np.where(beyond > 0, "run-out", "ball").tolist()
        rows = zip(i.tolist(), numbers, lands, names, strict=True)
        return [
            (body_key(self.bodies[number], land), (name, flute))
            for flute, number, land, name in rows
        ]


class TurnedArcs:
    """Circle between two turned lengths, between the flutes that cut through it."""

    least_degree = 3
    density = 1
    longest_span = float(np.radians(45.0))

    def __init__(self, form: Form, number: int, bodies: list[SheetKey]) -> None:
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

    def margins(self, i: Indices, t: Floats) -> Floats:
        del i
        return np.ones((1, *t.shape))

    def cuts(self) -> list[Function]:
        return []

    def kinks(self) -> list[Function]:
        return []

    def sheets(self, i: Indices, t: Floats) -> list[SheetPair]:
        del t
        below, above = self.bodies[self.number : self.number + 2]
        return [(body_key(below, land), body_key(above, land)) for land in i.tolist()]


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
    low, high = float(steps[last]), float(steps[last + 1])
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if cut(middle) else (low, middle)
    return (low + high) / 2


def cut_bodies(form: Form) -> list[SheetKey]:
    """Keys of the turned lengths the flutes cut; the last goes round the tap as one face."""
    top = opening_end(form)
    number = sum(piece.end < top for piece in form.turned)
    return [*(("turned", n) for n in range(number)), ("ring", number)]


def families(form: Form, bodies: list[SheetKey]) -> Iterator[tuple[Family, str]]:
    """All loci of this file."""
    # A circle, but no circle of latitude of the ball: readers place a spline on it better.
    yield BallRim(form), "spline"
    yield Opening(form, bodies), "spline"
    for number in range(len(bodies) - 1):
        yield TurnedArcs(form, number, bodies), "circle"
