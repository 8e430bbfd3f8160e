"""The frozen records that the design room hands on: every number of one tap.

Lengths in mm, angles in degrees, areas in mm². The frame: the tap's axis is z, `z = 0` is the
front (entering) end, +z runs towards the square; angles count counter-clockwise seen from +z.
All records describe the right-hand tap; a left-hand tap is its mirror image in the plane y = 0,
which `thread.hand` alone says.
"""

from dataclasses import dataclass

from tapmodel.findings import Finding
from tapmodel.standards.limits import HoleLimits
from tapmodel.words import Hand, ReliefKind, ReliefPlace


@dataclass(frozen=True, slots=True)
class TapThread:
    """Axial profile of the tap at the cutting edge, and where its helix lies.

    Attributes:
        pitch, lead: [mm]; `lead = starts * pitch`.
        starts: number of threads side by side.
        hand: right or left.
        flank_angle: between flank and the plane square to the axis [deg], 30 for ISO metric.
        tap_class: of its limits, with the standard that defines it, e.g. "2 of ISO 2857".
        major: diameter over the crests, as aimed at; `major_min` the least allowed [mm].
        pitch_diameter: as aimed at, inside [`pitch_min`, `pitch_max`] [mm].
        minor: diameter at the bottom of the root [mm].
        crest_flat, root_flat: axial widths of the flats, 0 where the form is rounded there [mm].
        crest_radius, root_radius: of the arc that touches both flanks, 0 for a flat [mm].
        first_z: z at angle 0 of the middle of a crest [mm]; with lead and hand it locates the
            helix: crest middles at `first_z + lead*theta/360 + k*pitch`.
    """

    pitch: float
    lead: float
    starts: int
    hand: Hand
    flank_angle: float
    tap_class: str
    major: float
    major_min: float
    pitch_diameter: float
    pitch_min: float
    pitch_max: float
    minor: float
    crest_flat: float
    root_flat: float
    crest_radius: float
    root_radius: float
    first_z: float


@dataclass(frozen=True, slots=True)
class Chamfer:
    """The lead of the tap: a cone whose diameter at the edge is `point_diameter + 2 z tan(angle)`.

    Attributes:
        angle: half cone angle, to the axis [deg].
        length: axial length until the cone reaches the major diameter [mm]; `pitches` the same
            in pitches.
        point_diameter: cone diameter at z = 0 [mm].
        teeth: number of teeth that cut in the chamfer, all lands together.
        chip_thickness: uncut chip thickness of one tooth, square to the cone [mm].
    """

    angle: float
    length: float
    pitches: float
    point_diameter: float
    teeth: int
    chip_thickness: float


@dataclass(frozen=True, slots=True)
class Flutes:
    """Straight flutes left by a ball-nose cutter whose axis stands radially.

    In a flute's own frame u runs outwards along the cutter axis and t tangentially (+t = +theta);
    the ball's centre runs along z at (u, t) = (`centre_radius`, `offset`) from the front to
    z = `full_depth_length`. The void is the strip |t - offset| <= b for u >= centre_radius and
    the disc of radius b = cutter_diameter / 2 below it; beyond the full-depth length it is the
    cutter itself, a ball below and a round shank above.

    Attributes:
        count: number of flutes, equal to the number of lands.
        cutter_diameter, offset, centre_radius: [mm].
        depth_from_top: setting of the mill below the top of the blank (turned to the major
            diameter) [mm].
        core_diameter: of the web between the flutes [mm].
        rake_crest, rake_pitch, rake_root: rake of the cutting face at the crest edge (the
            tangential hook), at the pitch line and at the root [deg].
        chordal_hook: between the radius through the crest edge and the chord from there to the
            root of the tooth [deg].
        land_angle: angle of a land at the major diameter [deg]; `land_width` its arc [mm].
        area: of one flute inside the major circle [mm²].
        angles: direction of each cutter axis [deg], one per flute.
        full_depth_length: from the front to the centre of the ball where it stops [mm].
        runout_end: z where the ball leaves the blank: the first z of sound shank [mm].
    """

    count: int
    cutter_diameter: float
    offset: float
    centre_radius: float
    depth_from_top: float
    core_diameter: float
    rake_crest: float
    rake_pitch: float
    rake_root: float
    chordal_hook: float
    land_angle: float
    land_width: float
    area: float
    angles: tuple[float, ...]
    full_depth_length: float
    runout_end: float


@dataclass(frozen=True, slots=True)
class Relief:
    """Radial drop behind the edge; `tapmodel.shape.relief.drop` is its exact law.

    Attributes:
        kind: concentric, con-eccentric or eccentric.
        applies_to: chamfer, crest only, or the whole thread.
        margin_angle: behind the edge without drop, con-eccentric only [deg].
        edge_angle: relief angle at the edge, eccentric only [deg].
        heel_drop: drop at the heel, measured at the major diameter [mm].
        arc_radius, arc_offset, arc_direction: the eccentric arc is a circle of radius
            `arc_radius` [mm] about a centre `arc_offset` [mm] from the axis in the direction
            `arc_direction` [deg], counted from the crest edge of the land in the sense of phi.
    """

    kind: ReliefKind
    applies_to: ReliefPlace
    margin_angle: float
    edge_angle: float
    heel_drop: float
    arc_radius: float
    arc_offset: float
    arc_direction: float


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
    the axis up (or down) to the shank; the square starts at `square_start`. All [mm] and [deg].

    Attributes:
        overall_length: front to rear face.
        thread_length: from the front to the end of the thread, chamfer included.
        neck_diameter, neck_length: both 0 for no neck.
        shoulder_angle: half angle of the cone between neck and shank.
        shank_diameter: of the shank.
        square_across_flats, square_length, square_start: the drive square at the rear.
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
    square_start: float
    rear_chamfer: float
    front_centre: float
    rear_centre: float


@dataclass(frozen=True, slots=True)
class Choice:
    """One value the program settled: which field, what, why, and who published the rule.

    Attributes:
        field: dotted name as in the job file, e.g. "flutes.offset".
        value: as text with unit.
        given: True when the user gave it, False when a rule chose it.
        why: the rule, one sentence.
        source: document and certainty, as text.
    """

    field: str
    value: str
    given: bool
    why: str
    source: str


@dataclass(frozen=True, slots=True)
class TapDesign:
    """Every number of one tap: what all later rooms read, and nothing else.

    `basic_pitch_diameter` is that of the thread's nominal size, without any allowance [mm].
    """

    name: str
    designation: str
    hole: HoleLimits
    basic_pitch_diameter: float
    drill: float
    thread: TapThread
    chamfer: Chamfer
    flutes: Flutes
    relief: Reliefs
    blank: Blank
    choices: tuple[Choice, ...]
    findings: tuple[Finding, ...]
