"""The tool that cuts the tap's thread on the lathe: its form, and how deep it is fed."""

from functools import partial

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import (
    Angle,
    Chapter,
    Length,
    Paragraphs,
    Row,
    Rows,
    Table,
    Telling,
    Words,
    small_length,
)
from tapmodel.report.units import as_text
from tapmodel.report.words.compound import (
    NEXT_START,
    ON_THE_SLIDE,
    REFERENCE,
    SWING,
    from_bed,
)
from tapmodel.shop.compound import along_compound
from tapmodel.shop.lathe_tool import LatheTool, lathe_tool
from tapmodel.shop.next_start import next_start
from tapmodel.shop.set_over import tailstock_set_over
from tapmodel.tap.tap import Tap, TapThread
from tapmodel.words import Units

INFEED = (
    "The infeed is the way of the slide, half of what comes off the diameter where it goes in "
    "square. It counts from the blank diameter and holds for the nose told. A narrower one goes "
    "deeper, a sharp one by the last column, one half as wide by half of that, and leaves a "
    "sharper and weaker root: set thread.root_flat or thread.root_radius to the nose you have, and "
    "neck, torque and infeed follow. A blank turned larger or smaller than told is fed in by half "
    "of that more or less."
)
"""What the depth is of, without which two tools would cut two pitch diameters with it."""


def chapter(design: TapDesign) -> Chapter:
    """Insert or ground tool; depths from the blank turned to the major diameter."""
    tool = lathe_tool(design.tap.thread)
    rows = [
        Row("included angle", Angle(tool.included_angle)),
        nose_row(tool),
        Row("helix (lead) angle at the target pitch diameter", Angle(tool.helix_pitch)),
        Row(
            f"clearance ground on the {tool.leading_side.value} side, at least",
            Angle(tool.leading_clearance, 1),
        ),
        Row("on the other side, at least", Words(_trailing(tool))),
        *_next_start(design.tap.thread),
        *_set_over(design.tap),
    ]
    notes: list[str | Telling] = [SWING[design.tap.thread.hand]]
    if design.tap.thread.starts > 1:
        notes.append(NEXT_START)
    if design.tap.thread.crest_radius:
        notes.append(partial(_round_crest, design.tap.thread.crest_radius))
    blocks = (Rows(tuple(rows)), _feeds(tool), Paragraphs((INFEED, *notes)))
    return Chapter("tool", "Threading tool", blocks)


def _round_crest(radius: float, units: Units) -> str:
    """How it is formed, and how one sees that it is right; common practice."""
    size = as_text(small_length(radius), units)
    return (
        "The crest is round: form it with a tool ground to it, or with a form file after the last "
        "pass; the nose of a stock full-profile tool is too round for the root. Check it against "
        f"the light with a gauge of radius {size}, and by the diameter over the crests, which "
        "stays that of the blank."
    )


def _next_start(thread: TapThread) -> list[Row]:
    """Both ways from one start to the next; nothing where there is one alone."""
    shift = next_start(thread)
    if shift is None:
        return []
    return [
        Row("to the next start, along the axis", Length(shift.along, 4)),
        Row("or the work turned in the spindle by", Angle(shift.turned)),
    ]


def _set_over(tap: Tap) -> list[Row]:
    """How a back taper is cut between centres: over the whole length, shank and all."""
    if not tap.thread.back_taper:
        return []
    over = small_length(tailstock_set_over(tap))
    return [Row("tailstock set over for the back taper, thinner towards the shank", over)]


def _feeds(tool: LatheTool) -> Table:
    """The feed in all by the setting of the compound, as either kind of slide reads that."""
    lines = tuple(
        (
            Angle(angle, 1),
            Angle(from_bed(angle), 1),
            Length(feed),
            Length(along_compound(tool.sharp_adds, angle)),
        )
        for angle, feed in tool.infeed_at_compound
    )
    head = (f"top slide (compound), {REFERENCE}", ON_THE_SLIDE, "total infeed", "sharp nose adds")
    return Table(head, lines)


def nose_row(tool: LatheTool) -> Row:
    """Radius of the tool's nose, or its flat, which must not be wider."""
    if tool.nose_radius:
        return Row("tool nose, radius at most", small_length(tool.nose_radius))
    return Row("tool nose, flat at most", small_length(tool.nose_flat))


def _trailing(tool: LatheTool) -> str:
    if tool.trailing_clearance <= 0:
        return "none, the helix clears it"
    return f"{tool.trailing_clearance:.1f}°"
