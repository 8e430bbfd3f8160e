"""The route as a PDF: a box to tick for every operation, fields for what is measured in it."""

from collections.abc import Sequence
from pathlib import Path

import typst

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import write_whole
from tapmodel.export.clock import stamp
from tapmodel.report.blocks import Chapter
from tapmodel.report.chapters import findings
from tapmodel.report.sheet.flow import flow_of, in_columns
from tapmodel.report.sheet.style import LESS, SIZES, fonts, page_title, style, title_block
from tapmodel.report.sheet.typeset import typeset
from tapmodel.report.units import Look


def write_route(
    path: Path,
    design: TapDesign,
    chapters: Sequence[Chapter],
    look: Look,
    after: Sequence[Chapter] = (),
) -> None:
    """Write the route.

    Args:
        path: of the PDF.
        design: every number of the tap.
        chapters: one an operation.
        look: size of the paper, and units.
        after: chapters behind them, which are no work to tick.

    Raises:
        InputError: when nothing can be written there.
    """
    sizes = (SIZES[look.units] - less for less in (0.0, LESS))
    columns = _columns(design, (chapters, after), look)
    # of as many pages the one with large letters, which comes first
    head = min(
        (_head(design, look, size) for size in sizes), key=lambda one: flow_of(one, columns).page
    )
    text = f"{head}\n{in_columns(columns)}"
    pdf = typst.compile(text.encode(), font_paths=fonts(), timestamp=stamp())
    write_whole(path, pdf)


def _head(design: TapDesign, look: Look, size: float) -> str:
    """Style, with letters of a size [pt], and title block."""
    title = title_block(design, look, drawn=False)
    return f"{style(page_title(design), look.paper, size)}\n{title}"


def _columns(
    design: TapDesign, chapters: tuple[Sequence[Chapter], Sequence[Chapter]], look: Look
) -> str:
    """Findings, operations, and what is behind them."""
    operations, after = chapters
    return "\n".join(
        [
            typeset(findings.chapter(design), look.units),
            *(typeset(chapter, look.units, ticked=True) for chapter in operations),
            *(typeset(chapter, look.units) for chapter in after),
        ]
    )
