"""Edges in planes square to the axis: the front, and the plane that ends the thread."""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.trace import keys, levels
from tapmodel.geometry.trace.keys import FaceKey, FacePair
from tapmodel.geometry.trace.levels import Level, Place
from tapmodel.geometry.trace.loci import Loci
from tapmodel.geometry.trace.thread import LandLoci, at_angle, inside_walls, land_turns
from tapmodel.geometry.trace.zeros import Function
from tapmodel.shape.form import Form
from tapmodel.shape.profile import Part

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


# Circles whose radii differ by less than this share run close.
_CLOSE = 0.005
# How far a chord between two divisions may leave a circle [mm], and as a share of its radius: a
# fifth of a mesh's chord at most.
_SAGITTA, _LEAST_SAGITTA = 0.001, 4e-4
# Wedges between a flank and the circle are divided at heights that grow by this factor, so many of
# them, up to where they are wide beside any chord [mm].
_WIDER, _WEDGES, _WIDE = 4.0, 8, 0.02


def common_divisions(form: Form) -> list[Function]:
    """Angles at which all edges in the thread's end plane end, where they run close to each other.

    Crest or root may run a few micrometres beside the circle of the blank there. Divided at the
    same angles, often enough for a mesh to need no nodes between, their polygons cannot cross.
    """
    step = form.turned[0].start_radius
    low, high = form.phi_range()
    phi = np.linspace(low, high, 33)
    crest = form.crest_radius - form.part_drop(Part.CREST, phi) - form.narrowed_at_end
    root = form.root_radius - form.part_drop(Part.ROOT, phi) - form.narrowed_at_end
    close = _CLOSE * step
    if not any(r.min() - close < step < r.max() + close for r in (crest, root)):
        return []
    count = int(np.ceil((high - low) / np.sqrt(8 * min(_SAGITTA, _LEAST_SAGITTA * step) / step)))
    return [at_angle(float(angle)) for angle in np.linspace(low, high, count + 1)[1:-1]]


def wedge_heights(form: Form) -> list[float]:
    """Distances from the blank's circle, both ways, at which edges of the thread's end end [mm].

    A flank of a fine thread crosses the circle at an angle so small that a chord of either would
    cross the other. Between two of these distances the chords are short beside the wedge.
    """
    rise = form.advance / form.flank_tan
    first = rise**2 / form.turned[0].start_radius
    heights = [first * _WIDER**n for n in range(_WEDGES) if first * _WIDER**n < _WIDE]
    return [-height for height in reversed(heights)] + heights


def _end_cuts(form: Form, excess: Function) -> list[Function]:
    """Where edges in the thread's end plane end; `excess` is their height over the circle."""
    wedges = [_off(excess, height) for height in wedge_heights(form)]
    return [excess, *wedges, *common_divisions(form)]


def _off(function: Function, height: float) -> Function:
    return lambda i, phi: function(i, phi) - height


class _Outline(LandLoci):
    """A section outline at a level: in the front plane or the thread's end plane."""

    def __init__(self, form: Form, lands: Indices, turns: Indices, level: Level) -> None:
        super().__init__(form, lands, turns)
        self.level, self.z = level, level.z
        self.step = form.turned[0].start_radius

    def radius(self, i: Indices, phi: Floats) -> Floats:
        raise NotImplementedError

    def curve(self, i: Indices, phi: Floats) -> tuple[Floats, Floats]:
        return self.radius(i, phi), np.full_like(phi, self.z)

    def cuts(self) -> list[Function]:
        if self.level.place is Place.FRONT:
            return []
        return _end_cuts(self.form, self._excess)

    def _excess(self, i: Indices, phi: Floats) -> Floats:
        return self.radius(i, phi) - self.step

    def planes(self, i: Indices, phi: Floats) -> list[FaceKey]:
        if self.level.place is Place.FRONT:
            return [keys.FRONT] * len(i)
        outwards = self.radius(i, phi) > self.step
        pairs = zip(self.lands[i].tolist(), outwards.tolist(), strict=True)
        return [keys.thread_end(land, outwards=out) for land, out in pairs]


class ThreadOutline(_Outline):
    """A part of the profile in the plane."""

    def __init__(self, form: Form, part: Part, level: Level) -> None:
        super().__init__(form, *land_turns(form, level.z, level.z), level)
        self.part = part
        segment = form.segments[part]
        if segment.is_arc:
            # The edge is to be followed in the parameters of the arc's surface as well.
            self.least_degree = 7
            self.longest_span = 0.5 * abs(segment.arc) / form.advance

    def _offset(self, i: Indices, phi: Floats) -> Floats:
        return self.z - self.form.offset_to_z(self.lands[i], self.turns[i], phi)

    def radius(self, i: Indices, phi: Floats) -> Floats:
        nominal = self.form.part_radius(self.part, self._offset(i, phi), phi)
        return nominal - self.form.narrowed(np.asarray(self.z))

    def conditions(self, i: Indices, t: Floats) -> Floats:
        w = self._offset(i, t)
        start, end = self.form.part_limits(self.part, t)
        r = self.radius(i, t)
        below = self.form.cone_radius(t, np.full_like(t, self.z)) - r
        return np.stack([w - start, end - w, below, *inside_walls(self.form, t, r)])

    def kink_angles(self) -> list[float]:
        return self.form.part_kinks(self.part)

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        strips = [keys.strip(land, turn, self.part) for land, turn in self.numbers(i)]
        return list(zip(strips, self.planes(i, t), strict=True))


class ConeOutline(_Outline):
    """The chamfer cone in the plane."""

    def __init__(self, form: Form, level: Level) -> None:
        lands = np.arange(form.lands)
        super().__init__(form, lands, np.zeros_like(lands), level)

    def radius(self, i: Indices, phi: Floats) -> Floats:
        del i
        return self.form.cone_radius(phi, np.full_like(phi, self.z))

    def conditions(self, i: Indices, t: Floats) -> Floats:
        r = self.radius(i, t)
        below = self.form.thread_radius(self.lands[i], t, np.full_like(t, self.z)) - r
        return np.stack([below, *inside_walls(self.form, t, r)])

    def kink_angles(self) -> list[float]:
        return self.form.cone_kinks()

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        cones = [keys.cone(land) for land, _ in self.numbers(i)]
        return list(zip(cones, self.planes(i, t), strict=True))


class StepArcs(LandLoci):
    """The circle in the thread's end plane on which the turned blank begins."""

    def __init__(self, form: Form, body: FaceKey) -> None:
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

    def cuts(self) -> list[Function]:
        return _end_cuts(self.form, self._excess)

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        pairs = zip(self.lands[i].tolist(), (self._excess(i, t) > 0).tolist(), strict=True)
        return [
            (self.body.on_land(land), keys.thread_end(land, outwards=out)) for land, out in pairs
        ]


def families(form: Form, body: FaceKey) -> Iterator[tuple[Loci, str]]:
    """All loci of this file; `body` is the key of the turned face behind the thread."""
    for level in (levels.FRONT, levels.thread_end(form)):
        for part in Part:
            yield ThreadOutline(form, part, level), "spline"
        yield ConeOutline(form, level), "spline"
    yield StepArcs(form, body), "circle"
