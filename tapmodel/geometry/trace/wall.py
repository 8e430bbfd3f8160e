"""Edges on the flute walls within the full depth: where land, blank and end planes meet them."""

from collections.abc import Callable, Iterator
from functools import partial

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.trace import keys
from tapmodel.geometry.trace.keys import FaceKey, FaceKind, FacePair
from tapmodel.geometry.trace.loci import Loci
from tapmodel.geometry.trace.thread import inside_ends, land_turns
from tapmodel.geometry.trace.zeros import Function
from tapmodel.shape.form import Form
from tapmodel.shape.profile import Part
from tapmodel.shape.walls import FACE, HEEL

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Radius and wall angle depend on each other through the relief, weakly: the secant of one round
# is all but straight. A root in a bracket would take more calls than these nine.
_ROUNDS = 8


class _WallLoci(Loci):
    """Loci on one side wall of the lands."""

    def __init__(self, form: Form, side: int, lands: Indices) -> None:
        self.form, self.side, self.lands = form, side, lands
        self.turn_radius = float(form.walls.turn_radius(side))
        self.lower = np.zeros(len(lands))
        self.upper = np.zeros(len(lands))

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        """Radius and height at parameter t."""
        raise NotImplementedError

    def angle(self, i: Indices, t: Floats) -> Floats:
        return self.form.wall_phi(self.side, self.curve(i, t)[0])

    def at(self, i: Indices, t: Floats) -> Floats:
        r, z = self.curve(i, t)
        return self.form.points(self.lands[i], self.form.wall_phi(self.side, r), r, z)

    def settled(self, nominal: Floats, lost: Callable[[Floats], Floats]) -> Floats:
        """Radius on the wall of what has the radius `nominal` less what is `lost` at an angle."""

        def excess(r: Floats) -> Floats:
            return r - nominal + lost(self.form.wall_phi(self.side, r))

        r, at_r = nominal, excess(nominal)
        following = r - at_r
        for _ in range(_ROUNDS):
            last, at_last, r = r, at_r, following
            at_r = excess(r)
            moved = at_r != at_last
            way = np.divide(r - last, at_r - at_last, out=np.zeros_like(r), where=moved)
            following = r - at_r * way
        return following

    def cuts(self) -> list[Function]:
        return [lambda i, t: self.curve(i, t)[0] - self.turn_radius, *self.joint_cuts()]

    def joint_cuts(self) -> list[Function]:
        """Where the locus passes from one length of the wall to the next."""
        return [self._over(height) for height in self.form.joints.tolist()]

    def _over(self, height: float) -> Function:
        return lambda i, t: self.curve(i, t)[1] - height

    def wall_carriers(self, i: Indices, t: Floats) -> list[FaceKey]:
        """The straight wall, or the floor below it."""
        r, z = self.curve(i, t)
        straight, floor = keys.wall_kind(self.side), FaceKind.FLOOR
        flutes = self.form.flutes_of(self.lands[i], self.side).tolist()
        lengths = self.form.length_of_wall(z).tolist()
        rows = zip((r > self.turn_radius).tolist(), flutes, lengths, strict=True)
        return [
            keys.wall(straight if above else floor, flute, length) for above, flute, length in rows
        ]


class _StripOnWall(_WallLoci):
    """Loci of one part of the profile, one for each land and turn."""

    def __init__(self, form: Form, side: int, part: Part) -> None:
        lands, turns = land_turns(form, 0.0, form.thread_end)
        super().__init__(form, side, lands)
        self.turns, self.part = turns, part

    def base(self, i: Indices, phi: Floats) -> Floats:
        """Height of the crest's middle at phi."""
        return self.form.offset_to_z(self.lands[i], self.turns[i], phi)

    def at_offset(self, i: Indices, w: Floats, nominal: Floats) -> tuple[Floats, Floats]:
        """Radius and height of the part at axial offset w, where its profile has `nominal`."""

        def lost(phi: Floats) -> Floats:
            drop = self.form.part_drop(self.part, phi)
            return drop + self.form.narrowed(w + self.base(i, phi))

        r = self.settled(nominal, lost)
        return r, w + self.base(i, self.form.wall_phi(self.side, r))

    def joint_cuts(self) -> list[Function]:
        """Only the joint nearest to a locus counts: a length of the wall has many turns."""
        joints = self.form.joints
        if len(joints) == 0:
            return []
        z = self.form.offset_to_z(self.lands, self.turns, np.zeros(len(self.lands)))
        middles = (joints[1:] + joints[:-1]) / 2
        nearest = joints[np.searchsorted(middles, z)]
        return [lambda i, t: self.curve(i, t)[1] - nearest[i]]

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        numbers = zip(self.lands[i].tolist(), self.turns[i].tolist(), strict=True)
        strips = [keys.strip(land, turn, self.part) for land, turn in numbers]
        return list(zip(strips, self.wall_carriers(i, t), strict=True))


class FlankOnWall(_StripOnWall):
    """A flank on the wall; the parameter is the radius, which settles all else."""

    def __init__(self, form: Form, side: int, part: Part) -> None:
        super().__init__(form, side, part)
        sunk = form.part_drop(part, np.linspace(*form.phi_range(), 33))
        deepest = form.root_radius - form.narrowed_at_end
        self.lower[:] = deepest - max(float(sunk.max()), 0.0) - 0.01 * form.pitch
        self.upper[:] = form.widest_crest - min(float(sunk.min()), 0.0) + 0.01 * form.pitch

    def _offset(self, i: Indices, phi: Floats, r: Floats) -> Floats:
        form, segment = self.form, self.form.segments[self.part]
        # The narrowing is taken where the part begins; on from there it is a part of the slope.
        narrowed = form.narrowed(segment.start + self.base(i, phi))
        nominal = r + form.part_drop(self.part, phi) + narrowed
        slope = segment.slope - form.narrowing
        return segment.start + (nominal - segment.start_radius) / slope

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        phi = self.form.wall_phi(self.side, t)
        return t, self._offset(i, phi, t) + self.base(i, phi)

    def conditions(self, i: Indices, t: Floats) -> Floats:
        phi = self.form.wall_phi(self.side, t)
        w = self._offset(i, phi, t)
        z = w + self.base(i, phi)
        start, end = self.form.part_limits(self.part, phi)
        below = self.form.cone_radius(phi, z) - t
        return np.stack([w - start, end - w, *inside_ends(self.form, z), below])

    def kink_angles(self) -> list[float]:
        return self.form.part_kinks(self.part)


class FlatOnWall(_StripOnWall):
    """Crest or root on the wall, a line along the axis; the parameter is the axial offset."""

    def __init__(self, form: Form, side: int, part: Part) -> None:
        super().__init__(form, side, part)
        # Radius and angle of the line, each of which follows from the other.
        nominal = np.asarray(form.segments[part].start_radius)
        self.radius = self.settled(nominal, partial(form.part_drop, part))
        self.phi = form.wall_phi(side, self.radius)
        self.start, self.end = form.part_limits(part, self.phi)
        overlap = 0.02 * (self.end - self.start)
        self.lower[:] = self.start - overlap
        self.upper[:] = self.end + overlap

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        base = self.form.offset_to_z(self.lands[i], self.turns[i], self.phi)
        return np.full_like(t, self.radius), t + base

    def conditions(self, i: Indices, t: Floats) -> Floats:
        r, z = self.curve(i, t)
        below = self.form.cone_radius(np.full_like(t, self.phi), z) - r
        return np.stack([t - self.start, self.end - t, *inside_ends(self.form, z), below])

    def cuts(self) -> list[Function]:
        return self.joint_cuts()


class NarrowingFlatOnWall(_StripOnWall):
    """Crest or root on the wall where it leans by the back taper; the parameter is the offset."""

    def __init__(self, form: Form, side: int, part: Part) -> None:
        super().__init__(form, side, part)
        self.nominal = form.segments[part].start_radius
        sunk = form.narrowed(np.linspace(0.0, form.thread_end, 9))
        radii = self.settled(self.nominal - sunk, partial(form.part_drop, part))
        starts, ends = form.part_limits(part, form.wall_phi(side, radii))
        start, end = float(starts.min()), float(ends.max())
        overlap = 0.02 * (end - start)
        self.lower[:], self.upper[:] = start - overlap, end + overlap

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        return self.at_offset(i, t, np.full_like(t, self.nominal))

    def conditions(self, i: Indices, t: Floats) -> Floats:
        r, z = self.curve(i, t)
        phi = self.form.wall_phi(self.side, r)
        start, end = self.form.part_limits(self.part, phi)
        below = self.form.cone_radius(phi, z) - r
        return np.stack([t - start, end - t, *inside_ends(self.form, z), below])

    def kink_angles(self) -> list[float]:
        return self.form.part_kinks(self.part)


class ArcOnWall(_StripOnWall):
    """A rounded crest or root on the wall; the parameter is the angle from the arc's middle."""

    # The edge is to be followed in the parameters of the arc's surface as well; what wall and floor
    # leave of it near its ends is mostly straight.
    least_degree = 9
    bends_over = 0.25

    def __init__(self, form: Form, side: int, part: Part) -> None:
        super().__init__(form, side, part)
        segment = form.segments[part]
        half = float(np.arcsin((segment.end - segment.middle) / abs(segment.arc)))
        self.lower[:], self.upper[:] = -1.02 * half, 1.02 * half
        self.half = half

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        segment = self.form.segments[self.part]
        w = segment.middle + abs(segment.arc) * np.sin(t)
        return self.at_offset(i, w, segment.arc_centre + segment.arc * np.cos(t))

    def conditions(self, i: Indices, t: Floats) -> Floats:
        r, z = self.curve(i, t)
        below = self.form.cone_radius(self.form.wall_phi(self.side, r), z) - r
        return np.stack([self.half - t, self.half + t, *inside_ends(self.form, z), below])

    def kink_angles(self) -> list[float]:
        return self.form.part_kinks(self.part)


class ConeOnWall(_WallLoci):
    """The chamfer cone on the wall; the parameter is the radius."""

    def __init__(self, form: Form, side: int) -> None:
        super().__init__(form, side, np.arange(form.lands))
        # Between the front plane and the crest: lower, the wall may not even reach.
        core = form.tap.flutes.core_diameter / 2
        sunk = form.cone_drop(np.linspace(*form.phi_range(), 33))
        foot = form.point_radius - max(float(sunk.max()), 0.0) - 0.01 * form.pitch
        self.lower[:] = max(foot, core + 0.1 * (form.point_radius - core))
        self.upper[:] = form.widest_crest + 0.01 * form.pitch
        # One locus passes every turn of the chamfer.
        climb = float(self.upper[0] - self.lower[0]) / form.cone_tan
        self.density = 2 + int(climb / form.pitch)

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        del i
        phi = self.form.wall_phi(self.side, t)
        return t, (t + self.form.cone_drop(phi) - self.form.point_radius) / self.form.cone_tan

    def conditions(self, i: Indices, t: Floats) -> Floats:
        r, z = self.curve(i, t)
        phi = self.form.wall_phi(self.side, r)
        below = self.form.thread_radius(self.lands[i], phi, z) - r
        return np.stack([*inside_ends(self.form, z), below])

    def kink_angles(self) -> list[float]:
        return self.form.cone_kinks()

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        cones = [keys.cone(land) for land in self.lands[i].tolist()]
        return list(zip(cones, self.wall_carriers(i, t), strict=True))


class TurnedOnWall(_WallLoci):
    """Turned length number `number` of the blank on the wall; the parameter is z."""

    def __init__(self, form: Form, side: int, number: int, body: FaceKey) -> None:
        super().__init__(form, side, np.arange(form.lands))
        piece = form.turned[number]
        self.body = body
        self.lower[:] = piece.start
        self.upper[:] = min(piece.end, form.full_depth)

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        del i
        return self.form.body_radius(t), t

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        bodies = [self.body.on_land(land) for land in self.lands[i].tolist()]
        return list(zip(bodies, self.wall_carriers(i, t), strict=True))


class WallFoot(_WallLoci):
    """Line in which the straight wall passes into the floor; the parameter is z.

    Along the thread the foot may lie between root and crest, and then shows once in every turn.
    Behind it the blank decides (`BlankFoot`): where one takes over from the other the outside
    jumps, and a function that jumps hides what lies close to the jump.
    """

    def __init__(self, form: Form, side: int) -> None:
        super().__init__(form, side, np.arange(form.lands))
        self.upper[:] = form.thread_end
        self.density = 2 + int(form.thread_end / form.pitch)

    def curve(self, i: Indices, t: Floats) -> tuple[Floats, Floats]:
        del i
        return np.full_like(t, self.turn_radius), t

    def conditions(self, i: Indices, t: Floats) -> Floats:
        phi = self.form.wall_phi(self.side, np.full_like(t, self.turn_radius))
        return self.form.threaded(self.lands[i], phi, t) - self.turn_radius

    def cuts(self) -> list[Function]:
        return self.joint_cuts()

    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        straight = keys.wall_kind(self.side)
        flutes = self.form.flutes_of(self.lands[i], self.side).tolist()
        rows = zip(flutes, self.form.length_of_wall(t).tolist(), strict=True)
        return [(keys.wall(straight, *row), keys.wall(FaceKind.FLOOR, *row)) for row in rows]


class BlankFoot(WallFoot):
    """The same behind the thread, up to where the ball stops."""

    def __init__(self, form: Form, side: int) -> None:
        super().__init__(form, side)
        self.lower[:] = form.thread_end
        self.upper[:] = form.full_depth
        self.density = 1

    def conditions(self, i: Indices, t: Floats) -> Floats:
        del i
        return (self.form.body_radius(t) - self.turn_radius)[None]


def families(form: Form, bodies: list[FaceKey]) -> Iterator[tuple[Loci, str]]:
    """All loci of this file; `bodies` are the keys of the turned lengths that a flute cuts."""
    for side in (FACE, HEEL):
        for part, segment in form.segments.items():
            if segment.is_arc:
                yield ArcOnWall(form, side, part), "spline"
            elif part.is_flank:
                yield FlankOnWall(form, side, part), "spline"
            elif form.narrowing:
                yield NarrowingFlatOnWall(form, side, part), "spline"
            else:
                yield FlatOnWall(form, side, part), "line"
        yield ConeOnWall(form, side), "spline"
        yield WallFoot(form, side), "line"
        if form.full_depth > form.thread_end:
            yield BlankFoot(form, side), "line"
        for number, body in enumerate(bodies):
            piece = form.turned[number]
            if piece.start < form.full_depth:
                shape = "spline" if piece.is_cone else "line"
                yield TurnedOnWall(form, side, number, body), shape
