"""Change gears, as the page asks for them at the machine."""

from collections.abc import Sequence

from tapmodel.report.chapters.machines.gears import gears_chapter
from tapmodel.report.units import Units
from tapmodel.report.view.chapter import ShownChapter, shown_chapter
from tapmodel.report.words.compound import NEXT_START
from tapmodel.shop.gears.asked import GearsAsked
from tapmodel.shop.gears.trains import GearTrain


def gears_view(
    asked: GearsAsked, trains: Sequence[GearTrain], units: Units
) -> tuple[ShownChapter, tuple[str, ...]]:
    """The chapter of change gears, and what else to heed."""
    several = asked.tap is not None and asked.tap.thread.starts > 1
    return shown_chapter(gears_chapter(asked, trains), units), (NEXT_START,) if several else ()
