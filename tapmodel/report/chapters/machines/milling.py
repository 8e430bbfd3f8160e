"""Setting up the mill for the flutes: dial readings from touching off."""

import math
from dataclasses import replace
from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Block, Chapter, Length, Paragraphs, Row, Rows, Table, Words
from tapmodel.report.chapters.general_limits import core_row
from tapmodel.report.tools import cutter_of
from tapmodel.report.units import in_words
from tapmodel.report.words.dials import ONE_WAY, division_text, read_text
from tapmodel.shape.flute_section import rake, section_of
from tapmodel.shop.flute_setting import FluteSetting, flute_setting
from tapmodel.spec.shop.dials import MillDials, mill_dials
from tapmodel.words import Units


def chapter(design: TapDesign) -> Chapter:
    """Cutter, offset, depth and stop, and which way the offset goes."""
    flutes, setting = design.tap.flutes, flute_setting(design)
    blocks = (
        Paragraphs((_standing(design),)),
        Rows(
            (
                Row(
                    "cutter, ball-nose, diameter",
                    cutter_of(flutes.cutter_diameter),
                    measured=True,
                ),
                axis_row(setting, measured=True),
                core_row("core (web) left between the flutes", flutes.core_diameter),
                Row("full depth ends, from the front", Length(flutes.full_depth_length, 2)),
                Row(
                    "run-out ends, from the front",
                    Length(design.figures.runout_end, 2),
                    measured=True,
                ),
            )
        ),
        Rows(
            _readings(setting, _touched(design)),
            "Dial readings from touching a crest of the thread, behind the chamfer",
        ),
        *_on_dials(design, setting),
        Paragraphs((partial(_off, design), STEPS)),
    )
    return Chapter("milling", "Mill the flutes", blocks)


def dials_of(design: TapDesign) -> MillDials | None:
    """Dials of the shop's mill, where it names them."""
    named = design.text("shop.mill")
    return None if named is None else mill_dials(named)


def _on_dials(design: TapDesign, setting: FluteSetting) -> tuple[Block, ...]:
    """The same readings in turns and divisions; nothing where no dial is known."""
    dials = dials_of(design)
    if dials is None:
        return ()
    at_offset = [("down, at the offset", dials.down, setting.from_offset_top)]
    ways = [
        ("sideways from the left side", dials.sideways, setting.from_left),
        ("sideways from the right side", dials.sideways, setting.from_right),
        ("down, over the axis", dials.down, setting.from_top),
        *(at_offset if setting.side else []),
        ("along from the front", dials.along, setting.from_front),
    ]
    lines = tuple(
        (Words(way), Words(read_text(dial, length)), Words(division_text(dial)))
        for way, dial, length in ways
        if dial
    )
    head = ("from zero where it touched", "turns + divisions", "of")
    return Table(head, lines), Paragraphs((ONE_WAY,))


STEPS = (
    "These are the readings of the last pass: take the depth in steps, a tenth of the cutter's "
    "diameter each to begin with (common practice), and lift it out at the end of each."
)

_STEP = {Units.MM: 0.1, Units.INCH: 0.127, Units.BOTH: 0.1}
"""What a cutter is taken to stand wrong by: 0.1 mm, or five thousandths of an inch [mm]."""


def _off(design: TapDesign, units: Units) -> str:
    """What it changes when the cutter stands a little further out, or deeper."""
    step, crest = _STEP[units], design.tap.thread.major / 2
    section = section_of(design.tap.flutes)
    out = math.copysign(step, section.offset or 1.0)
    told = [
        f"{rake(moved, crest) - rake(section, crest):+.1f}°"
        for moved in (
            replace(section, offset=section.offset + out),
            replace(section, centre_radius=section.centre_radius - step),
        )
    ]
    size = in_words(step, ".4g", units)
    return (
        f"So much the place of the cutter counts: {size} further from the centre line changes the "
        f"rake at the crest by {told[0]}, {size} deeper by {told[1]} and takes twice as much off "
        "the core."
    )


def _standing(design: TapDesign) -> str:
    return (
        "Look at the cutting end, flute on top, cutter upright. "
        f"The cutting face is the {_face_side(design)} wall of the flute."
    )


def _face_side(design: TapDesign) -> str:
    return "right" if design.tap.thread.hand.value == "right" else "left"


def axis_row(setting: FluteSetting, *, measured: bool = False) -> Row:
    """Where the cutter stands, seen on the cutting end."""
    if not setting.side:
        return Row("cutter axis", Words("over the tap's axis"), measured=measured)
    label = f"cutter axis {setting.side} of the centre line"
    return Row(label, Length(setting.offset), measured=measured)


def _touched(design: TapDesign) -> str:
    """What is touched in front: a male point stands before the front face."""
    return "the front face" if design.tap.blank.front_centre > 0 else "the front shoulder"


def _readings(setting: FluteSetting, front: str) -> tuple[Row, ...]:
    side = f" (axis then {setting.side} of centre)" if setting.side else ""
    rows = [
        Row(
            f"sideways from touching the left side{side}", Length(setting.from_left), measured=True
        ),
        Row(f"sideways from touching the right side{side}", Length(setting.from_right)),
        Row("down from the top, touched over the axis", Length(setting.from_top), measured=True),
    ]
    if setting.side:
        label = "down, touched with the cutter at its offset"
        rows.append(Row(label, Length(setting.from_offset_top)))
    if setting.from_shank:
        more = "more" if setting.from_shank > 0 else "less"
        label = f"touched on the shank: sideways, and over the axis, {more} by"
        rows.append(Row(label, Length(abs(setting.from_shank))))
    rows.append(Row(f"along from touching {front}", Length(setting.from_front), measured=True))
    return tuple(rows)
