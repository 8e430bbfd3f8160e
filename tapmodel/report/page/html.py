"""Chapters as the templates write them."""

from tapmodel.report.blocks import Chapter
from tapmodel.report.page.templates import filled
from tapmodel.report.units import Units
from tapmodel.report.view.chapter import shown_chapter


def chapter_html(section: Chapter, units: Units) -> str:
    """Heading and blocks of one section, its key as the anchor."""
    return filled("chapter.html", chapter=shown_chapter(section, units))
