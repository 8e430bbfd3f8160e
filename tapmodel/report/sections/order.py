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
    relief,
    square,
    thread,
    turning,
)

SectionOf = Callable[[TapDesign], Section]

OPERATIONS: tuple[SectionOf, ...] = (
    hole.section,
    turning.section,
    thread.section,
    chamfer.section,
    square.section,
    milling.section,
    dividing.section,
    angles.section,
    relief.section,
)
"""On the sheet, in the order of the work."""
