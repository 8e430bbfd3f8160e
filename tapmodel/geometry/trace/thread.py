"""Edges of the threaded length between the walls of a land.

Profile corners on their helices, and the chamfer cone against each part of the profile.
"""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.trace import keys
from tapmodel.geometry.trace.keys import FacePair
from tapmodel.geometry.trace.loci import Loci
from tapmodel.geometry.trace.zeros import Function
from tapmodel.shape.form import Form
from tapmodel.shape.profile import Part
from tapmodel.shape.walls import FACE, HEEL

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


def inside_walls(form: Form, phi: Floats, r: Floats) -> list[Floats]:
    """Both positive between the face and the heel wall of a land."""
    return [phi - form.wall_phi(FACE, r), form.wall_phi(HEEL, r) - phi]


def inside_ends(form: Form, z: Floats) -> list[Floats]:
    """Both positive between the front plane and the end of the thread."""
    return [z, form.thread_end - z]


def land_turns(form: Form, lowest: float, highest: float) -> tuple[Indices, Indices]:
    """Lands and turns whose crest middle can lie between two heights somewhere on the land."""
    low, high = form.phi_range()
    first = np.floor((lowest - form.crest_z - form.advance * high) / form.pitch).astype(int) - 1
    last = np.ceil((highest - form.crest_z - form.advance * low) / form.pitch).astype(int) + 1
    lands = [np.full(b - a + 1, j) for j, (a, b) in enumerate(zip(first, last, strict=True))]
    turns: list[Indices] = [
        np.arange(a, b + 1) for a, b in zip(first.tolist(), last.tolist(), strict=True)
    ]
    return np.concatenate(lands), np.concatenate(turns)


def cone_turns(form: Form) -> tuple[Indices, Indices]:
    """Lands and turns that the chamfer cone can reach, relieved as it is."""
    low, high = form.phi_range()
    sunk = float(np.max(form.cone_drop(np.linspace(low, high, 33))))
    top = (form.crest_radius + max(sunk, 0.0) - form.point_radius) / form.cone_tan
    return land_turns(form, 0.0, min(top, form.thread_end))


class LandLoci(Loci):
    """Loci numbered by land and turn, with the angle phi as parameter."""

    def __init__(self, form: Form, lands: Indices, turns: Indices) -> None:
        """Loci over the whole width of each land."""
        self.form, self.lands, self.turns = form, lands, turns
        low, high = form.phi_range()
        overlap = 0.01 * (high - low)
        self.lower = np.full(len(lands), low - overlap)
        self.upper = np.full(len(lands), high + overlap)

    def at(self, i: Indices, t: Floats) -> Floats:
        """Points of the loci."""
        r, z = self.curve(i, t)
        return self.form.points(self.lands[i], t, r, z)

    def curve(self, i: Indices, phi: Floats, /) -> tuple[Floats, Floats]:
        """Radius and height of the locus at phi."""
        raise NotImplementedError

    def numbers(self, i: Indices) -> list[tuple[int, int]]:
        """Land and turn of each locus."""
        return list(zip(self.lands[i].tolist(), self.turns[i].tolist(), strict=True))


def at_angle(angle: float) -> Function:
    """The function that is zero at an angle behind the edge."""
    return lambda _i, phi: phi - angle


class Corners(LandLoci):
    """The corner between a part of the profile and the next one, on its helix."""

    def __init__(self, form: Form, part: Part) -> None:
        """Every turn that can show between the front and the end of the thread."""
        super().__init__(form, *land_turns(form, 0.0, form.thread_end))
        self.part = part

    def curve(self, i: Indices, phi: Floats) -> tuple[Floats, Floats]:
        """On the part's far limit."""
        _, w = self.form.part_limits(self.part, phi)
        z = w + self.form.offset_to_z(self.lands[i], self.turns[i], phi)
        return self.form.part_radius(self.part, w, phi) - self.form.narrowed(z), z

    def conditions(self, i: Indices, t: Floats) -> Floats:
        """Inside the walls and the ends, and below the chamfer cone."""
        r, z = self.curve(i, t)
        below = self.form.cone_radius(t, z) - r
        return np.stack([*inside_walls(self.form, t, r), *inside_ends(self.form, z), below])

    def kink_angles(self) -> list[float]:
        """Where the relief's margin ends, if one of the two parts carries it."""
        parts = (self.part, self.part.following)
        return sorted({angle for part in parts for angle in self.form.part_kinks(part)})

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        """This part and the next."""
        del t
        part, following = self.part, self.part.following
        step = 1 if following is Part.CREST else 0
        return [
            (keys.strip(land, turn, part), keys.strip(land, turn + step, following))
            for land, turn in self.numbers(i)
        ]


class ConeCuts(LandLoci):
    """The chamfer cone against a straight part of the profile."""

    def __init__(self, form: Form, part: Part) -> None:
        """Every turn that the cone can reach."""
        super().__init__(form, *cone_turns(form))
        self.part = part

    def _offset(self, i: Indices, phi: Floats) -> Floats:
        form, slope = self.form, self.form.segments[self.part].slope
        base = form.offset_to_z(self.lands[i], self.turns[i], phi)
        at_zero = form.part_radius(self.part, np.zeros_like(phi), phi) - form.narrowed(base)
        return (form.cone_radius(phi, base) - at_zero) / (slope - form.narrowing - form.cone_tan)

    def curve(self, i: Indices, phi: Floats) -> tuple[Floats, Floats]:
        """Where both radii agree; the offset is linear in both."""
        w = self._offset(i, phi)
        z = w + self.form.offset_to_z(self.lands[i], self.turns[i], phi)
        return self.form.part_radius(self.part, w, phi) - self.form.narrowed(z), z

    def conditions(self, i: Indices, t: Floats) -> Floats:
        """Inside the part, the walls and the ends."""
        w = self._offset(i, t)
        r, z = self.curve(i, t)
        start, end = self.form.part_limits(self.part, t)
        return np.stack(
            [w - start, end - w, *inside_walls(self.form, t, r), *inside_ends(self.form, z)]
        )

    def kink_angles(self) -> list[float]:
        """Both margins."""
        return sorted({*self.form.part_kinks(self.part), *self.form.cone_kinks()})

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        """The part and the cone of its land."""
        del t
        part = self.part
        return [(keys.strip(land, turn, part), keys.cone(land)) for land, turn in self.numbers(i)]


def families(form: Form) -> Iterator[tuple[Loci, str]]:
    """All loci of this file with the shape of their curves."""
    for part in Part:
        yield Corners(form, part), "spline"
        if not form.segments[part].is_arc:
            yield ConeCuts(form, part), "spline"
