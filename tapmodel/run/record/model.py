"""The record as a model of its own: every key that a file may hold, with its unit and meaning.

Keys are only ever added, and each addition raises the version; a file of an earlier version is read
by the same model, in which what came later may be missing.
"""

from typing import Literal

from pydantic import Field

from tapmodel.run.record.base import (
    CubicMillimetres,
    Degrees,
    Micrometres,
    Millimetres,
    NewtonMetres,
    Number,
    Part,
    SquareMillimetres,
)
from tapmodel.run.record.prediction.model import Prediction

SCHEMA = "tapmodel.record/5"
READABLE = (
    "tapmodel.record/1",
    "tapmodel.record/2",
    "tapmodel.record/3",
    "tapmodel.record/4",
    SCHEMA,
)


class Hole(Part):
    """Limits of the thread that the tap is to cut."""

    major_min: Millimetres
    pitch_min: Millimetres
    pitch_max: Millimetres
    minor_min: Millimetres
    minor_max: Millimetres


class Thread(Part):
    """Axial profile of the tap at the cutting edge, its limits, and where its helix lies."""

    pitch: Millimetres
    lead: Millimetres
    starts: int
    hand: Literal["right", "left"]
    flank_angle: Degrees = Field(description="Between flank and the plane square to the axis.")
    tap_class: str = Field(description="Of the limits, with the standard that defines it.")
    major: Millimetres = Field(description="Diameter over the crests, as aimed at.")
    major_min: Millimetres
    major_max: Millimetres | None = Field(
        None, description="To which the blank is turned at the most; since version 5."
    )
    pitch_diameter: Millimetres = Field(description="As aimed at.")
    pitch_min: Millimetres
    pitch_max: Millimetres
    minor: Millimetres = Field(description="Diameter at the bottom of the root.")
    crest_flat: Millimetres = Field(description="Axial width, 0 where the crest is rounded.")
    root_flat: Millimetres
    crest_radius: Millimetres = Field(
        description="Of the arc that touches both flanks, 0 for a flat."
    )
    root_radius: Millimetres
    first_z: Millimetres = Field(description="Height at angle 0 of the middle of a crest.")
    rounded_crest: bool | None = Field(
        None, description="Whether the crest is an arc; since version 2."
    )
    rounded_root: bool | None = Field(None, description="Likewise the root; since version 2.")
    back_taper: float | None = Field(
        None,
        description="Loss of all three diameters towards the square [mm in 100 mm], from where the "
        "chamfer ends; left out where there is none; since version 5.",
    )


class Chamfer(Part):
    """The lead of the tap: a cone."""

    angle: Degrees = Field(description="Half cone angle, to the axis.")
    length: Millimetres
    pitches: float
    point_diameter: Millimetres
    teeth: int = Field(description="Number of teeth that cut in the chamfer, all lands together.")
    chip_thickness: Millimetres = Field(
        description="Uncut chip thickness of one tooth, square to the cone."
    )


class Flutes(Part):
    """Straight flutes left by a ball-nose cutter whose axis stands radially."""

    count: int
    cutter_diameter: Millimetres
    offset: Millimetres
    centre_radius: Millimetres
    depth_from_top: Millimetres = Field(
        description="Setting of the mill below the top of a blank turned to the major diameter."
    )
    core_diameter: Millimetres
    rake_crest: Degrees
    rake_pitch: Degrees
    rake_root: Degrees
    chordal_hook: Degrees
    land_angle: Degrees
    land_width: Millimetres
    area: SquareMillimetres = Field(description="Of one flute inside the major circle.")
    angles: list[Degrees] = Field(description="Direction of each cutter axis.")
    full_depth_length: Millimetres = Field(
        description="From the front to the centre of the ball where it stops."
    )
    runout_end: Millimetres = Field(description="Height of the first sound shank.")


class Relief(Part):
    """Radial drop behind the edge, ground on an arc about an offset centre."""

    kind: Literal["concentric", "con-eccentric", "eccentric"]
    applies_to: Literal["chamfer", "crest", "thread"]
    margin_angle: Degrees = Field(description="Behind the edge without drop.")
    edge_angle: Degrees = Field(description="Relief angle at the edge.")
    heel_drop: Millimetres
    arc_radius: Millimetres
    arc_offset: Millimetres = Field(description="Of the arc's centre from the axis of the tap.")
    arc_direction: Degrees = Field(
        description="Of that centre, from the crest edge of the land in the sense of phi."
    )


class Reliefs(Part):
    """Both reliefs."""

    thread: Relief
    chamfer: Relief


class Blank(Part):
    """Turned blank behind the thread, and the drive square; heights from the front."""

    overall_length: Millimetres
    thread_length: Millimetres
    neck_diameter: Millimetres = Field(description="0 for no neck, as its length.")
    neck_length: Millimetres
    shoulder_angle: Degrees = Field(description="In force only behind a neck.")
    shank_diameter: Millimetres
    square_across_flats: Millimetres
    square_length: Millimetres
    square_start: Millimetres
    rear_chamfer: Millimetres
    front_centre: Millimetres = Field(description="Rim of a 60-degree centre, 0 for none.")
    rear_centre: Millimetres
    full_thread_depth: Millimetres | None = Field(
        None, description="How deep in the hole the thread can be full at most; since version 3."
    )


class RunnerUp(Part):
    """The best of the values next to the one chosen, and the tap as it would be with it."""

    value: float | str
    what: str = Field(description="The difference in words.")
    torque: NewtonMetres = Field(description="Likely.")
    bears: NewtonMetres
    rubbing_width: Millimetres = Field(description="Of a land whose flanks have no clearance.")
    chip_thickness: Millimetres = Field(description="Of a tooth in the chamfer.")
    raised: list[str] = Field(description="Codes of what would be found against it.")


class Choice(Part):
    """One value that was settled, and why."""

    field: str = Field(description="Dotted name as in the job file.")
    value: str = Field(description="With its unit, as it is printed.")
    given: bool = Field(description="Whether the user gave it.")
    why: str
    source: str
    number: Number = Field(None, description="The value itself; since version 2.")
    unit: str = Field("", description="Since version 2.")
    runner_up: RunnerUp | None = Field(None, description="Since version 5.")


class Setting(Part):
    """A value of the job that helps to mend a finding."""

    field: str
    bound: str = Field(
        description='Which values beyond it are meant too: "at most", "at least", or "to" for none.'
    )
    value: float | str
    unit: str
    digits: int
    replaces: list[str] = Field(
        description="Fields given in the job that it contradicts, and that must go."
    )
    at_hand: bool = Field(
        True,
        description="False for a tool that is not among those that the job lists; since version 5.",
    )


class Cure(Part):
    """Values that together mend a finding; tried on the design."""

    settings: list[Setting]
    worsens: list[str] = Field(
        default_factory=list,
        description="Codes of findings that appear or get graver with them; since version 5.",
    )
    leaves: list[str] = Field(
        default_factory=list,
        description="Codes of notes that stay of the finding with them; since version 5.",
    )


class Finding(Part):
    """What a rule found."""

    code: str
    severity: Literal["error", "warning", "note"]
    what: str
    expected: str
    actual: str
    allowed: str
    source: str
    no_solid: str = Field(description='Why no solid can be made; "" where one can.')
    cures: list[Cure]
    field: str = Field(
        "",
        description="What is judged, as in the job file; since version 2, like all that follows.",
    )
    value: float | str | None = None
    low: float | None = None
    high: float | None = None
    unit: str = ""


class Station(Part):
    """One section of the model."""

    z: Millimetres
    what: str
    area: SquareMillimetres
    area_expected: SquareMillimetres


class Model(Part):
    """What was measured on the solid."""

    volume: CubicMillimetres
    volume_expected: CubicMillimetres
    volume_relative_error: float
    stations: list[Station]
    deviation_um_max: Micrometres = Field(
        description="How far points of the faces lie from the ideal solid."
    )
    deviation_um_by_surface: dict[str, Micrometres]
    deviation_points: int
    ideal_um_max: Micrometres = Field(
        description="How far points of the ideal solid lie from the faces."
    )
    ideal_um_by_feature: dict[str, Micrometres]
    ideal_points: int
    solids: int
    faces: int
    sliver_faces: int
    valid: bool
    genus: int
    unmeasured: list[str]
    moved_mm: dict[str, Millimetres] = Field(
        description="Lengths moved by nanometres to part surfaces that would only touch."
    )
    self_intersecting: bool
    simplifications: list[str] = Field(description="What the model leaves out of a real tap.")


class Mesh(Part):
    """What was measured on the mesh."""

    triangles: int
    watertight: bool
    volume: CubicMillimetres
    genus: int
    chord_mm: Millimetres


class File(Part):
    """One file of the folder."""

    path: str
    bytes: int
    sha256: str


class Record(Part):
    """One tap as numbers, and what was made of it.

    Lengths in mm, angles in degrees, areas in mm², volumes in mm³, unless the key says otherwise.
    """

    schema_: Literal[
        "tapmodel.record/1",
        "tapmodel.record/2",
        "tapmodel.record/3",
        "tapmodel.record/4",
        "tapmodel.record/5",
    ] = Field(alias="schema")
    version: str = Field("", description="Of the program that wrote it; since version 2.")
    name: str
    designation: str
    hole: Hole
    basic_pitch_diameter: Millimetres
    drill: Millimetres
    thread: Thread
    chamfer: Chamfer
    flutes: Flutes
    relief: Reliefs
    blank: Blank
    choices: list[Choice]
    findings: list[Finding]
    prediction: Prediction | None = Field(
        None,
        description="What the tap will do in the hole; none where it breaks a rule of its "
        "geometry; since version 4.",
    )
    preview: str = Field("", description="Said of what is not verified.")
    model: Model | None = None
    mesh: Mesh | None = None
    made: str | None = Field(None, description="Time stamp, fixed by SOURCE_DATE_EPOCH.")
    left_out: list[str] = Field([], description="What could not be made, and why.")
    files: list[File] = Field([])
