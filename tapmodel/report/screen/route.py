"""The route in the shop as a page of text."""

from collections.abc import Sequence

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter
from tapmodel.report.screen.chapter import chapter_lines
from tapmodel.report.screen.columns import Mark, Pen, plain
from tapmodel.report.units import Units
from tapmodel.report.words.sets import tap_for


def route_page(
    design: TapDesign, chapters: Sequence[Chapter], units: Units = Units.MM, pen: Pen = plain
) -> str:
    """Every operation under the other.

    Args:
        design: of the tap.
        chapters: one an operation.
        units: of lengths.
        pen: writes for a screen that can show what a text is.
    """
    lines = [pen(f"{tap_for(design)}, from bar to finished tap", Mark.HEADING)]
    for chapter in chapters:
        lines += ["", *chapter_lines(chapter, units, pen)]
    return "\n".join(lines)
