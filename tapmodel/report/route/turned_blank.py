"""The blank, drive end first."""

from tapmodel.designing.choose.tools import tools_of
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Paragraphs
from tapmodel.report.chapters import cautions
from tapmodel.report.chapters.general_limits import HARDENING, HOW
from tapmodel.report.chapters.machines import turning
from tapmodel.report.route.held import between, front
from tapmodel.report.route.operation import Operation
from tapmodel.report.route.parted import measured, table, unmeasured
from tapmodel.report.route.speeds import turned
from tapmodel.shop.bar import bar_for
from tapmodel.shop.order_of_work import Step


def shank(design: TapDesign) -> Operation:
    """Roughed and finished."""
    rows = turning.shank_rows(design)
    thick = bar_for(design.tap, tools_of(design)).turned
    return Operation(
        Step.SHANK,
        "Rough the blank and turn the shank",
        "lathe",
        f"the thread end in the chuck, {_rear(design)}; rough all of it before the last cut on "
        "anything",
        "right-hand turning tool, its tip rounded a little",
        why="the drive end first: dog, collet and dividing head will grip the finished shank",
        settings=(*table(unmeasured(rows)), Paragraphs((HOW, HARDENING))),
        speeds=turned(design, thick, "on the bar"),
        measure=measured(rows),
        cautions=(cautions.loose(design), cautions.CALCULATED),
    )


def _rear(design: TapDesign) -> str:
    return (
        "the tailstock in the rear centre"
        if design.tap.blank.rear_centre > 0
        else "the shank end free, sticking out as little as can be"
    )


def body(design: TapDesign) -> Operation:
    """The part that is threaded."""
    tap, rows = design.tap, turning.body_rows(design)
    return Operation(
        Step.BODY,
        "Turn the thread part",
        "lathe",
        between(tap),
        "the same tool, newly honed for the last cut",
        why="after the shank, in the clamping in which the thread is cut, so that both run true",
        settings=table(unmeasured(rows)),
        speeds=turned(design, tap.thread.major, "on the thread part"),
        measure=measured(rows),
        instead="leave the crests a little thick and finish them after the thread, where burrs "
        "of the threading tool are a trouble.",
    )


def neck(design: TapDesign) -> Operation:
    """What is thinner behind the thread."""
    blank = design.tap.blank
    rows = turning.neck_rows(blank)
    return Operation(
        Step.NECK,
        "Turn the neck",
        "lathe",
        f"as before, {front(design.tap)}",
        "round-nosed grooving tool, corners rounded: a sharp one is where a hard tap breaks",
        why="before the thread, whose tool runs out into it",
        settings=table(unmeasured(rows)),
        speeds=turned(design, blank.neck_diameter, "on the neck")[:2],
        measure=measured(rows),
    )
