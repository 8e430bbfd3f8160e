"""Edges in planes square to the axis: the front, and the plane that ends the thread."""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.trace.thread import LandFamily, at_angle, inside_walls, land_turns
from tapmodel.geometry.trace.tracing import Family, Function, SheetKey, SheetPair
from tapmodel.shape.form import PARTS, Form

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


# Circles whose radii differ by less than this share run close.
_CLOSE = 0.005
# How far a chord between two divisions may leave a circle [mm], and as a share of its radius: a
# fifth of a mesh's chord at most.
_SAGITTA, _LEAST_SAGITTA = 0.001, 4e-4


def end_key(land: int, outwards: bool) -> SheetKey:
    """Key of a piece of the thread's end plane: ridges face the rear, grooves the front."""
    return ("ridge end" if outwards else "groove end", land)


def body_key(body: SheetKey, land: int) -> SheetKey:
    """Key of a turned face on a land; the one that goes round the tap belongs to all."""
    return (*body, land) if body[0] == "turned" else body


def common_divisions(form: Form) -> list[Function]:
    """Angles at which all edges in the thread's end plane end, where they run close to each other.

    Crest or root may run a few micrometres beside the circle of the blank there. Divided at the
    same angles, often enough for a mesh to need no nodes between, their polygons cannot cross.
    """
    step = form.turned[0].start_radius
    low, high = form.phi_range()
    phi = np.linspace(low, high, 33)
    crest = form.crest_radius - form.part_drop("crest", phi)
    root = form.root_radius - form.part_drop("root", phi)
    close = _CLOSE * step
    if not any(r.min() - close < step < r.max() + close for r in (crest, root)):
        return []
    count = int(np.ceil((high - low) / np.sqrt(8 * min(_SAGITTA, _LEAST_SAGITTA * step) / step)))
    return [at_angle(float(angle)) for angle in np.linspace(low, high, count + 1)[1:-1]]


class _Outline(LandFamily):
    """A section outline at height `z`, in the front plane or the thread's end plane."""

    def __init__(self, form: Form, lands: Indices, turns: Indices, z: float) -> None:
        super().__init__(form, lands, turns)
        self.z = z
        self.step = form.turned[0].start_radius

    def radius(self, i: Indices, phi: Floats) -> Floats:
        raise NotImplementedError

    def curve(self, i: Indices, phi: Floats) -> tuple[Floats, Floats]:
        return self.radius(i, phi), np.full_like(phi, self.z)

    def cuts(self) -> list[Function]:
        if self.z == 0:
            return []
        return [lambda i, phi: self.radius(i, phi) - self.step, *common_divisions(self.form)]

    def planes(self, i: Indices, phi: Floats) -> list[SheetKey]:
        if self.z == 0:
            return [("front",)] * len(i)
        outwards = self.radius(i, phi) > self.step
        pairs = zip(self.lands[i].tolist(), outwards.tolist(), strict=True)
        return [end_key(land, out) for land, out in pairs]


class ThreadOutline(_Outline):
    """Part `part` of the profile in the plane."""

    def __init__(self, form: Form, part: int, z: float) -> None:
        super().__init__(form, *land_turns(form, z, z), z)
        self.part = part
        arc = abs(form.segments[part].arc)
        if arc:
            # The edge is to be followed in the parameters of the arc's surface as well.
            self.least_degree = 7
            self.longest_span = 0.5 * arc / form.advance

    def _offset(self, i: Indices, phi: Floats) -> Floats:
        return self.z - self.form.offset_to_z(self.lands[i], self.turns[i], phi)

    def radius(self, i: Indices, phi: Floats) -> Floats:
        return self.form.part_radius(self.part, self._offset(i, phi), phi)

    def margins(self, i: Indices, t: Floats) -> Floats:
        w = self._offset(i, t)
        start, end = self.form.part_limits(self.part, t)
        r = self.radius(i, t)
        below = self.form.cone_radius(t, np.full_like(t, self.z)) - r
        return np.stack([w - start, end - w, below, *inside_walls(self.form, t, r)])

    def kink_angles(self) -> list[float]:
        return self.form.part_kinks(PARTS[self.part])

    def sheets(self, i: Indices, t: Floats) -> list[SheetPair]:
        strips = [("strip", land, turn, self.part) for land, turn in self.numbers(i)]
        return list(zip(strips, self.planes(i, t), strict=True))


class ConeOutline(_Outline):
    """The chamfer cone in the plane."""

    def __init__(self, form: Form, z: float) -> None:
        lands = np.arange(form.lands)
        super().__init__(form, lands, np.zeros_like(lands), z)

    def radius(self, i: Indices, phi: Floats) -> Floats:
        del i
        return self.form.cone_radius(phi, np.full_like(phi, self.z))

    def margins(self, i: Indices, t: Floats) -> Floats:
        r = self.radius(i, t)
        below = self.form.thread_radius(self.lands[i], t, np.full_like(t, self.z)) - r
        return np.stack([below, *inside_walls(self.form, t, r)])

    def kink_angles(self) -> list[float]:
        return self.form.cone_kinks()

    def sheets(self, i: Indices, t: Floats) -> list[SheetPair]:
        cones = [("cone", land) for land, _ in self.numbers(i)]
        return list(zip(cones, self.planes(i, t), strict=True))


class StepArcs(LandFamily):
    """The circle in the thread's end plane on which the turned blank begins."""

    def __init__(self, form: Form, body: SheetKey) -> None:
        lands = np.arange(form.lands)
        super().__init__(form, lands, np.zeros_like(lands))
        self.body = body
        self.radius = form.turned[0].start_radius
        walls = [float(form.wall_phi(side, np.asarray(self.radius))) for side in (1, -1)]
        self.lower = np.full(len(lands), walls[0])
        self.upper = np.full(len(lands), walls[1])

    def curve(self, i: Indices, phi: Floats) -> tuple[Floats, Floats]:
        del i
        return np.full_like(phi, self.radius), np.full_like(phi, self.form.thread_end)

    def _excess(self, i: Indices, phi: Floats) -> Floats:
        z = np.full_like(phi, self.form.thread_end)
        return self.form.threaded(self.lands[i], phi, z).min(axis=0) - self.radius

    def margins(self, i: Indices, t: Floats) -> Floats:
        del i
        return np.ones((1, *t.shape))

    def cuts(self) -> list[Function]:
        return [self._excess, *common_divisions(self.form)]

    def sheets(self, i: Indices, t: Floats) -> list[SheetPair]:
        pairs = zip(self.lands[i].tolist(), (self._excess(i, t) > 0).tolist(), strict=True)
        return [(body_key(self.body, land), end_key(land, out)) for land, out in pairs]


def families(form: Form, body: SheetKey) -> Iterator[tuple[Family, str]]:
    """All loci of this file; `body` is the key of the turned face behind the thread."""
    for z in (0.0, form.thread_end):
        for part in range(len(PARTS)):
            yield ThreadOutline(form, part, z), "spline"
        yield ConeOutline(form, z), "spline"
    yield StepArcs(form, body), "circle"
