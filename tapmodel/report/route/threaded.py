"""Thread and chamfer, on the round blank."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Pitch, Row
from tapmodel.report.chapters.machines import gears, over_wires, threading_tool
from tapmodel.report.chapters.tap import chamfer as chamfer_chapter
from tapmodel.report.chapters.tap import thread as thread_chapter
from tapmodel.report.route.giving_way import at_thread
from tapmodel.report.route.held import between
from tapmodel.report.route.operation import Operation
from tapmodel.report.route.parted import measured_in, settings_of
from tapmodel.report.route.passes import passes
from tapmodel.report.route.speeds import speed_row, stopped, turns_row
from tapmodel.shop.cutting_speed import Cut
from tapmodel.shop.order_of_work import Step, wires_after_flutes


def thread(design: TapDesign) -> Operation:
    """Cut to the measurement over wires."""
    told = (
        threading_tool.chapter(design),
        gears.chapter(design),
        thread_chapter.chapter(design),
        over_wires.chapter(design),
    )
    major = design.tap.thread.major
    return Operation(
        Step.THREAD,
        "Cut the thread and measure it",
        "screw-cutting lathe",
        f"as it was turned: {between(design.tap)}",
        "threading tool ground to the angle and nose told, on centre height, square to the axis",
        why=_why(design),
        settings=(*settings_of(*told), *passes(design), *at_thread(design)),
        speeds=(
            speed_row(design, Cut.THREADING),
            turns_row(design, Cut.THREADING, major, "on the thread"),
            *stopped(design),
            Row("feed in a turn, the lead", Pitch(design.tap.thread.lead)),
        ),
        measure=measured_in(*told),
        instead="under power without a quick release, cut with the spindle reversed and the tool "
        "turned over, away from the shoulder.",
    )


def _why(design: TapDesign) -> str:
    before = (
        "before the flutes, for a cut that flutes interrupt hammers the tool, springs the blank "
        "and leaves lands of two heights"
    )
    count = design.tap.flutes.count
    if wires_after_flutes(design.tap):
        return f"{before}; with {count} flutes it can be measured again across two lands after them"
    return (
        f"{before}; and with {count} flutes no land stands opposite another, so that this is the "
        "last time that wires can measure it"
    )


def chamfer(design: TapDesign) -> Operation:
    """The cone in front."""
    told = chamfer_chapter.chapter(design)
    major = design.tap.thread.major
    return Operation(
        Step.CHAMFER,
        "Turn the chamfer",
        "lathe",
        f"as before: {between(design.tap)}",
        "turning tool, the top slide set to the angle, so that feeding it towards the headstock "
        "draws the tool off the axis, and checked with a protractor",
        why="after the thread, whose starting turns it takes off, and before the flutes, while the "
        "cut still goes all round",
        settings=settings_of(told),
        speeds=(
            speed_row(design, Cut.TURNING),
            turns_row(design, Cut.TURNING, major, "on the thread"),
        ),
        measure=measured_in(told),
        instead="grind it with its relief after hardening, where there is a tool grinder.",
    )
