"""What a tap that another one of its set follows leaves in the hole, and what comes next."""

from tapmodel.designing.choose.drill import percentage_left, percentage_of
from tapmodel.designing.record import TapDesign
from tapmodel.prediction.part import Part
from tapmodel.report.blocks import Block, Length, Paragraphs, Row, Rows, Words
from tapmodel.report.chapters.tap.thread import crest_limits

LEFT = "What this tap leaves in the hole"
FINISHED = "The finished hole, by the last tap of the set"


def blocks(
    design: TapDesign, part: Part, bore: tuple[Row, ...], reach: tuple[Row, ...]
) -> list[Block]:
    """The thread of this tap, the finished hole named as such, and the tap that comes next.

    Args:
        design: of the tap.
        part: which of the set it is.
        bore: rows of the drill and of the hole that it makes.
        reach: rows of the depth to which the tap cuts.
    """
    thread, hole, limits = design.tap.thread, design.hole, design.limits
    left = percentage_of(design, thread.major).of_engagement
    finished = percentage_left(design).of_engagement
    leaves = (
        Row("major diameter left by this tap", Length(thread.major), *crest_limits(design)),
        Row(
            "pitch diameter left by this tap",
            Length(thread.pitch_diameter, 4),
            Length(limits.pitch_min, 4),
            Length(limits.pitch_max, 4),
        ),
        _percentage("left by this tap", left),
        *reach,
    )
    last = (
        Row("major diameter, finished", Words("–"), low=Length(hole.major_min)),
        Row("pitch diameter, finished", Words("–"), Length(hole.pitch_min), Length(hole.pitch_max)),
        _percentage("finished", finished),
    )
    return [
        Rows(bore),
        Rows(leaves, LEFT),
        Rows(last, FINISHED),
        Paragraphs((next_tap(part),)),
    ]


def next_tap(part: Part) -> str:
    """Which tap of the set comes next, and which one cuts to size."""
    follows = part.number + 1
    if follows == part.taps:
        return f"Next comes tap {follows} of {part.taps}, which cuts the hole to size."
    return f"Next comes tap {follows} of {part.taps}; tap {part.taps} cuts the hole to size."


def _percentage(whose: str, percentage: float) -> Row:
    return Row(f"percentage of thread {whose}, basic depth", Words(f"{percentage:.1f} %"))
