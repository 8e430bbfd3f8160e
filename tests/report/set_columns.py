"""Chapters set in two columns, pushed down step by step, and where their headings come to stand."""

import io
from collections.abc import Iterable, Sequence
from itertools import pairwise

import typst
from pypdf import PageObject, PdfReader

from tapmodel.report.blocks import Chapter
from tapmodel.report.sheet.style import fonts


def hold_headings(chapters: Sequence[Chapter], words: str, pushes: Iterable[int]) -> None:
    """Assert that each heading and caption stands in the column of what it heads.

    Args:
        chapters: that are set.
        words: of all of them, in the typesetter's words.
        pushes: by which they are pushed down a column, one after the other [mm].
    """
    captions = {getattr(block, "caption", "") for each in chapters for block in each.blocks}
    heads = {each.title for each in chapters} | captions - {""}
    for pushed in pushes:
        text = (
            '#set page(paper: "a4")\n#set text(8pt)\n#columns(2)[\n'
            f"#block(height: {pushed}mm)[]\n{words}\n]"
        )
        pdf = typst.compile(text.encode(), font_paths=fonts())
        pages = PdfReader(io.BytesIO(pdf)).pages
        lines = [(line, n, x > 297) for n, page in enumerate(pages) for line, x in _placed(page)]
        assert {each.title for each in chapters} <= {line for line, *_ in lines}
        for (head, *column), (_, *after) in pairwise(lines):
            assert head not in heads or column == after, (pushed, head)


def _placed(page: PageObject) -> list[tuple[str, float]]:
    """Every line of a page in turn, and how far from the left edge it begins [pt]."""
    found = list[tuple[str, float]]()

    def note(text: str, shift: Sequence[float], at: Sequence[float], *_font: object) -> None:
        found.extend([(text.strip(), shift[4] + shift[0] * at[4])] if text.strip() else [])

    page.extract_text(visitor_text=note)
    return found
