"""The stub comes off, and the tap is tried."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Block, Paragraphs, Row, Words
from tapmodel.report.chapters import cautions
from tapmodel.report.chapters.in_the_hole import turning_it
from tapmodel.report.chapters.in_the_hole.left_behind import roughed_text
from tapmodel.report.chapters.machines import turning
from tapmodel.report.chapters.tap import hole
from tapmodel.report.route.operation import Operation
from tapmodel.report.route.parted import measured_in, settings_of, table
from tapmodel.report.route.speeds import drilled
from tapmodel.shop.order_of_work import Step
from tapmodel.words import Hand

WAYS = {Hand.RIGHT: "clockwise", Hand.LEFT: "counter-clockwise"}
"""Which way a tap is turned in, seen from the square."""

NO_GO = (
    "A NO-GO gauge that catches by two turns or less at either end stays out (ISO 1502, from "
    "memory)."
)
"""When a gauge is taken to stay out."""


def stub(design: TapDesign) -> Operation:
    """The male point, which no finished tap needs."""
    return Operation(
        Step.STUB,
        "Take off the male point",
        "tool grinder, or a cutting-off wheel",
        "the shank in a vee block or collet, the wheel square to the axis",
        "thin wheel, little at a time, wetted",
        why="last but the trial, for until now every clamping ran on it; steel so hard is ground, "
        "not parted",
        measure=(turning.length_row(design),),
        instead="part it off before hardening, where nothing is ground between centres after it.",
    )


def prove(design: TapDesign) -> Operation:
    """A hole in scrap of the same material, before the job's own."""
    told = hole.chapter(design)
    return Operation(
        Step.PROVE,
        "Prove it in a test hole",
        "drilling machine or bench, a tap wrench",
        "scrap of the material to be tapped in the vice, the hole square to its face; "
        f"{_straight(design)}",
        _tools(design),
        why="last, and before the job itself: one hole tells what no measurement of the tap does",
        settings=(
            *settings_of(told),
            *_turning(design),
            Paragraphs((*_handling(design), _gauging(design))),
        ),
        speeds=() if design.bored else drilled(design),
        measure=(*measured_in(told), *_gauges(design)),
        cautions=(cautions.HARD_TAP,),
        instead=_ROUGH_INSTEAD if design.roughs else _INSTEAD,
    )


_INSTEAD = "without gauges, try the very screw that is to go in, and one that is known good."

_ROUGH_INSTEAD = (
    "prove the taps of a set together, when all are made: only behind the last one is the hole to "
    "size."
)


def _tools(design: TapDesign) -> str:
    """What enters the hole, in turn."""
    before = 0 if design.part is None else design.part.number - 1
    if not before:
        return "the drill, then this tap"
    earlier = "tap 1" if before == 1 else "taps 1 and 2"
    return f"the drill, {earlier} of the set, then this tap"


def _straight(design: TapDesign) -> str:
    if design.tap.blank.rear_centre > 0:
        return "a centre in the spindle, which stands still, keeps the tap straight"
    return "a guide block bored to pass the tap keeps it straight"


def _turning(design: TapDesign) -> tuple[Block, ...]:
    """Oil, speed, torque and wrench; without a prediction, what does not hang on one."""
    foreseen = design.prediction
    if foreseen is None:
        return table(turning_it.work_rows(design), "To tap it")
    rows = (
        *turning_it.work_rows(design),
        *turning_it.torque_rows(design),
        *turning_it.wrench_rows(foreseen),
        turning_it.chip_room_row(design, foreseen),
    )
    return (*table(rows, "To tap it"), *turning_it.clearing(design, foreseen))


def _handling(design: TapDesign) -> tuple[str, ...]:
    """Start, reversing, chips; common practice."""
    way = WAYS[design.tap.thread.hand]
    start = (
        f"Oil hole and tap. Press and turn it in {way}, seen from the square; after two turns look "
        "from two sides with a square, and press no more: the thread draws it in."
    )
    on = (
        "Turn on by half a turn or one, then back by a quarter, until the chip is felt to break. "
        "At the torque to stop at, back out and find out why."
    )
    bottom = ("Wash or blow out this blind hole before the tap comes near its bottom.",)
    return (start, on, *(bottom if design.work.blind else ()))


def _gauging(design: TapDesign) -> str:
    return roughed_text(design) or NO_GO


def _gauges(design: TapDesign) -> tuple[Row, ...]:
    """None enters behind a tap that another one of its set follows."""
    if design.roughs:
        return ()
    return (
        Row("GO gauge", Words("enters"), measured=True),
        Row("NO-GO gauge", Words("stays out"), measured=True),
    )
