"""The surfaces that carry the faces: their equations, and where a point lies on them.

A carrier knows the parameters (u, v) of a point on it and whether its natural normal, the cross
product of its u and v tangents, points out of the tap. Poles and frames are plain numbers; the
kernel room turns them into its own surfaces.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry import bezier
from tapmodel.geometry.trace import keys
from tapmodel.geometry.trace.keys import FaceKey, FaceKind
from tapmodel.shape.form import Form
from tapmodel.shape.profile import Part
from tapmodel.shape.walls import FACE, HEEL

Floats = NDArray[np.float64]

# By how much the surface of an arc goes on beyond its ends [rad].
_ARC_HAIR = 0.005
# How closely a surface of the thread is followed [mm]: edges lie on two, each as far off.
_CLOSE = 2e-8
# By how much a surface goes on along the land, of its length; and below the deepest root [mm].
_OVERLAP, _HAIR = 0.01, 0.01


@dataclass(frozen=True, slots=True)
class Frame:
    """Origin and three unit axes, rows x, y, z of `axes` [mm]; right-handed."""

    origin: Floats
    axes: Floats

    def local(self, points: Floats) -> Floats:
        """Coordinates of points (..., 3) in this frame."""
        return (points - self.origin) @ self.axes.T


@dataclass(frozen=True, slots=True)
class Plane:
    """A plane through the frame's origin; u and v along its x and y axes."""

    frame: Frame
    outward: bool = True

    def uv(self, points: Floats) -> Floats:
        """Parameters of points."""
        return self.frame.local(points)[..., :2]


@dataclass(frozen=True, slots=True)
class Cylinder:
    """A cylinder about the frame's z axis; u the angle, v along it [mm].

    Attributes:
        frame: its axis and where v is 0.
        radius: of it [mm].
        outward: whether the normal away from the axis points out of the tap.
    """

    frame: Frame
    radius: float
    outward: bool

    def uv(self, points: Floats) -> Floats:
        """Parameters of points, angle in (-pi, pi]."""
        x, y, z = np.moveaxis(self.frame.local(points), -1, 0)
        return np.stack([np.arctan2(y, x), z], axis=-1)


@dataclass(frozen=True, slots=True)
class Cone:
    """A cone about the frame's z axis; u the angle, v along the generator.

    Attributes:
        frame: the circle of radius `radius` lies in its x-y plane.
        radius: there [mm].
        half_angle: to the axis, + when the radius grows with z [rad].
        outward: whether the normal away from the axis points out of the tap.
    """

    frame: Frame
    radius: float
    half_angle: float
    outward: bool

    def uv(self, points: Floats) -> Floats:
        """Parameters of points, angle in (-pi, pi]."""
        x, y, z = np.moveaxis(self.frame.local(points), -1, 0)
        return np.stack([np.arctan2(y, x), z / np.cos(self.half_angle)], axis=-1)


@dataclass(frozen=True, slots=True)
class Sphere:
    """A sphere about the frame's origin; u the longitude, v the latitude about its z axis."""

    frame: Frame
    radius: float
    outward: bool

    def uv(self, points: Floats) -> Floats:
        """Parameters of points."""
        x, y, z = np.moveaxis(self.frame.local(points), -1, 0)
        latitude = np.arcsin(np.clip(z / self.radius, -1.0, 1.0))
        return np.stack([np.arctan2(y, x), latitude], axis=-1)


@dataclass(frozen=True, slots=True)
class Ruled:
    """A polynomial surface ruled along the profile: u = phi, v = axial offset or height.

    Attributes:
        knots: of u, (n + 1,).
        poles: (m, 2, 3) [mm], rows along u, the two ends of the rulings.
        multiplicities: of the u knots.
        span: v at the two ends of the rulings [mm].
        uv_of: parameters of points.
    """

    knots: Floats
    poles: Floats
    multiplicities: list[int]
    span: tuple[float, float]
    uv_of: Callable[[Floats], Floats]
    outward: bool = True

    def uv(self, points: Floats) -> Floats:
        """Parameters of points."""
        return self.uv_of(points)


@dataclass(frozen=True, slots=True)
class Arched:
    """A surface whose sections across u are arcs: u = phi, v from 0 to 1 across the arc.

    Attributes:
        knots, multiplicities: of u.
        poles: (m, 3, 3) [mm], rows along u, the three control points of the arc.
        weight: of the middle control point, the cosine of half the arc; those of the ends are 1.
        uv_of: parameters of points.
    """

    knots: Floats
    poles: Floats
    multiplicities: list[int]
    weight: float
    uv_of: Callable[[Floats], Floats]
    outward: bool = True

    def uv(self, points: Floats) -> Floats:
        """Parameters of points."""
        return self.uv_of(points)


Carrier = Plane | Cylinder | Cone | Sphere | Ruled | Arched


class Carriers:
    """The carrier for each key of a form's skin."""

    def __init__(self, form: Form) -> None:
        """Prepare flanks and arcs once; all their copies are screw motions of these."""
        self.form = form
        self._cone_range, self._middle = _widened(form.phi_range()), sum(form.phi_range()) / 2
        # The cone may reach down to the core; strips as long would take more poles to follow.
        self._range = _widened(form.phi_range(form.deepest_root - _HAIR))
        # By how much the poles of a strip move where its profile grows by 1 mm.
        self._outwards: dict[Part, Floats] = {}
        self._flanks = {part: self._flank(part) for part in Part if part.is_flank}
        self._arcs = {part: self._arc(part) for part in Part if form.segments[part].is_arc}
        self._flats: dict[FaceKey, Ruled] = {}

    def carrier(self, key: FaceKey) -> Carrier:
        """The carrier that the face `key` lies on; of any but the ring, which the rear has."""
        makers: dict[FaceKind, Callable[[FaceKey], Carrier]] = {
            FaceKind.STRIP: self._strip,
            FaceKind.FLAT: self._flat,
            FaceKind.CONE: self._cone,
            FaceKind.FRONT: self._front,
            FaceKind.RIDGE_END: partial(self._end, 1.0),
            FaceKind.GROOVE_END: partial(self._end, -1.0),
            FaceKind.FACE: partial(self._wall, FACE),
            FaceKind.HEEL: partial(self._wall, HEEL),
            FaceKind.FLOOR: self._floor,
            FaceKind.RUN_OUT: self._run_out,
            FaceKind.BALL: self._ball,
            FaceKind.TURNED: self._turned,
        }
        return makers[key.kind](key)

    def shared(self, key: FaceKey) -> FaceKey:
        """One key for all faces on one carrier: crests (or roots) of a land, lengths of a wall."""
        if key.kind is FaceKind.STRIP and self._is_flat(key.part):
            return keys.flat(key.land, key.part)
        return key.carrier

    # --- threaded length --------------------------------------------------------------------

    def _is_flat(self, part: Part) -> bool:
        return part not in self._arcs and part not in self._flanks

    def _flank(self, part: Part) -> Ruled:
        """A flank of land 0 turned back to angle 0 and slid down to height 0, before it narrows."""
        form = self.form
        starts, ends = form.part_limits(part, np.linspace(*self._range, 65))
        span = (float(np.min(starts)) - 1e-3, float(np.max(ends)) + 1e-3)

        def rulings(phi: Floats) -> Floats:
            both: list[Floats] = []
            for w in span:
                z = w + form.advance * phi
                r = form.part_radius(part, np.full_like(phi, w), phi) - form.narrowing * z
                both += [r * np.cos(phi), r * np.sin(phi), z]
            return np.stack(both, axis=-1)

        knots, poles, multiplicities = self._of_strip(part, rulings)
        return Ruled(knots, poles, multiplicities, span, lambda points: points)

    def _of_strip(
        self, part: Part, rulings: Callable[[Floats], Floats]
    ) -> tuple[Floats, Floats, list[int]]:
        """The surface that control points across u describe, and how it moves outwards."""
        marks = _marks(self._range, self.form.part_kinks(part))
        if not self.form.narrowing:
            self._outwards[part] = np.zeros((1, 1, 3))
            return _ruled(rulings, marks)

        def with_outwards(phi: Floats) -> Floats:
            outwards = np.stack([np.cos(phi), np.sin(phi), np.zeros_like(phi)], axis=-1)
            return np.concatenate([rulings(phi), outwards], axis=-1)

        knots, poles, multiplicities = _ruled(with_outwards, marks)
        self._outwards[part] = poles[:, -1:]
        return knots, poles[:, :-1], multiplicities

    def _strip(self, key: FaceKey) -> Ruled | Arched:
        if self._is_flat(key.part):
            return self._flat(self.shared(key))
        form, land = self.form, key.land
        ready = self._arcs[key.part] if key.part in self._arcs else self._flanks[key.part]
        height = float(form.crest_z[land]) + key.turn * form.pitch
        grown = -form.narrowed(np.asarray(height)) * self._outwards[key.part]
        turn = _turn(float(form.edge_angles[land])).T
        poles = (ready.poles + grown) @ turn + [0.0, 0.0, height]

        def uv_of(points: Floats) -> Floats:
            phi = self._phi(land, points)
            return ready.uv_of(np.stack([phi, points[..., 2] - height - form.advance * phi], -1))

        return replace(ready, poles=poles, uv_of=uv_of)

    def _arc(self, part: Part) -> Arched:
        """A rounded crest or root of land 0 turned back to angle 0 and slid down to height 0.

        Its `uv_of` takes angle and axial offset.
        """
        form, segment = self.form, self.form.segments[part]
        half = float(np.arcsin((segment.end - segment.middle) / abs(segment.arc))) + _ARC_HAIR
        end, top = segment.arc * np.cos(half), segment.arc / np.cos(half)
        side = abs(segment.arc) * float(np.sin(half))
        controls = [(-side, end), (0.0, top), (side, end)]

        def rulings(phi: Floats) -> Floats:
            sunk = form.part_drop(part, phi)
            both: list[Floats] = []
            for w, rise in controls:
                z = segment.middle + w + form.advance * phi
                r = segment.arc_centre + rise - sunk - form.narrowing * z
                both += [r * np.cos(phi), r * np.sin(phi), z]
            return np.stack(both, axis=-1)

        def uv_of(places: Floats) -> Floats:
            from_middle = np.arcsin((places[..., 1] - segment.middle) / abs(segment.arc))
            # The rational parameter of an arc runs with the tangent of half the angle.
            v = (1 + np.tan(from_middle / 2) / np.tan(half / 2)) / 2
            return np.stack([places[..., 0], v], axis=-1)

        knots, poles, multiplicities = self._of_strip(part, rulings)
        return Arched(knots, poles, multiplicities, float(np.cos(half)), uv_of)

    def _flat(self, key: FaceKey) -> Ruled:
        """Crests (or roots) of a land lie on one surface along the axis; v is z."""
        if key not in self._flats:
            self._flats[key] = self._upright(key.land, key.part)
        return self._flats[key]

    def _upright(self, land: int, part: Part) -> Ruled:
        form, middle = self.form, self.form.segments[part]
        span = (-1e-3, form.thread_end + 1e-3)
        w = (middle.start + middle.end) / 2

        def rulings(phi: Floats) -> Floats:
            r = form.part_radius(part, np.full_like(phi, w), phi)
            lands = np.full(phi.shape, land)
            both: list[Floats] = []
            for z in span:
                heights = np.full_like(phi, z)
                both.append(form.points(lands, phi, r - form.narrowed(heights), heights))
            return np.concatenate(both, axis=-1)

        knots, poles, multiplicities = _ruled(rulings, _marks(self._range, form.part_kinks(part)))

        def uv_of(points: Floats) -> Floats:
            return np.stack([self._phi(land, points), points[..., 2]], axis=-1)

        return Ruled(knots, poles, multiplicities, span, uv_of)

    def _cone(self, key: FaceKey) -> Ruled:
        form, land = self.form, key.land
        sunk = max(float(np.max(form.cone_drop(np.linspace(*self._cone_range, 65)))), 0.0)
        top = (form.crest_radius + sunk - form.point_radius) / form.cone_tan
        span = (-0.1, min(top, form.thread_end) + 0.1)

        def rulings(phi: Floats) -> Floats:
            lands = np.full(phi.shape, land)
            both: list[Floats] = []
            for z in span:
                heights = np.full_like(phi, z)
                both.append(form.points(lands, phi, form.cone_radius(phi, heights), heights))
            return np.concatenate(both, axis=-1)

        knots, poles, multiplicities = _ruled(rulings, _marks(self._cone_range, form.cone_kinks()))

        def uv_of(points: Floats) -> Floats:
            return np.stack([self._phi(land, points), points[..., 2]], axis=-1)

        return Ruled(knots, poles, multiplicities, span, uv_of)

    def _phi(self, land: int, points: Floats) -> Floats:
        theta = np.arctan2(points[..., 1], points[..., 0])
        phi: Floats = theta - self.form.edge_angles[land] - self._middle
        return phi - 2 * np.pi * np.round(phi / (2 * np.pi)) + self._middle

    # --- planes -----------------------------------------------------------------------------

    def _front(self, _key: FaceKey) -> Plane:
        return Plane(Frame(np.zeros(3), np.array([[1.0, 0, 0], [0, -1.0, 0], [0, 0, -1.0]])))

    def _end(self, sign: float, _key: FaceKey) -> Plane:
        axes = np.array([[1.0, 0, 0], [0, sign, 0], [0, 0, sign]])
        return Plane(Frame(np.array([0.0, 0, self.form.thread_end]), axes))

    def _axes(self, flute: int) -> Floats:
        """Rows u, t, z of a flute's frame."""
        return _turn(float(self.form.flute_angles[flute])).T

    def _wall(self, side: int, key: FaceKey) -> Plane:
        u, t, z = self._axes(key.flute)
        walls = self.form.walls
        origin = (walls.e + side * float(walls.b)) * t
        # The normal points out of the land into the flute: -t on the cutting face.
        axes = np.array([z, u, t]) if side < 0 else np.array([u, z, -t])
        return Plane(Frame(origin, axes))

    # --- flutes -----------------------------------------------------------------------------

    def _ball_centre(self, flute: int) -> Floats:
        u, t, z = self._axes(flute)
        walls = self.form.walls
        return walls.c * u + walls.e * t + self.form.full_depth * z

    def _floor(self, key: FaceKey) -> Cylinder:
        u, t, z = self._axes(key.flute)
        origin = self._ball_centre(key.flute) * np.array([1.0, 1.0, 0.0])
        frame = Frame(origin, np.array([-u, -t, z]))
        return Cylinder(frame, float(self.form.walls.b), outward=False)

    def _run_out(self, key: FaceKey) -> Cylinder:
        u, t, z = self._axes(key.flute)
        frame = Frame(self._ball_centre(key.flute), np.array([z, -t, u]))
        return Cylinder(frame, float(self.form.walls.b), outward=False)

    def _ball(self, key: FaceKey) -> Sphere:
        u, t, z = self._axes(key.flute)
        # Poles and seam of the sphere lie off the quarter that is used: no degenerate edges.
        half = np.sqrt(0.5)
        axes = np.array([half * (z - u), -t, half * (z + u)])
        return Sphere(Frame(self._ball_centre(key.flute), axes), float(self.form.walls.b), False)

    def _turned(self, key: FaceKey) -> Cylinder | Cone:
        piece = self.form.turned[key.number]
        middle = float(self.form.edge_angles[key.land]) + self._middle
        frame = Frame(np.array([0.0, 0, piece.start]), _turn(middle).T)
        if not piece.is_cone:
            return Cylinder(frame, piece.start_radius, outward=True)
        rise = piece.end_radius - piece.start_radius
        half_angle = float(np.arctan2(rise, piece.end - piece.start))
        return Cone(frame, piece.start_radius, half_angle, outward=True)


def _widened(ends: tuple[float, float]) -> tuple[float, float]:
    """Angles of a surface that goes on a little beyond its faces."""
    low, high = ends
    overlap = _OVERLAP * (high - low)
    return low - overlap, high + overlap


def _marks(ends: tuple[float, float], kinks: list[float]) -> Floats:
    low, high = ends
    return np.array([low, *(kink for kink in kinks if low < kink < high), high])


def _ruled(rulings: Callable[[Floats], Floats], marks: Floats) -> tuple[Floats, Floats, list[int]]:
    """Knots, poles and multiplicities of the surface that control points across u describe."""
    owner = np.zeros(len(marks) - 1, dtype=np.intp)
    ends = np.column_stack([marks[:-1], marks[1:]])
    spans = bezier.follow(lambda _i, phi: rulings(phi), owner, ends, close=_CLOSE)
    knots = np.append(spans.ends[:, 0], spans.ends[-1, 1])
    poles, multiplicities = bezier.join(knots, bezier.fit(spans.samples))
    return knots, poles.reshape(len(poles), -1, 3), multiplicities


def _turn(angle: float) -> Floats:
    """Rotation about z by `angle` [rad]."""
    cosine, sine = np.cos(angle), np.sin(angle)
    return np.array([[cosine, -sine, 0.0], [sine, cosine, 0.0], [0.0, 0.0, 1.0]])
