"""The internal thread that the tap is to cut, and its drill."""

from tapmodel.designing.choose.drill import percentage_left
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Length, Paragraphs, Row, Rows, Words, hole_depth
from tapmodel.report.chapters.tap import roughed_hole
from tapmodel.report.tools import drill_of


def chapter(design: TapDesign) -> Chapter:
    """Limits of the hole; the drill, and how much of the thread it leaves, down to which depth.

    A tap that another of its set follows leaves its own thread there: the hole's limits are those
    of the finished one.
    """
    hole = design.hole
    minor, how = (Length(hole.minor_min), Length(hole.minor_max)), "drilled"
    drill = Row("tap drill", drill_of(design.drill), measured=True)
    if design.bored:
        drill, how = Row("bore or ream to", Length(design.drill), *minor, measured=True), "bored"
    made = Row(f"minor diameter, as {how}", Length(design.drill), *minor, measured=True)
    reach = (
        Row("deepest full thread that the tap reaches", hole_depth(design.full_thread_depth)),
        *_bottom(design),
    )
    notes = () if design.bored else (Paragraphs((DRILL_CUTS_LARGE,)),)
    if design.part is not None and design.roughs:
        told = roughed_hole.blocks(design, design.part, (drill, made), reach)
        return Chapter("hole", "Hole", (*told, *notes))
    rows = (
        drill,
        Row("major diameter", Words("–"), low=Length(hole.major_min)),
        Row("pitch diameter", Words("–"), Length(hole.pitch_min), Length(hole.pitch_max)),
        made,
        *_percentages(design),
        *reach,
    )
    return Chapter("hole", "Hole", (Rows(rows), *notes))


DRILL_CUTS_LARGE = (
    "A drill cuts larger than it is, a few hundredths of a millimetre (a thousandth or two of an "
    "inch) when ground well, more when not: try it in scrap, and take the next smaller and a "
    "reamer where the hole passes its limit (common practice)."
)


def _bottom(design: TapDesign) -> list[Row]:
    """How deep a blind hole must be for full thread down to the depth wanted: the lead goes on."""
    if not design.work.blind:
        return []
    return [
        Row("full thread wanted, depth", hole_depth(design.work.depth)),
        drilled_depth_row(design),
        stop_depth_row(design),
        Row("unfinished thread below, the tap's chamfer", hole_depth(design.tap.chamfer_length)),
    ]


def drilled_depth_row(design: TapDesign) -> Row:
    """How deep a blind hole is drilled at least, its cone beyond that."""
    depth = hole_depth(design.hole_depth)
    return Row("hole, depth of its full diameter", depth, depth, measured=True)


def stop_depth_row(design: TapDesign) -> Row:
    """Where the tap is to stop in a blind hole."""
    depth = hole_depth(design.work.depth + design.tap.chamfer_length)
    return Row("stop with the tap's front so deep", depth)


def drill_row(design: TapDesign) -> Row:
    """The drill beside the limits of the hole that it makes."""
    minor = (Length(design.hole.minor_min), Length(design.hole.minor_max))
    if design.bored:
        return Row("bore or ream, for the minor diameter", Length(design.drill), *minor)
    return Row("tap drill, for the minor diameter", drill_of(design.drill), *minor)


def _percentages(design: TapDesign) -> list[Row]:
    """Both conventions at 60 degrees; other forms have the basic depth alone."""
    left = percentage_left(design)
    engaged = Words(f"{left.of_engagement:.1f} %")
    if left.of_full_thread is None:
        return [Row("percentage of thread, basic depth", engaged)]
    return [
        Row("percentage of thread, full depth 0.6495 P", Words(f"{left.of_full_thread:.1f} %")),
        Row("percentage of thread, engagement 5/8 H", engaged),
    ]
