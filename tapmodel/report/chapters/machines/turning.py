"""The blank as it comes from the lathe, before the thread is cut."""

from functools import partial

from tapmodel.designing.choose.tools import tools_of
from tapmodel.designing.record import TapDesign
from tapmodel.prediction.part import Part
from tapmodel.prediction.sets import RINGS
from tapmodel.report.blocks import (
    Angle,
    Block,
    Chapter,
    Length,
    Paragraphs,
    Row,
    Rows,
    Told,
)
from tapmodel.report.chapters.general_limits import HARDENING, HOW, general_row, shank_row
from tapmodel.report.chapters.tap.thread import crest_limits
from tapmodel.report.units import range_in_words
from tapmodel.shape.back_taper import thread_at_end
from tapmodel.shape.turned import cone_length
from tapmodel.shop.male_point import ANGLE, male_point
from tapmodel.spec.measured.sizes import Size
from tapmodel.standards.centre_drills import SOURCES, centre_drill, drilled
from tapmodel.tap.tap import Blank, Tap
from tapmodel.words import ToolSizes, Units

_HELD = (
    "No centre in front: turn a stub with a male point there and run it in a hollow centre. It is "
    "thinner than the core, so that the flutes' cutter passes over it, and so long that the ball "
    "starts clear of the hollow centre. Part it off or grind it away last of all. Lengths count "
    "from the shoulder behind it, which is the finished front face."
)
"""How the front is held without a centre; common practice."""


_LIMITS = Paragraphs((HOW, HARDENING))


def chapter(design: TapDesign) -> Chapter:
    """Turned diameters and lengths, which count from the front end."""
    rows = (
        length_row(design),
        *body_rows(design),
        *neck_rows(design.tap.blank),
        *shank_rows(design),
        *centre_rows(design),
    )
    return Chapter(
        "turning",
        "Turn the blank",
        (Rows(rows), *marks(design.part), *male_point_blocks(design.tap), _LIMITS),
    )


def length_row(design: TapDesign) -> Row:
    """From the front face to the rear one."""
    return shank_row(
        "overall length", design.tap.blank.overall_length, "it16", 2, of=Size.OVERALL_LENGTH
    )


def body_rows(design: TapDesign) -> tuple[Row, ...]:
    """The part that the thread is cut on."""
    crest = Length(design.tap.thread.major), *crest_limits(design)
    return (
        Row("blank diameter, thread part", *crest, True, Size.MAJOR),
        *_narrower(design.tap),
        general_row(
            "end of the thread, from the front",
            design.tap.blank.thread_length,
            of=Size.THREAD_LENGTH,
        ),
    )


def shank_rows(design: TapDesign) -> tuple[Row, ...]:
    """The shank, and its edge at the rear."""
    blank = design.tap.blank
    return (
        shank_row("shank diameter", blank.shank_diameter, "it9", of=Size.SHANK),
        Row("chamfer on the rear edge, 45°", Length(blank.rear_chamfer, 2)),
    )


def centre_rows(design: TapDesign) -> tuple[Row, ...]:
    """The centres that the tap has, and their drills."""
    blank = design.tap.blank
    rims = ("front", blank.front_centre), ("rear", blank.rear_centre)
    return tuple(
        row for where, rim in rims if rim > 0 for row in _centre(where, rim, tools_of(design))
    )


def _centre(where: str, rim: float, tools: ToolSizes) -> tuple[Row, Row]:
    """A centre and what it is drilled with; the model has its cone alone, without the pilot's hole.

    Args:
        where: front or rear.
        rim: its diameter on the face [mm].
        tools: sizes that the shop buys.
    """
    source = SOURCES[tools]
    return (
        Row(f"{where} centre 60°, rim diameter", Length(rim, 2)),
        Row(
            f"{where} centre drill, {source.document} ({source.certainty.value})",
            Told(partial(_drill, rim, tools)),
        ),
    )


def _drill(rim: float, tools: ToolSizes, units: Units) -> str:
    """The drill of a rim [mm], and how deep it goes, by its pilot, until the rim is so wide."""
    drill = centre_drill(rim, tools)
    if drill is None:
        return "none has this size: turn the cone"
    # A hundredth of an inch is more than a small drill is free in.
    deep = range_in_words(*drilled(drill, rim), ".1f" if units is Units.MM else ".2f", units)
    return f"{drill.name}, tip {deep} deep"


def _narrower(tap: Tap) -> list[Row]:
    """Where the thread part has which diameter, if a back taper lets it have more than one."""
    if not tap.thread.back_taper:
        return []
    return [
        Row("where it is so thick, from the front", Length(tap.chamfer_length)),
        Row("its diameter where the thread ends", Length(thread_at_end(tap).major)),
    ]


def marks(part: Part | None) -> list[Block]:
    """How a tap of a set is told from the others."""
    if part is None:
        return []
    rings = RINGS[part.taps][part.number - 1]
    marked = _RINGS[rings] if rings else "none, as the last of its set"
    return [Paragraphs((f"Tap {part.number} of a set of {part.taps}. Mark: {marked}.",))]


_RINGS = {
    1: "one ring round the shank, below the square",
    2: "two rings round the shank, below the square",
}


def male_point_blocks(tap: Tap) -> list[Block]:
    """What holds the front where it has no centre."""
    point = male_point(tap)
    if point is None:
        return []
    rows = (
        Row("stub in front of the front face, diameter at most", Length(point.diameter, 2)),
        Row("its length, at least", Length(point.stub, 2)),
        Row(f"male point {ANGLE:g}° on its end, as long as", Length(point.cone, 2)),
    )
    return [Paragraphs((_HELD,)), Rows(rows)]


def neck_rows(blank: Blank) -> list[Row]:
    """Nothing without a neck: there the thread ends in a plane, straight on the shank."""
    if not blank.has_neck:
        return []
    end = blank.thread_length + blank.neck_length
    rows = [
        shank_row("neck diameter", blank.neck_diameter, "it12", of=Size.NECK),
        general_row("end of the neck, from the front", end),
    ]
    if cone_length(blank) > 0:
        way = "up" if blank.shank_diameter > blank.neck_diameter else "down"
        rows.append(Row(f"cone {way} to the shank, to the axis", Angle(blank.shoulder_angle)))
    return rows
