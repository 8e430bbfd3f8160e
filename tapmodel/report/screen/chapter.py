"""Chapters of the report as lines of text."""

import textwrap
from collections.abc import Iterator, Sequence

from tapmodel.report.blocks import Block, Chapter, Length, Paragraphs, Row, Rows, Table
from tapmodel.report.screen.columns import GAP, Mark, Pen, columns, padded
from tapmodel.report.units import Units, aimed, as_text, shown_high, shown_low, told

WIDTH = 96
"""Letters in a line of prose; a table may be wider."""


def chapter_lines(chapter: Chapter, units: Units, pen: Pen) -> Iterator[str]:
    """Its title, and its blocks set in by two letters."""
    yield pen(chapter.title, Mark.HEADING)
    for block in chapter.blocks:
        for line in _block(block, units, pen):
            yield f"{GAP}{line}"


def _block(block: Block, units: Units, pen: Pen) -> Iterator[str]:
    match block:
        case Rows():
            yield from _caption(block.caption, pen)
            yield from _rows(block.rows, units, pen)
        case Table():
            yield from _caption(block.caption, pen)
            body = [[as_text(cell, units) for cell in line] for line in block.lines]
            head, *lines = columns([block.head, *body])
            yield pen(head, Mark.ASIDE)
            yield from lines
        case Paragraphs():
            for text in block.texts:
                yield from wrapped(told(text, units))


def _caption(words: str, pen: Pen) -> list[str]:
    return [pen(words, Mark.ASIDE)] if words else []


def wrapped(text: str, indent: str = "") -> list[str]:
    """A sentence on lines of `WIDTH`, those after the first set in by `indent`."""
    return textwrap.wrap(text, WIDTH, subsequent_indent=indent, break_on_hyphens=False) or [""]


def _rows(rows: Sequence[Row], units: Units, pen: Pen) -> Iterator[str]:
    """Label, value and limits, the value marked."""
    for label, value, *limits in padded([_row(row, units) for row in rows]):
        yield GAP.join([label, pen(value, Mark.VALUE), *limits])


def _row(row: Row, units: Units) -> list[str]:
    limits = _limits(row, units)
    return [told(row.label, units), " = ".join(aimed(row, units)), *([limits] if limits else [])]


def _limits(row: Row, units: Units) -> str:
    low = shown_low(row.low, units) if row.low else ()
    high = shown_high(row.high, units) if row.high else ()
    if row.low and row.high:
        return span(row.low, row.high, units)
    if low:
        return f"at least {' = '.join(low)}"
    return f"at most {' = '.join(high)}" if high else ""


def span(low: Length, high: Length, units: Units) -> str:
    """Limits, rounded into themselves, the unit once behind them."""
    ends = zip(shown_low(low, units), shown_high(high, units), strict=True)
    return " = ".join(f"{least.rpartition(' ')[0]} to {most}" for least, most in ends)
