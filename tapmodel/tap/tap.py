"""What a tap is: the frozen definition, in which nothing follows from anything else.

Lengths in mm, angles in degrees. The frame: the tap's axis is z, `z = 0` is the front (entering)
end, +z runs towards the square; angles count counter-clockwise seen from +z. All records describe
the right-hand tap; a left-hand tap is its mirror image in the plane y = 0, which `thread.hand`
alone says.

Properties are plain identities between the fields, so that each has one home. What takes more than
an identity (rakes, lands, areas, the relief's arcs, the run-out) is computed by the shape room.
"""

import math
from dataclasses import dataclass

from tapmodel.tap.flanks import Flanks
from tapmodel.words import Hand, ReliefKind, ReliefPlace


@dataclass(frozen=True, slots=True)
class TapThread:
    """Axial profile of the tap at the cutting edge, and where its helix lies.

    Attributes:
        pitch: axial distance of neighbouring threads [mm].
        starts: number of threads side by side.
        hand: right or left.
        flank_angle: between flank and the plane square to the axis [deg], 30 for ISO metric.
        major: diameter over the crests [mm].
        pitch_diameter: where ridge and groove are equally wide [mm].
        minor: diameter at the bottom of the root [mm].
        rounded_crest, rounded_root: whether it is the arc that touches both flanks, or a flat.
        first_z: z at angle 0 of the middle of a crest [mm]; with lead and hand it locates the
            helix: crest middles at `first_z + lead*theta/360 + k*pitch`.
        back_taper: loss of all three diameters along the axis towards the square [mm per 100 mm].
            They are as stated where the chamfer ends (`Tap.chamfer_length`), larger before.
    """

    pitch: float
    starts: int
    hand: Hand
    flank_angle: float
    major: float
    pitch_diameter: float
    minor: float
    rounded_crest: bool
    rounded_root: bool
    first_z: float
    back_taper: float = 0.0

    @property
    def lead(self) -> float:
        """Advance in one turn [mm]."""
        return self.starts * self.pitch

    @property
    def narrowing(self) -> float:
        """Loss of radius by the back taper on each millimetre towards the square."""
        return self.back_taper / 200

    @property
    def flanks(self) -> Flanks:
        """The lines of the flanks."""
        return Flanks(self.pitch, self.pitch_diameter, math.radians(self.flank_angle))

    @property
    def crest_flat(self) -> float:
        """Axial width of the crest's flat, 0 where it is rounded [mm]."""
        if self.rounded_crest:
            return 0.0
        return self.flanks.flat(self.major - self.pitch_diameter)

    @property
    def crest_radius(self) -> float:
        """Radius of the crest's arc, 0 for a flat [mm]."""
        return self.flanks.radius(self.major - self.pitch_diameter) if self.rounded_crest else 0.0

    @property
    def root_flat(self) -> float:
        """Axial width of the root's flat, 0 where it is rounded [mm]."""
        if self.rounded_root:
            return 0.0
        return self.flanks.flat(self.pitch_diameter - self.minor)

    @property
    def root_radius(self) -> float:
        """Radius of the root's arc, 0 for a flat [mm]."""
        return self.flanks.radius(self.pitch_diameter - self.minor) if self.rounded_root else 0.0


@dataclass(frozen=True, slots=True)
class Chamfer:
    """The lead of the tap: a cone whose diameter at the edge is `point_diameter + 2 z tan(angle)`.

    Attributes:
        angle: half cone angle, to the axis [deg].
        point_diameter: cone diameter at z = 0 [mm].
    """

    angle: float
    point_diameter: float


@dataclass(frozen=True, slots=True)
class Flutes:
    """Straight flutes left by a ball-nose cutter whose axis stands radially.

    In a flute's own frame u runs outwards along the cutter axis and t tangentially (+t = +theta);
    the ball's centre runs along z at (u, t) = (`centre_radius`, `offset`) from the front to
    z = `full_depth_length`. The void is the strip |t - offset| <= b for u >= centre_radius and
    the disc of radius b = cutter_diameter / 2 below it; beyond the full-depth length it is the
    cutter itself, a ball below and a round shank above.

    Attributes:
        count: number of flutes, equal to the number of lands, evenly spaced.
        cutter_diameter, offset, centre_radius: [mm].
        full_depth_length: from the front to the centre of the ball where it stops [mm].
    """

    count: int
    cutter_diameter: float
    offset: float
    centre_radius: float
    full_depth_length: float

    @property
    def core_diameter(self) -> float:
        """Of the web between the flutes [mm]; negative when they pass the axis."""
        return 2 * math.hypot(self.centre_radius, self.offset) - self.cutter_diameter

    @property
    def angles(self) -> tuple[float, ...]:
        """Direction of each cutter axis [deg]."""
        return tuple(360 * number / self.count for number in range(self.count))


@dataclass(frozen=True, slots=True)
class Relief:
    """Radial drop behind the edge, ground on an arc about an offset centre.

    `tapmodel.shape.relief` has its exact law, and the arc's radius and direction, which follow.

    Attributes:
        kind: concentric, con-eccentric or eccentric.
        applies_to: chamfer, crest only, or the whole thread.
        margin_angle: behind the edge without drop, con-eccentric only, else 0 [deg].
        arc_offset: of the arc's centre from the axis of the tap; 0 without relief [mm].
    """

    kind: ReliefKind
    applies_to: ReliefPlace
    margin_angle: float
    arc_offset: float


@dataclass(frozen=True, slots=True)
class Reliefs:
    """The two reliefs of a tap: of the thread (or its crest) and of the chamfer."""

    thread: Relief
    chamfer: Relief


@dataclass(frozen=True, slots=True)
class Blank:
    """Turned blank behind the thread, and the drive square.

    The thread ends in a plane at z = `thread_length`. Behind it the blank is turned to
    `neck_diameter` for `neck_length` (0 = no neck), then runs by a cone of `shoulder_angle` to
    the axis up (or down) to the shank; the square stands at the rear. All [mm] and [deg].

    Attributes:
        overall_length: front to rear face.
        thread_length: from the front to the end of the thread, chamfer included.
        neck_diameter, neck_length: both 0 for no neck.
        shoulder_angle: half angle of the cone between neck and shank.
        shank_diameter: of the shank.
        square_across_flats, square_length: the drive square at the rear.
        rear_chamfer: width of the 45-degree chamfer on the rear edge.
        front_centre, rear_centre: rim diameter of a 60-degree centre, 0 for none.
    """

    overall_length: float
    thread_length: float
    neck_diameter: float
    neck_length: float
    shoulder_angle: float
    shank_diameter: float
    square_across_flats: float
    square_length: float
    rear_chamfer: float
    front_centre: float
    rear_centre: float

    @property
    def has_neck(self) -> bool:
        """Whether the blank is turned to a neck behind the thread."""
        return self.neck_length > 0

    @property
    def square_start(self) -> float:
        """Where the square begins, seen from the front [mm]."""
        return self.overall_length - self.square_length


@dataclass(frozen=True, slots=True)
class Tap:
    """The whole tap."""

    thread: TapThread
    chamfer: Chamfer
    flutes: Flutes
    relief: Reliefs
    blank: Blank

    @property
    def chamfer_length(self) -> float:
        """Axial length until the cone reaches the major diameter [mm]."""
        return chamfer_length(self.thread, self.chamfer)


def chamfer_length(thread: TapThread, chamfer: Chamfer) -> float:
    """Axial length of a chamfer on a thread [mm]."""
    rise = (thread.major - chamfer.point_diameter) / 2
    # A point as thick as the crests leaves no cone, whatever its angle; the rules refuse it.
    return rise / math.tan(math.radians(chamfer.angle)) if rise else 0.0
