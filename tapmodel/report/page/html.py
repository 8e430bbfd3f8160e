"""Blocks of a section as HTML; every text is escaped."""

import re
from collections.abc import Iterable, Sequence
from html import escape

from tapmodel.report.sheet.blocks import Block, Chapter, Paragraphs, Row, Rows, Table
from tapmodel.report.units import Units, shown, shown_high, shown_low


def chapter_html(section: Chapter, units: Units) -> str:
    """Heading and blocks of one section, its key as the anchor."""
    blocks = "\n".join(_block(block, units) for block in section.blocks)
    title = escape(section.title)
    return f'<section id="{escape(section.key)}"><h2>{title}</h2>\n{blocks}\n</section>'


def _block(block: Block, units: Units) -> str:
    match block:
        case Rows():
            return _rows(block, units)
        case Table():
            lines = [[_lines(shown(cell, units)) for cell in line] for line in block.lines]
            return _table(block.caption, block.head, lines)
        case Paragraphs():
            return "<ul>" + "".join(f"<li>{escape(words)}</li>" for words in block.texts) + "</ul>"


def _rows(block: Rows, units: Units) -> str:
    """The column of limits only where there are any."""
    limited = any(row.low or row.high for row in block.rows)
    head = ("", "aim", "limits") if limited else ("", "aim")
    lines = [
        [escape(row.label), _lines(shown(row.value, units)), *([_limits(row, units)] * limited)]
        for row in block.rows
    ]
    return _table(block.caption, head, lines)


def _limits(row: Row, units: Units) -> str:
    low = shown_low(row.low, units) if row.low else ()
    high = shown_high(row.high, units) if row.high else ()
    if low and high:
        return _lines([f"{a} to {b}" for a, b in zip(low, high, strict=True)])
    if low:
        return "at least " + _lines(low)
    return "at most " + _lines(high) if high else ""


def _lines(texts: Iterable[str]) -> str:
    """A number and its unit stay together."""
    return "<br>".join(re.sub(r" (?=(mm|in)\b)", "&nbsp;", escape(text)) for text in texts)


def _table(caption: str, head: Sequence[str], lines: Iterable[Sequence[str]]) -> str:
    """A table in a box of its own that scrolls; the cells are HTML already."""
    above = f"<caption>{escape(caption)}</caption>" if caption else ""
    heads = "".join(f'<th scope="col">{escape(word)}</th>' for word in head)
    body = "".join(
        f'<tr><th scope="row">{first}</th>' + "".join(f"<td>{cell}</td>" for cell in rest) + "</tr>"
        for first, *rest in lines
    )
    table = f"<table>{above}<thead><tr>{heads}</tr></thead><tbody>{body}</tbody></table>"
    return f'<div class="scroll" tabindex="0">{table}</div>'
