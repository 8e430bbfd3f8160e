"""Edges of the chamfer cone on a rounded crest or root.

Profile and cone differ by a function of the angle phi plus one of the place on the arc. With the
arc's point at the angle omega from its middle and the cone at the angle kappa to the axis, they
meet where `cos(omega + s kappa) = g(phi)` (s = +1 on a crest, -1 in a root), that is where
`sin²(eta / 2) = k(phi)` with `eta = omega + s kappa` and `k = (1 - g) / 2`. Away from k = 0 the
edge has one branch for each sign of eta and runs smoothly in phi; about k = 0, where the cone
only grazes the arc, the branches join in a fold that runs smoothly in eta.
"""

from collections.abc import Callable, Iterator
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.trace import keys
from tapmodel.geometry.trace.keys import FacePair
from tapmodel.geometry.trace.loci import Loci
from tapmodel.geometry.trace.thread import LandLoci, cone_turns, inside_ends, inside_walls
from tapmodel.numerics import borders, lowest
from tapmodel.shape.form import Form
from tapmodel.shape.profile import Part

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# sin²(eta / 2) at which branches and fold meet, 20 degrees from the grazing point; less where k
# itself turns back near there.
_MEETING = 0.03
_TABLE = 129


class _ConeOnArc(LandLoci):
    """The cone on the arc of a part of the profile; what branches and folds have in common."""

    # The edge is to be followed in the parameters of the arc's surface as well.
    least_degree = 7

    def __init__(self, form: Form, part: Part) -> None:
        super().__init__(form, *cone_turns(form))
        self.part = part
        segment = form.segments[part]
        self.sign = float(np.sign(segment.arc))
        self.arc, self.reach = abs(segment.arc), (segment.end - segment.start) / 2
        # A back taper shears the arc along z. Seen so that the arc stays as it was, the cone is
        # steeper, and starts where the thread is as wide as stated.
        self.cone_tan = form.cone_tan + form.narrowing
        self.kappa = float(np.arctan(self.cone_tan))
        self.turning = _turning_angles(self._moving, float(self.lower[0]), float(self.upper[0]))
        base = form.crest_z[self.lands] + self.turns * form.pitch + segment.middle
        point = form.point_radius + float(form.narrowed(np.asarray(0.0)))
        fixed = segment.arc_centre - point - self.cone_tan * base
        self.fixed = 0.5 + fixed * self._scale
        self.meeting = np.full(len(self.lands), _MEETING)
        for angle in self.turning:
            there = np.abs(self.fixed + self._moving(np.asarray(angle)))
            self.meeting = np.minimum(self.meeting, there / 2)

    @property
    def _scale(self) -> float:
        return self.sign * float(np.cos(self.kappa)) / (2 * self.arc)

    def _moving(self, phi: Floats) -> Floats:
        """What of k changes with phi; the rest is fixed for a land and turn."""
        form = self.form
        sunk = form.cone_drop(phi) - form.part_drop(self.part, phi)
        return (sunk - self.cone_tan * form.advance * phi) * self._scale

    def place(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        """The angles phi and eta at parameter t."""
        raise NotImplementedError

    def angle(self, i: Indices, t: Floats) -> Floats:
        return self.place(i, t)[0]

    def at(self, i: Indices, t: Floats) -> Floats:
        phi = self.angle(i, t)
        r, z = self.curve(i, t)
        return self.form.points(self.lands[i], phi, r, z)

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        phi, eta = self.place(i, t)
        segment = self.form.segments[self.part]
        omega = eta - self.sign * self.kappa
        r = segment.arc_centre + segment.arc * np.cos(omega)
        w = segment.middle + self.arc * np.sin(omega)
        z = w + self.form.offset_to_z(self.lands[i], self.turns[i], phi)
        return r - self.form.part_drop(self.part, phi) - self.form.narrowed(z), z

    def conditions(self, i: Indices, t: Floats) -> Floats:
        phi, eta = self.place(i, t)
        r, z = self.curve(i, t)
        omega = eta - self.sign * self.kappa
        widest = float(np.arcsin(self.reach / self.arc))
        walls, ends = inside_walls(self.form, phi, r), inside_ends(self.form, z)
        return np.stack([widest - omega, widest + omega, *walls, *ends])

    def kink_angles(self) -> list[float]:
        return sorted({*self.form.part_kinks(self.part), *self.form.cone_kinks()})

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        del t
        part = self.part
        return [(keys.strip(land, turn, part), keys.cone(land)) for land, turn in self.numbers(i)]


class Branch(_ConeOnArc):
    """Where eta has the sign `side`; the parameter is phi."""

    def __init__(self, form: Form, part: Part, side: float) -> None:
        super().__init__(form, part)
        self.side = side

    def place(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        k = np.clip(self.fixed[i] + self._moving(t), 0.0, 1.0)
        return t, self.side * 2 * np.arcsin(np.sqrt(k))

    def conditions(self, i: Indices, t: Floats) -> Floats:
        beyond = self.fixed[i] + self._moving(t) - self.meeting[i]
        return np.concatenate([super().conditions(i, t), beyond[None]])


class Fold(_ConeOnArc):
    """About the grazing point, where phi lies in a range over which k runs one way.

    The parameter is eta.
    """

    def __init__(self, form: Form, part: Part, low: float, high: float) -> None:
        super().__init__(form, part)
        self.low, self.high = low, high
        self.upper = 2 * np.arcsin(np.sqrt(self.meeting))
        self.lower = -self.upper

    def place(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        target = np.sin(t / 2) ** 2 - self.fixed[i]
        low, high = np.full_like(t, self.low), np.full_like(t, self.high)
        rising = self._rising
        return borders(lambda phi: (self._moving(phi) > target) != rising, low, high), t

    @property
    def _rising(self) -> bool:
        ends = self._moving(np.array([self.low, self.high]))
        return bool(ends[1] > ends[0])

    def conditions(self, i: Indices, t: Floats) -> Floats:
        ends = np.sort(self._moving(np.array([self.low, self.high])))
        target = np.sin(t / 2) ** 2 - self.fixed[i]
        reached = np.stack([target - ends[0], ends[1] - target])
        return np.concatenate([super().conditions(i, t), reached])


def _turning_angles(moving: Callable[[Floats], Floats], low: float, high: float) -> list[float]:
    """Angles between `low` and `high` at which a function of one angle turns back."""
    phi = np.linspace(low, high, _TABLE)
    steps = np.diff(moving(phi))
    found: list[float] = []
    for n in np.nonzero(steps[:-1] * steps[1:] < 0)[0].tolist():
        sign = 1.0 if steps[n] > 0 else -1.0

        def sunk(angle: float, sign: float = sign) -> float:
            return -sign * float(moving(np.asarray(angle)))

        found.append(lowest(sunk, float(phi[n]), float(phi[n + 2])))
    return found


def families(form: Form) -> Iterator[tuple[Loci, str]]:
    """All loci of this file."""
    for part, segment in form.segments.items():
        if not segment.is_arc:
            continue
        branches = [Branch(form, part, side) for side in (-1.0, 1.0)]
        for branch in branches:
            yield branch, "spline"
        if len(branches[0].lands) == 0:
            continue
        marks = [float(branches[0].lower[0]), *branches[0].turning, float(branches[0].upper[0])]
        for low, high in pairwise(marks):
            yield Fold(form, part, low, high), "spline"
