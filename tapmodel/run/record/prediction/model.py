"""What the record says of the tap in the hole.

Every torque is a model's, with its band: see `tapmodel.prediction`.
"""

from pydantic import Field

from tapmodel.run.record.base import (
    CubicMillimetres,
    Micrometres,
    Millimetres,
    NewtonMetres,
    Part,
    SquareMillimetres,
)


class Tooth(Part):
    """A tooth that takes a chip."""

    land: int
    turn: int = Field(description="Of the thread on its land, from 0; -1 for a rear flank alone.")
    area: SquareMillimetres
    thickness: Millimetres


class Chips(Part):
    """Chips of all teeth, in the order in which they meet the work."""

    count: int
    area_sum: SquareMillimetres
    area_expected: SquareMillimetres = Field(
        description="Section of the finished threads above the drilled hole."
    )
    thickness_min: Millimetres
    thickness_max: Millimetres
    room: float | None = Field(
        description="Room in the flutes over what full thread fills of it; none where nothing is "
        "cut."
    )
    room_depth: Millimetres = Field(description="Length of thread whose chips the flutes hold.")
    teeth: list[Tooth]


class Moment(Part):
    """The band of the torque at a depth of the tap's front."""

    depth: Millimetres
    low: NewtonMetres
    high: NewtonMetres


class Torque(Part):
    """What the tap takes."""

    cutting_max: NewtonMetres = Field(description="Tooth by tooth, without friction.")
    friction: NewtonMetres = Field(description="Of lands that rub, likely.")
    low: NewtonMetres
    likely: NewtonMetres
    high: NewtonMetres
    axial_force: float = Field(
        description="To press the tap in until it bites.", json_schema_extra={"unit": "N"}
    )
    formula_a: NewtonMetres | None
    formula_b: NewtonMetres | None
    along: list[Moment] = Field(description="On the way in.")
    back: list[Moment] = Field(description="On the way back.")


class Section(Part):
    """A section in torsion."""

    what: str = Field(description="root, run-out, neck, shank or square.")
    z: Millimetres
    J: float = Field(json_schema_extra={"unit": "mm⁴"})
    modulus: CubicMillimetres = Field(description="Torque over peak shear.")


class Strength(Part):
    """What the tap bears."""

    steel: str
    steel_hardness: float = Field(json_schema_extra={"unit": "HRC"})
    sections: list[Section]
    notch: float = Field(description="Factor of the thread's root.")
    yields: NewtonMetres = Field(alias="yield", description="Where it first yields, least.")
    fracture: NewtonMetres = Field(description="Where it breaks, least.")
    fracture_high: NewtonMetres = Field(description="Where it breaks, most.")
    governs: str = Field(description="Where it breaks first.")
    margin: float | None = Field(
        description="Safety factor, what it bears over the most; none where it cuts nothing."
    )
    bears: NewtonMetres | None = Field(None, description="With a reserve; since version 5.")
    stop_at: NewtonMetres = Field(
        description="What it bears, or twice the greatest torque, which tells of a fault."
    )
    wrench_length: Millimetres = Field(description="Overall, at which two hands give stop_at.")


class Contact(Part):
    """One surface behind the edge."""

    clearance_min_um: Micrometres = Field(description="Least; negative where it stands proud.")
    rubbing_length: Millimetres
    binds: bool
    cure: dict[str, float] = Field(description="Fields of the job with the value that clears it.")


class Rubbing(Part):
    """All three surfaces behind the edge."""

    crest: Contact
    flank: Contact
    chamfer: Contact
    flank_clears_each_turn_um: float | None = Field(
        None,
        description="Square to the flanks, what a back taper gives each turn behind the chamfer "
        "[µm]; left out where there is none; since version 5.",
    )
    flank_clears_at_end_um: float | None = Field(
        None, description="The same where the thread ends [µm]; since version 5."
    )


class Gauge(Part):
    """The thread that the tap leaves."""

    go: bool
    no_go: bool = Field(description="Whether that gauge stays out.")
    oversize: Millimetres
    wear_left: Millimetres = Field(
        description="In pitch diameter, from that of the hole that a sharp tap leaves, which is "
        "`oversize` larger than the tap, until GO enters no more."
    )
    sharpenings_face: int
    sharpenings_chamfer: int


class Set(Part):
    """Whether the work is to be shared."""

    needed: bool
    reason: str
    taps: int


class Prediction(Part):
    """What the tap will do in the hole."""

    material: str
    material_assumed: bool
    hardness: float = Field(
        description="Of the material that is tapped.", json_schema_extra={"unit": "HB"}
    )
    chips: Chips
    torque: Torque
    strength: Strength
    rubbing: Rubbing
    gauge: Gauge
    set_: Set = Field(alias="set")
