"""Text in columns, as every page and table on the screen has it."""

from collections.abc import Callable, Sequence
from enum import Enum, auto
from itertools import zip_longest

GAP = "  "


class Mark(Enum):
    """What a piece of text is, for a screen that can show it."""

    HEADING = auto()
    VALUE = auto()
    ASIDE = auto()
    ERROR = auto()
    WARNING = auto()


Pen = Callable[[str, Mark], str]
"""Writes a piece of text as what it is."""


def plain(text: str, _mark: Mark) -> str:
    """The text alone, for a file or a pipe."""
    return text


def columns(lines: Sequence[Sequence[str]], *, right: bool = False) -> list[str]:
    """Lines of cells as lines of text, each column as wide as its widest cell.

    Args:
        lines: a line may have fewer cells than others.
        right: whether cells end at their column's right side instead of beginning at its left.
    """
    return [GAP.join(line) for line in padded(lines, right=right)]


def padded(lines: Sequence[Sequence[str]], *, right: bool = False) -> list[list[str]]:
    """The cells of `columns`, not yet joined; nothing is added at the end of a line."""
    widths = [max(map(len, column)) for column in zip_longest(*lines, fillvalue="")]
    side = ">" if right else "<"
    wide = [
        [f"{cell:{side}{width}}" for cell, width in zip(line, widths, strict=False)]
        for line in lines
    ]
    return [[*cells[:-1], cells[-1].rstrip()] for cells in wide]
