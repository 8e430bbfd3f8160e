"""The route as a PDF: a box to tick for every operation, fields for what is measured in it."""

from collections.abc import Sequence
from pathlib import Path

import typst

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import write_whole
from tapmodel.export.clock import stamp
from tapmodel.report.blocks import Chapter
from tapmodel.report.chapters import findings
from tapmodel.report.sheet.style import SIZES, fonts, page_title, style, title_block
from tapmodel.report.sheet.typeset import typeset
from tapmodel.report.units import Look


def write_route(path: Path, design: TapDesign, chapters: Sequence[Chapter], look: Look) -> None:
    """Write the route.

    Args:
        path: of the PDF.
        design: every number of the tap.
        chapters: one an operation.
        look: size of the paper, and units.

    Raises:
        InputError: when nothing can be written there.
    """
    found = findings.chapter(design)
    parts = [
        style(page_title(design), look.paper, SIZES[look.units]),
        title_block(design, look, drawn=False),
        "#columns(2, gutter: 6mm)[",
        typeset(found, look.units) if found.blocks else "",
        *(typeset(chapter, look.units, ticked=True) for chapter in chapters),
        "]",
    ]
    pdf = typst.compile("\n".join(parts).encode(), font_paths=fonts(), timestamp=stamp())
    write_whole(path, pdf)
