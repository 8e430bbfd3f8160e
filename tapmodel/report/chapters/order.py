"""Which sections there are, in the order of the work. A new one: its file and a line here."""

from collections.abc import Callable

from tapmodel.designing.record import TapDesign
from tapmodel.report.chapters.machines import dividing, milling, over_wires, threading_tool, turning
from tapmodel.report.chapters.tap import angles, chamfer, hole, relief, square, thread
from tapmodel.report.sheet.blocks import Section

SectionOf = Callable[[TapDesign], Section]

OPERATIONS: tuple[SectionOf, ...] = (
    hole.section,
    turning.section,
    threading_tool.section,
    thread.section,
    over_wires.section,
    chamfer.section,
    square.section,
    milling.section,
    dividing.section,
    angles.section,
    relief.section,
)
"""On the sheet, in the order of the work."""
