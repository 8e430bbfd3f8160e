"""The tap's surfaces as functions of (land, phi, z): what the edges are traced on.

Inside the geometry room angles are radians. `phi` is the angle behind the crest edge of a land,
z the height above the front; r is always the distance from the axis. Every function is
vectorised: land, phi, z and r are arrays of one shape.
"""

from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from tapmodel.shape.back_taper import narrowed, rises_before_edge
from tapmodel.shape.parting import AS_DESIGNED, Parting
from tapmodel.shape.profile import Part, Segment, profile_radius, segments, uncrested_radius
from tapmodel.shape.relief import drop
from tapmodel.shape.turned import Turned
from tapmodel.shape.walls import FACE, Walls
from tapmodel.tap.tap import Tap
from tapmodel.words import ReliefKind, ReliefPlace

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Turns after which the walls of the flutes are divided: they have four edges a turn on each side,
# and the kernel's mesher takes far more than linear time on a face with many.
_TURNS_OF_A_WALL = 50
# Where in a turn they are divided: no round number, so that no edge of a round job lies there.
_IN_A_TURN = (3 - 5**0.5) / 2
# A neck whose radius differs by less from the shank's is part of it [mm]: a thousandth of what the
# proof allows a face.
_LEAST_STEP = 1e-7


class Form:
    """Surfaces of the right-hand tap of a design."""

    def __init__(self, tap: Tap, parting: Parting = AS_DESIGNED) -> None:
        """Take every length and angle from `tap`, a few of them moved by `parting`."""
        self.tap, self.parting = tap, parting
        thread, chamfer, flutes = tap.thread, tap.chamfer, tap.flutes
        self.lands = flutes.count
        self.spacing = 2 * np.pi / flutes.count
        self.pitch = thread.pitch
        self.advance = thread.lead / (2 * np.pi)
        self.crest_radius = thread.major / 2
        self.root_radius = thread.minor / 2
        self.flank_tan = float(np.tan(np.radians(thread.flank_angle)))
        self.profile = segments(thread)
        self.segments: dict[Part, Segment] = {segment.part: segment for segment in self.profile}
        self.walls = Walls(
            flutes.centre_radius, flutes.offset, np.asarray(flutes.cutter_diameter / 2)
        )
        self.flute_angles = np.radians(np.array(flutes.angles))
        self.edge_angle = float(self.walls.angle(FACE, np.asarray(self.crest_radius)))
        self.edge_angles = self.flute_angles + self.edge_angle
        self.crest_z = thread.first_z + parting.thread + self.advance * self.edge_angles
        self.cone_tan = float(np.tan(np.radians(chamfer.angle)))
        self.point_radius = chamfer.point_diameter / 2
        self.thread_end = tap.blank.thread_length
        self.narrowing = thread.narrowing
        self.full_depth = flutes.full_depth_length + parting.depth

    # --- relief ---------------------------------------------------------------------------

    def part_drop(self, part: Part, phi: Floats) -> Floats:
        """Drop of one part of the profile [mm]."""
        relief = self.tap.relief.thread
        if part is not Part.CREST and relief.applies_to is not ReliefPlace.THREAD:
            return np.zeros_like(phi)
        return drop(relief, self.tap.thread.major, np.degrees(phi))

    def cone_drop(self, phi: Floats) -> Floats:
        """Drop of the chamfer cone [mm]."""
        return drop(self.tap.relief.chamfer, self.tap.thread.major, np.degrees(phi))

    def part_kinks(self, part: Part) -> list[float]:
        """Angles where the drop of a part changes its law [rad]."""
        relief = self.tap.relief.thread
        carries = part is Part.CREST or relief.applies_to is ReliefPlace.THREAD
        return (
            [float(np.radians(relief.margin_angle))]
            if carries and relief.kind is ReliefKind.CON_ECCENTRIC
            else []
        )

    def cone_kinks(self) -> list[float]:
        """Angles where the drop of the cone changes its law [rad]."""
        relief = self.tap.relief.chamfer
        if relief.kind is not ReliefKind.CON_ECCENTRIC:
            return []
        return [float(np.radians(relief.margin_angle))]

    # --- profile --------------------------------------------------------------------------

    def narrowed(self, z: Floats) -> Floats:
        """Radius that the whole profile has lost at z by the back taper."""
        return narrowed(self.tap, z)

    @cached_property
    def widest_crest(self) -> float:
        """Radius over the crests at the front, before the chamfer takes them off [mm]."""
        return self.crest_radius - narrowed(self.tap, 0.0)

    @cached_property
    def narrowed_at_end(self) -> float:
        """Radius that the thread has lost where it ends [mm]."""
        return narrowed(self.tap, self.thread_end)

    def part_radius(self, part: Part, w: Floats, phi: Floats) -> Floats:
        """Radius of a part of the profile, extended, at axial offset w, before it narrows."""
        return self.segments[part].radius(w) - self.part_drop(part, phi)

    @cached_property
    def deepest_root(self) -> float:
        """A radius that nowhere on the land the thread is cut below [mm]."""
        phi, root = np.linspace(*self.phi_range(), 65), self.segments[Part.ROOT]
        middle = np.full_like(phi, (root.start + root.end) / 2)
        lost = max(float(self.narrowed(np.array(0.0))), self.narrowed_at_end)
        return float(np.min(self.part_radius(Part.ROOT, middle, phi))) - lost

    def part_limits(self, part: Part, phi: Floats) -> tuple[Floats, Floats]:
        """Axial offsets between which the part is the surface, at phi."""
        segment = self.segments[part]
        # A crest dropped alone meets the flanks lower down, so it is wider there.
        wider = self._crest_widening(phi)
        low = {Part.CREST: -wider, Part.REAR_FLANK: wider}.get(part, np.zeros_like(phi))
        high = {Part.CREST: wider, Part.FRONT_FLANK: -wider}.get(part, np.zeros_like(phi))
        return segment.start + low, segment.end + high

    def _crest_widening(self, phi: Floats) -> Floats:
        if self.tap.relief.thread.applies_to is ReliefPlace.THREAD:
            return np.zeros_like(phi)
        return self.part_drop(Part.CREST, phi) * self.flank_tan

    def offset_to_z(self, land: Indices, turn: Indices, phi: Floats) -> Floats:
        """The z of offset w = 0 of thread turn `turn` on a land at phi."""
        return self.crest_z[land] + turn * self.pitch + self.advance * phi

    def thread_radius(self, land: Indices, phi: Floats, z: Floats) -> Floats:
        """Radius of the threaded surface, with relief."""
        w = z - self.crest_z[land] - self.advance * phi
        nominal = profile_radius(self.profile, w)
        sunk = self.part_drop(Part.CREST, phi)
        if self.tap.relief.thread.applies_to is ReliefPlace.THREAD:
            return nominal - sunk - self.narrowed(z)
        if rises_before_edge(self.tap):
            nominal = uncrested_radius(self.profile, w)
        return np.minimum(nominal, self.crest_radius - sunk) - self.narrowed(z)

    def cone_radius(self, phi: Floats, z: Floats) -> Floats:
        """Radius of the chamfer cone, with relief."""
        return self.point_radius + z * self.cone_tan - self.cone_drop(phi)

    # --- blank ----------------------------------------------------------------------------

    @cached_property
    def turned(self) -> list[Turned]:
        """Neck, shoulder and shank in order, from the end of the thread to the rear face."""
        blank = self.tap.blank
        neck, shank = (
            d / 2 + self.parting.turned for d in (blank.neck_diameter, blank.shank_diameter)
        )
        z, rear = self.thread_end, blank.overall_length
        step = abs(shank - neck)
        if not blank.has_neck or step < _LEAST_STEP:
            return [Turned(z, rear, shank, shank)]
        neck_end = z + blank.neck_length
        rise = step / float(np.tan(np.radians(blank.shoulder_angle)))
        return [
            Turned(z, neck_end, neck, neck),
            Turned(neck_end, neck_end + rise, neck, shank),
            Turned(neck_end + rise, rear, shank, shank),
        ]

    def body_radius(self, z: Floats) -> Floats:
        """Radius of the turned blank at z behind the thread."""
        ends = [self.turned[0].start, *(piece.end for piece in self.turned)]
        radii = [self.turned[0].start_radius, *(piece.end_radius for piece in self.turned)]
        return np.interp(z, ends, radii)

    def threaded(self, land: Indices, phi: Floats, z: Floats) -> Floats:
        """Radii of thread and chamfer cone, shape (2, ...); the lesser is the surface."""
        return np.stack([self.thread_radius(land, phi, z), self.cone_radius(phi, z)])

    # --- flutes ---------------------------------------------------------------------------

    @cached_property
    def joints(self) -> Floats:
        """Heights at which the walls of the flutes are divided, rising; few taps have any [mm]."""
        turns = self.thread_end / self.pitch
        lengths = max(int(np.ceil(turns / _TURNS_OF_A_WALL)), 1)
        return (np.floor(turns / lengths) * np.arange(1, lengths) + _IN_A_TURN) * self.pitch

    def length_of_wall(self, z: Floats) -> Indices:
        """Numbers, from 0 at the front, of the lengths of a flute's walls at heights z."""
        return np.searchsorted(self.joints, z)

    def wall_phi(self, side: int, radius: Floats, b: Floats | None = None) -> Floats:
        """Angle behind the crest edge at which a land is bounded by its face or heel wall.

        `b` narrows the flute to the section of the cutter beyond the full depth.
        """
        walls = self.walls if b is None else Walls(self.walls.c, self.walls.e, b)
        angle = walls.angle(side, radius) - self.edge_angle
        return angle if side == FACE else angle + self.spacing

    def phi_range(self, deepest: float = 0.0) -> tuple[float, float]:
        """Least and greatest phi of a land between a radius, or its core, and the crest [rad]."""
        # Just above the core the wall turns to its limit; no profile point lies that deep.
        core = self.tap.flutes.core_diameter / 2 + 0.01
        radii = np.linspace(max(core, deepest), self.widest_crest, 65)
        return (
            float(np.min(self.wall_phi(FACE, radii))),
            float(np.max(self.wall_phi(-FACE, radii))),
        )

    def flutes_of(self, lands: Indices, side: int) -> Indices:
        """Numbers of the flutes whose wall bounds the lands on a side."""
        return lands if side == FACE else (lands + 1) % self.lands

    def points(self, land: Indices, phi: Floats, r: Floats, z: Floats) -> Floats:
        """Cartesian points from land coordinates, shape (..., 3)."""
        theta = self.edge_angles[land] + phi
        return np.stack([r * np.cos(theta), r * np.sin(theta), z], axis=-1)

    def flute_points(self, flute: Indices, u: Floats, t: Floats, z: Floats) -> Floats:
        """Cartesian points from a flute's own frame, shape (..., 3)."""
        cosine, sine = np.cos(self.flute_angles[flute]), np.sin(self.flute_angles[flute])
        return np.stack([u * cosine - t * sine, u * sine + t * cosine, z], axis=-1)
