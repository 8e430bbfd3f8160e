"""Which sections there are, in the order of the work. A new one: its file and a line here."""

from collections.abc import Callable

from tapmodel.design.tap_design import TapDesign
from tapmodel.report.blocks import Section
from tapmodel.report.sections import (
    angles,
    chamfer,
    dividing,
    hole,
    milling,
    over_wires,
    relief,
    square,
    thread,
    threading_tool,
    turning,
)

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
