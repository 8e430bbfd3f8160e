"""Chapters set in two columns, pushed down step by step, and where their headings come to stand."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

import typst
from printed import pieces_of

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
        lines = [
            (piece.text, number, piece.left > 210 / 2)
            for number, page in enumerate(pieces_of(pdf))
            for piece in page
        ]
        assert {each.title for each in chapters} <= {line for line, *_ in lines}
        for (head, *column), (_, *after) in pairwise(lines):
            assert head not in heads or column == after, (pushed, head)
