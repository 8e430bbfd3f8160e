"""The answer about change gears as a page of text."""

from collections.abc import Sequence

from tapmodel.report.chapters.machines.gears import gears_chapter
from tapmodel.report.screen.chapter import chapter_lines, wrapped
from tapmodel.report.screen.columns import Pen, plain
from tapmodel.report.units import Units
from tapmodel.report.words.compound import NEXT_START
from tapmodel.shop.gears.asked import GearsAsked
from tapmodel.shop.gears.trains import GearTrain


def gears_page(
    asked: GearsAsked, trains: Sequence[GearTrain], units: Units = Units.MM, pen: Pen = plain
) -> str:
    """The trains, best first, and how they are set up."""
    lines = list(chapter_lines(gears_chapter(asked, trains), units, pen))
    if asked.tap is not None and asked.tap.thread.starts > 1:
        lines += [f"  {line}" for line in wrapped(NEXT_START)]
    return "\n".join(lines)
