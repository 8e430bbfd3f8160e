"""Chapters in the reader's units: every block a table or a list of sentences."""

from dataclasses import dataclass

from tapmodel.report.blocks import Block, Chapter, Paragraphs, Row, Rows, Table
from tapmodel.report.units import Units, aimed, shown, shown_high, shown_low, told

Cell = str | tuple[str, ...]
"""A label, or the lines of a quantity."""


@dataclass(frozen=True, slots=True)
class ShownTable:
    """A table ready to be written; the first cell of a line heads it."""

    caption: str
    head: tuple[str, ...]
    lines: tuple[tuple[Cell, ...], ...]


@dataclass(frozen=True, slots=True)
class ShownChapter:
    """A chapter in the reader's units; a block without table is a list of sentences."""

    key: str
    title: str
    blocks: tuple[ShownTable | tuple[str, ...], ...]


def shown_chapter(section: Chapter, units: Units) -> ShownChapter:
    """A chapter as page and card take it."""
    blocks = tuple(_block(block, units) for block in section.blocks)
    return ShownChapter(section.key, section.title, blocks)


def _block(block: Block, units: Units) -> ShownTable | tuple[str, ...]:
    match block:
        case Rows():
            return _rows(block, units)
        case Table():
            lines = (tuple(tuple(shown(cell, units)) for cell in line) for line in block.lines)
            return ShownTable(block.caption, block.head, tuple(lines))
        case Paragraphs():
            return tuple(told(text, units) for text in block.texts)


def _rows(block: Rows, units: Units) -> ShownTable:
    """The column of limits only where there are any."""
    limited = any(row.low or row.high for row in block.rows)
    head = ("", block.value_head, *(("limits",) if limited else ()))
    lines = (
        (told(row.label, units), aimed(row, units), *([_limits(row, units)] * limited))
        for row in block.rows
    )
    return ShownTable(block.caption, head, tuple(lines))


def _limits(row: Row, units: Units) -> tuple[str, ...]:
    low = tuple(shown_low(row.low, units)) if row.low else ()
    high = tuple(shown_high(row.high, units)) if row.high else ()
    if low and high:
        return tuple(f"{a} to {b}" for a, b in zip(low, high, strict=True))
    if low:
        return f"at least {low[0]}", *low[1:]
    return (f"at most {high[0]}", *high[1:]) if high else ()
