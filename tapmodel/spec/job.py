"""The job file as a model: what a user may ask for, field by field.

Every field but the designation may be left out; a stated rule of the design room then chooses.
Lengths in mm, or as text with their unit ("1/4in"); angles in degrees. Ranges here only keep out
nonsense; whether a tap can be made with the values is judged by the design room's rules.
"""

from collections.abc import Mapping
from functools import cache, partial
from typing import Annotated, Literal, Self, cast, get_args, get_origin

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    ModelWrapValidatorHandler,
    PrivateAttr,
    model_validator,
)
from pydantic.fields import FieldInfo

from tapmodel.file_names import fault
from tapmodel.spec.drill_names import NAME, drill_name, with_inches
from tapmodel.spec.lengths import FORMAT as LENGTH
from tapmodel.spec.lengths import TextBeside, in_millimetres
from tapmodel.spec.listed import entries_of
from tapmodel.spec.materials import as_name
from tapmodel.spec.shop import dials, rotary_tables
from tapmodel.spec.shop.dividing import MOST_RATIO
from tapmodel.spec.shop.hole_circles import CIRCLES, circles_of
from tapmodel.spec.shop.pitches import FORMAT as PITCH
from tapmodel.spec.shop.pitches import LEAST, MOST
from tapmodel.spec.shop.pitches import in_millimetres as pitch_in_millimetres
from tapmodel.spec.shop.tooth_counts import WHEELS, teeth_of
from tapmodel.spec.units import Unit, describe, description, unit_in

Listed = BeforeValidator(entries_of)
Typed, OrText = BeforeValidator(in_millimetres), TextBeside(LENGTH)
Length = Annotated[float, Field(gt=0, le=2000, allow_inf_nan=False), Typed, OrText, Unit.MM]
LengthOrNone = Annotated[float, Field(ge=0, le=2000, allow_inf_nan=False), Typed, OrText, Unit.MM]
Step = Annotated[float, Field(ge=0.0005, le=1, allow_inf_nan=False), Typed, OrText, Unit.MM]
Signed = Annotated[float, Field(ge=-1000, le=1000, allow_inf_nan=False), Typed, OrText, Unit.MM]
Fraction = Annotated[float, Field(ge=0, le=1, allow_inf_nan=False)]
LandShare = Annotated[float, Field(ge=0.05, le=0.95, allow_inf_nan=False), Unit.OF_SPACING]
Engagement = Annotated[float, Field(ge=40, le=100, allow_inf_nan=False), Unit.PERCENT]
Small = BeforeValidator(lambda word: word.lower() if isinstance(word, str) else word)
"""Case does not matter, as in the words of options."""
DrillName = Annotated[str, Field(pattern=NAME), BeforeValidator(drill_name)]
ConeAngle = Annotated[float, Field(gt=0, lt=90, allow_inf_nan=False), Unit.DEGREES]
RakeAngle = Annotated[float, Field(ge=-45, le=45, allow_inf_nan=False), Unit.DEGREES]
MarginAngle = Annotated[float, Field(ge=0, lt=180, allow_inf_nan=False), Unit.DEGREES]
EdgeAngle = Annotated[float, Field(gt=0, le=45, allow_inf_nan=False), Unit.DEGREES]
Pitches = Annotated[float, Field(gt=0, le=100, allow_inf_nan=False), Unit.PITCHES]
Temper = Annotated[float, Field(ge=100, le=700, allow_inf_nan=False), Unit.CELSIUS]
Hardness = Annotated[float, Field(ge=40, le=68, allow_inf_nan=False), Unit.HRC]
BackTaper = Annotated[float, Field(ge=0, le=0.5, allow_inf_nan=False), Unit.IN_100]
Material = Annotated[str, Field(min_length=1, max_length=60), BeforeValidator(as_name)]
TapClass = Annotated[str, Field(min_length=1, max_length=12)]
Kind = Annotated[Literal["concentric", "con-eccentric", "eccentric"], Small]
ChamferForm = Annotated[Literal["taper", "plug", "bottoming"], Small]
Pitch = Annotated[
    float,
    Field(ge=LEAST, le=MOST, allow_inf_nan=False),
    BeforeValidator(pitch_in_millimetres),
    TextBeside(PITCH),
    Unit.MM,
]
HoleCircle = Annotated[int, Field(ge=CIRCLES.fewest, le=CIRCLES.most), TextBeside(CIRCLES.form)]
HoleCircles = Annotated[
    list[HoleCircle],
    Field(min_length=CIRCLES.fewest_entries, max_length=CIRCLES.most_entries),
    BeforeValidator(circles_of),
    TextBeside(CIRCLES.form),
]
Teeth = Annotated[int, Field(ge=WHEELS.fewest, le=WHEELS.most), TextBeside(WHEELS.form)]
Wheels = Annotated[
    list[Teeth],
    Field(min_length=WHEELS.fewest_entries, max_length=WHEELS.most_entries),
    BeforeValidator(teeth_of),
    TextBeside(WHEELS.form),
]


def _dials(form: str) -> tuple[FieldInfo, AfterValidator]:
    """What holds a text to be one of dials, and calls it so in the JSON schema."""
    told = Field(max_length=dials.MOST_LETTERS, json_schema_extra={"format": form})
    return told, AfterValidator(partial(dials.checked, form))


SlideDial = Annotated[str, *_dials(dials.SLIDE)]
CrossSlideDial = Annotated[str, *_dials(dials.CROSS_SLIDE)]
MillDials = Annotated[str, *_dials(dials.MILL)]
RotaryTable = Annotated[
    str,
    Field(max_length=40, json_schema_extra={"format": rotary_tables.FORM}),
    BeforeValidator(rotary_tables.as_text),
    AfterValidator(rotary_tables.checked),
]
OutputUnits = Annotated[
    Literal["mm", "inch", "both"],
    BeforeValidator(lambda word: "inch" if word == "in" else word),
    Small,
]
PaperSize = Annotated[
    Literal["A4", "Letter"],
    BeforeValidator(lambda word: word.capitalize() if isinstance(word, str) else word),
]
ProjectionAngle = Annotated[Literal["first", "third"], Small]
HoleKind = Annotated[Literal["through", "blind"], Small]
ToolSizes = Annotated[
    Literal["metric", "inch"],
    BeforeValidator(lambda word: "inch" if word == "in" else word),
    Small,
]
DrillSet = Annotated[Literal["metric", "fraction", "number", "letter"], Small]


class Group(BaseModel):
    """A table of the job file: frozen, no unknown keys, no silent change of type."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True, json_schema_extra=describe)


class Hole(Group):
    """The hole to be tapped."""

    hole_class: str | None = Field(
        default=None,
        alias="class",
        max_length=12,
        description='tolerance class of the hole, e.g. "6H" or "2B"',
    )
    drill: Annotated[Length | DrillName | None, BeforeValidator(with_inches)] = Field(
        default=None,
        description='drill diameter, or its name such as "5/16", "Z" or "#7"',
    )
    engagement: Engagement | None = Field(
        default=None,
        description="wanted thread, of the basic depth of engagement (60 degrees: 5/8 H)",
    )
    material: Material | None = Field(
        default=None,
        description='what is tapped, by a standard or plain name, e.g. "C45", "1.4301" or "brass"',
    )
    depth: Length | None = Field(default=None, description="depth of the thread to be tapped")
    kind: HoleKind | None = Field(default=None, description='"through" or "blind"')


class Tap(Group):
    """The steel of the tap."""

    material: Material | None = Field(
        default=None, description='steel of the tap, e.g. "W1" or "silver steel"'
    )
    temper: Temper | None = Field(
        default=None, description="at which the tap is tempered; its hardness follows by table"
    )
    hardness: Hardness | None = Field(
        default=None, description="hardness of the teeth when the tap is tempered"
    )


class TapSet(Group):
    """The set that the tap is one of; none of these for a tap that does all the work."""

    number: Annotated[int, Field(ge=1, le=3)] | None = Field(
        default=None, description="which tap of a set it is, 1 for the one that goes first"
    )
    taps: Annotated[int, Field(ge=2, le=3)] | None = Field(
        default=None, description="number of taps in the set"
    )
    before_major: Length | None = Field(
        default=None, description="diameter over the crests, which are flat, of the tap before"
    )
    before_pitch_diameter: Length | None = Field(
        default=None, description="pitch diameter of the tap before"
    )


class Thread(Group):
    """The tap's own thread."""

    tap_class: Annotated[int, Field(ge=1, le=9)] | TapClass | None = Field(
        default=None,
        description='class of the tap: "cut" on a lathe; of ground ones as their standard writes '
        "it: 1, 2 or 3 of ISO 2857",
    )
    aim: Fraction | None = Field(
        default=None,
        description="aimed place of the pitch diameter in its zone, 0 = least, 1 = largest",
    )
    pitch_diameter: Length | None = Field(default=None, description="pitch diameter itself")
    major: Length | None = Field(default=None, description="diameter over the crests")
    crest_flat: Length | None = Field(default=None, description="axial width of the crest")
    crest_radius: Length | None = Field(
        default=None, description="radius of a rounded crest that touches both flanks"
    )
    root_flat: Length | None = Field(
        default=None,
        description="axial width of the root: the nose flat of the threading tool",
    )
    root_radius: Length | None = Field(
        default=None, description="radius of a rounded root: that of the threading tool's nose"
    )
    back_taper: BackTaper | None = Field(
        default=None,
        description="by how much the whole thread gets thinner towards the shank, in diameter, "
        "from where the chamfer ends; 0.05 to 0.1 is usual, 0 for none",
    )


class Chamfer(Group):
    """The lead: two of length, angle and point diameter settle the third."""

    form: ChamferForm | None = Field(default=None, description='"taper", "plug" or "bottoming"')
    pitches: Pitches | None = Field(
        default=None,
        description="length in pitches; with several starts in leads, the turns that cut each",
    )
    length: Length | None = Field(default=None, description="length along the axis")
    angle: ConeAngle | None = Field(default=None, description="angle to the axis")
    point_diameter: Length | None = Field(default=None, description="diameter at the front")


class Flutes(Group):
    """Straight flutes cut by a ball-nose cutter."""

    count: Annotated[int, Field(ge=2, le=12)] | None = Field(
        default=None, description="number of flutes"
    )
    cutter_diameter: Length | None = Field(default=None, description="diameter of the cutter")
    rake: RakeAngle | None = Field(default=None, description="wanted rake at the crest edge")
    offset: Signed | None = Field(
        default=None,
        description="cutter axis beside the tap's axis, + towards the land it edges",
    )
    core_diameter: Length | None = Field(default=None, description="wanted web diameter")
    depth_from_top: Length | None = Field(
        default=None,
        description="depth below the top of the blank, turned to the major diameter",
    )
    land_share: LandShare | None = Field(
        default=None, description="wanted land width as a share of the flute spacing at the crests"
    )
    full_depth_length: Length | None = Field(
        default=None, description="from the front to the centre of the ball where it stops"
    )


class ChamferRelief(Group):
    """Relief of the chamfer."""

    kind: Kind | None = Field(
        default=None, description='"concentric", "con-eccentric" or "eccentric"'
    )
    applies_to: Annotated[Literal["chamfer"], Small] | None = Field(
        default=None, description='"chamfer", nothing else'
    )
    margin_angle: MarginAngle | None = Field(
        default=None, description="behind the edge without drop, con-eccentric only"
    )
    edge_angle: EdgeAngle | None = Field(
        default=None, description="relief angle at the edge, eccentric only"
    )
    heel_drop: Length | None = Field(default=None, description="radial drop at the heel")


class ThreadRelief(Group):
    """Relief behind the chamfer, of the crest alone or of the whole thread profile."""

    kind: Kind | None = Field(
        default=None, description='"concentric", "con-eccentric" or "eccentric"'
    )
    applies_to: Annotated[Literal["crest", "thread"], Small] | None = Field(
        default=None, description='"crest" or "thread"'
    )
    margin_angle: MarginAngle | None = Field(
        default=None, description="behind the edge without drop, con-eccentric only"
    )
    edge_angle: EdgeAngle | None = Field(
        default=None, description="relief angle at the edge, eccentric only"
    )
    heel_drop: Length | None = Field(default=None, description="radial drop at the heel")


class Relief(Group):
    """The two reliefs."""

    thread: ThreadRelief = Field(default_factory=ThreadRelief)
    chamfer: ChamferRelief = Field(default_factory=ChamferRelief)


class Blank(Group):
    """Turned blank and drive square; 0 means none where the range allows it."""

    overall_length: Length | None = Field(default=None, description="front to rear face")
    thread_length: Length | None = Field(default=None, description="thread with its chamfer")
    neck_diameter: LengthOrNone | None = Field(default=None, description="neck, 0 for none")
    neck_length: LengthOrNone | None = Field(default=None, description="neck, 0 for none")
    shoulder_angle: ConeAngle | None = Field(
        default=None, description="cone between neck and shank, to the axis"
    )
    shank_diameter: Length | None = Field(default=None, description="shank")
    square_across_flats: Length | None = Field(default=None, description="drive square")
    square_length: Length | None = Field(default=None, description="drive square")
    square_start: Length | None = Field(default=None, description="z where the square starts")
    rear_chamfer: LengthOrNone | None = Field(default=None, description="45-degree rear edge")
    front_centre: LengthOrNone | None = Field(
        default=None, description="rim of the 60-degree centre in front, 0 for none"
    )
    rear_centre: LengthOrNone | None = Field(
        default=None, description="rim of the 60-degree centre at the rear, 0 for none"
    )
    shank_must_pass: bool | None = Field(
        default=None, description="true when the shank has to pass the tapped hole"
    )


class Shop(Group):
    """What the shop has; a field that stands nowhere is not known of it."""

    file: Annotated[str, Field(min_length=1, max_length=1000)] | None = Field(
        default=None,
        description="file with a [shop] of its own, whose values hold where this one has none; its "
        "path goes by the folder of the job",
    )
    tools: ToolSizes | None = Field(
        default=None,
        description="sizes of blanks, and of drills and cutters that are not listed: "
        '"metric" or "inch"',
    )
    cutters: Annotated[list[Length], Field(min_length=1, max_length=200), Listed] | None = Field(
        default=None, description="diameters of the ball-nose cutters on hand"
    )
    drills: Annotated[list[DrillSet], Field(min_length=1, max_length=4), Listed] | None = Field(
        default=None,
        description='sets of drills on hand: "metric", "fraction", "number", "letter"',
    )
    wires: Annotated[list[Length], Field(min_length=1, max_length=200), Listed] | None = Field(
        default=None, description="diameters of the measuring wires on hand"
    )
    plates: HoleCircles | None = Field(
        default=None,
        description="holes of each circle on the plates of the dividing head, such as "
        '"15-20,21,23"',
    )
    dividing_ratio: Annotated[int, Field(ge=1, le=MOST_RATIO)] | None = Field(
        default=None, description="turns of the dividing head's crank for one of its spindle"
    )
    leadscrew: Pitch | None = Field(
        default=None, description='pitch of the lathe\'s leadscrew, such as 4 or "8tpi"'
    )
    gears: Wheels | None = Field(
        default=None,
        description="teeth of each change wheel of the lathe, one that is there twice named twice",
    )
    cross_slide: CrossSlideDial | None = Field(
        default=None,
        description="dial of the lathe's cross slide: a division and a turn as it reads, and "
        'whether that is of the diameter, such as "0.02mm, 4mm a turn, on diameter"',
    )
    top_slide: SlideDial | None = Field(
        default=None,
        description='dial of its top slide (compound), likewise, such as "0.001in, 100 divisions"',
    )
    mill: MillDials | None = Field(
        default=None,
        description="dials of the mill, one for all axes or others behind their names, such as "
        '"0.02mm, 4mm a turn; down 0.02mm, 2mm a turn"',
    )
    rotary_table: RotaryTable | None = Field(
        default=None,
        description="turns of a rotary table's handle for one of the table, and what a division "
        'of its dial counts where it has one, such as "90, 2min"',
    )
    relief_by: Literal["centres", "wheel", "file"] | None = Field(
        default=None,
        description='how reliefs are made: ground on offset "centres", by a "wheel" past a tooth '
        'rest, or by "file"',
    )
    wheels: Annotated[list[Length], Field(min_length=1, max_length=50), Listed] | None = Field(
        default=None, description="diameters of the grinding wheels and points for reliefs"
    )
    offset_step: Step | None = Field(
        default=None, description="graduation of the eccentric holder or of the offset centres"
    )
    indicator_step: Step | None = Field(
        default=None,
        description="division of the indicator and of the feed that reliefs are set by",
    )
    furnace: Annotated[float, Field(ge=100, le=1500, allow_inf_nan=False), Unit.CELSIUS] | None = (
        Field(default=None, description="highest temperature of the hardening furnace")
    )
    steels: Annotated[list[Material], Field(min_length=1, max_length=50), Listed] | None = Field(
        default=None, description='steels for taps in stock, e.g. "O1" or "silver steel"'
    )
    mill_control: Literal["manual", "cnc"] | None = Field(
        default=None, description='the mill: "manual", or "cnc" for one that reads programs'
    )
    index: Literal["axis", "by hand"] | None = Field(
        default=None,
        description='how the mill turns the work: "axis", its own, or "by hand" in a dividing head',
    )
    rate: Annotated[float, Field(ge=0, le=1e6, allow_inf_nan=False)] | None = Field(
        default=None, description="what an hour in the shop costs, in any currency"
    )


class Report(Group):
    """How the papers look to their reader, beside their units."""

    paper: PaperSize | None = Field(
        default=None, description='size of sheet and route: "A4" or "Letter"'
    )
    projection: ProjectionAngle | None = Field(
        default=None, description='how the views of a drawing stand: "first" or "third" angle'
    )


def _for_every_system(name: str) -> str:
    why = fault(name)
    if why:
        raise ValueError(why)
    return name


class Job(Group):
    """One tap to be designed."""

    designation: str = Field(
        max_length=80,
        description='thread of the hole, e.g. "M18x0.75", "7/16-26 UNS-2B" or "Tr14x3 LH"',
    )
    name: Annotated[str, AfterValidator(_for_every_system)] | None = Field(
        None,
        pattern=r"^[A-Za-z0-9]([A-Za-z0-9 ._-]{0,61}[A-Za-z0-9_-])?$",
        description="name of files and part: letters, digits, dot, dash, underscore, blank, "
        "no dot or blank at the end, and no device of Windows such as CON, NUL or COM1",
    )
    units: OutputUnits | None = Field(
        default=None,
        description="units of sheet, page, drawings and tables; numbers of the job stay mm: "
        '"mm", "inch" or "both"',
    )
    hole: Hole = Field(default_factory=Hole)
    tap: Tap = Field(default_factory=Tap)
    tap_set: TapSet = Field(default_factory=TapSet, alias="set")
    thread: Thread = Field(default_factory=Thread)
    chamfer: Chamfer = Field(default_factory=Chamfer)
    flutes: Flutes = Field(default_factory=Flutes)
    relief: Relief = Field(default_factory=Relief)
    blank: Blank = Field(default_factory=Blank)
    shop: Shop = Field(default_factory=Shop)
    report: Report = Field(default_factory=Report)

    _texts: dict[str, object] = PrivateAttr(default_factory=dict[str, object])

    @model_validator(mode="wrap")
    @classmethod
    def _keep_texts(cls, table: object, handler: ModelWrapValidatorHandler[Self]) -> Self:
        job = handler(table)
        if isinstance(table, Mapping):
            given = _flat(cast("dict[str, object]", table), "")
            texts = {name: value for name, value in given.items() if _is_text(name, value)}
            job._texts = texts  # noqa: SLF001  (its own)
        return job

    def table(self) -> dict[str, object]:
        """Every value that the user gave, in tables as in the file."""
        return self.model_dump(by_alias=True, exclude_none=True)

    def given(self) -> dict[str, object]:
        """The same by dotted name."""
        return _flat(self.table(), "")

    def typed(self) -> dict[str, object]:
        """The same, numbers that were typed as text as they were typed: "1/4in", ["15-20", 23]."""
        return self.given() | self._texts


def _flat(table: dict[str, object], prefix: str) -> dict[str, object]:
    found: dict[str, object] = {}
    for key, value in table.items():
        if isinstance(value, dict):
            found |= _flat(value, f"{prefix}{key}.")  # pyright: ignore[reportUnknownArgumentType]
        else:
            found[prefix + key] = value
    return found


DESCRIBED = frozenset({"shop.cross_slide", "shop.top_slide", "shop.mill", "shop.rotary_table"})
"""Fields that are a description in words and numbers, with commas in it."""

_COUNTED = {"shop.plates", "shop.gears"}
"""Lists of whole numbers that may be typed as ranges."""


def _is_text(name: str, value: object) -> bool:
    """Whether a value was typed as text, or a list with such entries, where numbers belong."""
    entries = cast("list[object]", value) if isinstance(value, list) else [value]
    numbers = unit_of(name) is Unit.MM or name in _COUNTED
    return numbers and any(isinstance(entry, str) for entry in entries)


@cache
def job_fields() -> dict[str, FieldInfo]:
    """Every field that a job file may hold, by dotted name, in the order of the file."""
    return _fields(Job, "")


def _fields(model: type[BaseModel], prefix: str) -> dict[str, FieldInfo]:
    found: dict[str, FieldInfo] = {}
    for name, field in model.model_fields.items():
        full = prefix + (field.alias or name)
        kind = field.annotation
        if isinstance(kind, type) and issubclass(kind, BaseModel):
            found |= _fields(kind, full + ".")
        else:
            found[full] = field
    return found


def is_list(field: FieldInfo) -> bool:
    """Whether a field holds several values."""
    return _holds_list(field.annotation)


def _holds_list(kind: object) -> bool:
    return get_origin(kind) is list or any(_holds_list(part) for part in get_args(kind))


def field_descriptions() -> dict[str, str]:
    """What each field of a job file means, by dotted name, in the order of the file."""
    return {name: description(field) for name, field in job_fields().items()}


@cache
def unit_of(field: str) -> Unit:
    """Unit of a field of the job, by its dotted name; `Unit.NONE` of a plain number or a word."""
    return unit_in(job_fields()[field])


def field_names() -> tuple[str, ...]:
    """Dotted names of all fields that a job file may hold."""
    return tuple(job_fields())
