"""Which sections there are, in the order of the work. A new one: its file and a line here."""

from collections.abc import Callable

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter
from tapmodel.report.chapters import measured
from tapmodel.report.chapters.in_the_hole import left_behind, symptoms, turning_it
from tapmodel.report.chapters.machines import (
    cam,
    dividing,
    gears,
    hardening,
    milling,
    over_wires,
    sequence,
    threading_tool,
    turning,
)
from tapmodel.report.chapters.tap import angles, chamfer, hole, relief, square, thread

SectionOf = Callable[[TapDesign], Chapter]

OPERATIONS: tuple[SectionOf, ...] = (
    hole.chapter,
    sequence.chapter,
    turning.chapter,
    threading_tool.chapter,
    gears.chapter,
    thread.chapter,
    over_wires.chapter,
    chamfer.chapter,
    square.chapter,
    milling.chapter,
    dividing.chapter,
    cam.chapter,
    angles.chapter,
    relief.chapter,
    hardening.chapter,
    turning_it.chapter,
    left_behind.chapter,
    measured.chapter,
)
"""On the sheet, in the order of the work."""


BEYOND_THE_SHEET: tuple[SectionOf, ...] = (symptoms.chapter,)
"""For the page, the route and who asks for all: the sheet, which lies at the machine, is long
enough."""


def all_chapters(design: TapDesign) -> list[Chapter]:
    """The chapters of the sheet, and those for which it has no room."""
    more = (chapter(design) for chapter in BEYOND_THE_SHEET)
    return [*operations(design), *(told for told in more if told.blocks)]


def operations(design: TapDesign) -> list[Chapter]:
    """The chapters that have something to say of that tap, with what was measured of it."""
    chapters = [told for chapter in OPERATIONS if (told := chapter(design)).blocks]
    return measured.filled(chapters, design)
