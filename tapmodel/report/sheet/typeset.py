"""Blocks of the sheet as text of the typesetter's language.

A table never breaks across columns, and whatever heads it stays with it. A field to write a
measured value in is an empty cell of a size that a pencil can use.
"""

import json
from collections.abc import Iterable, Sequence
from itertools import pairwise

from tapmodel.report.blocks import (
    Block,
    Chapter,
    Paragraphs,
    Quantity,
    Row,
    Rows,
    Table,
    Told,
    Words,
)
from tapmodel.report.units import Units, aimed, shown, shown_high, shown_low, told, unparted

FIELD_WIDTH, FIELD_WIDTH_OF_BOTH, FIELD_HEIGHT = 22.5, 19.0, 5.0
"""Of a field to write a measured value in [mm]."""


_LONG = 16
"""Letters of a quantity that leave the labels beside it their room."""

_TOGETHER = 2
"""Sentences with which a list goes on in the next column, at the least."""


def quoted(words: str) -> str:
    """A string of the typesetter's language."""
    return json.dumps(words, ensure_ascii=False)


_BOX = "#box(width: 3.2mm, height: 3.2mm, baseline: 0.4mm, stroke: 0.6pt)#h(1.5mm)"
"""To be ticked once what it heads is done."""


def typeset(section: Chapter, units: Units, *, whole: bool = False, ticked: bool = False) -> str:
    """Heading and blocks of one section.

    Args:
        section: what is told.
        units: the reader's.
        whole: whether all of it is kept on one page.
        ticked: whether a box to tick stands before the heading.
    """
    parts = [f"== {_BOX if ticked else ''}#{quoted(section.title)}"]
    for block, after in pairwise([*section.blocks, None]):
        text = _block(block, units) if block else ""
        # what only leads up to a table must not be left behind at the foot of a column
        leads = isinstance(block, Paragraphs) and after is not None
        parts.append(f"#block(sticky: true)[\n{text}\n]" if leads else text)
    text = "\n".join(parts)
    return f"#block(breakable: false)[\n{text}\n]" if whole else text


def _block(block: Block, units: Units) -> str:
    match block:
        case Rows():
            return _captioned(block.caption, _rows(block, units))
        case Table():
            cells = [_cell(_abreast(shown(cell, units))) for line in block.lines for cell in line]
            columns = ["auto"] * len(block.head)
            return _captioned(block.caption, _table(columns, block.head, cells))
        case Paragraphs():
            return _sentences([told(words, units) for words in block.texts])


def _sentences(texts: Sequence[str]) -> str:
    """One under the other; the last does not stand alone at the head of a column."""
    points = [f"- #{quoted(text)}" for text in texts]
    if len(points) > _TOGETHER:
        last = "\n".join(points[-_TOGETHER:])
        points[-_TOGETHER:] = [f"#block(breakable: false, above: 0.5em)[\n{last}\n]"]
    return "\n".join(points)


def _captioned(caption: str, table: str) -> str:
    above = f"#strong({quoted(caption)})\n#v(-0.3em)\n" if caption else ""
    return f"#block(breakable: false)[\n{above}{table}\n]"


def _rows(block: Rows, units: Units) -> str:
    """Columns that stay empty in every row are left out."""
    rows = block.rows
    limited = any(row.low or row.high for row in rows)
    measured = any(row.measured for row in rows)
    head = [
        "",
        block.value_head,
        *(["limits"] if limited else []),
        *(["measured"] if measured else []),
    ]
    columns = ["1fr", "auto", *(["auto"] if limited else [])]
    # numbers in both units take room that labels would lack
    field = FIELD_WIDTH_OF_BOTH if units is Units.BOTH else FIELD_WIDTH
    columns += [f"{field}mm"] if measured else []
    cells = [cell for row in rows for cell in _row(row, head, units)]
    return _table(columns, head, cells)


def _row(row: Row, head: Sequence[str], units: Units) -> list[str]:
    """Cells under each word of the head."""
    label, limits, plain = _cell([told(row.label, units)]), _limits(row, units), head[2:] == []
    texts = aimed(row, units)
    texts = _abreast(texts) if plain else _under_each_other(row.value, texts)
    if isinstance(row.value, Words | Told) and not (plain or limits or row.measured):
        # words take the room of what they do not have, and leave the labels theirs
        return [label, f"table.cell(colspan: {len(head) - 1}){_cell(texts)}"]
    cells = [label, _cell(texts), *([_cell(limits)] if "limits" in head else [])]
    if "measured" in head[2:]:
        cells.append(_field(row, units))
    return cells


def _field(row: Row, units: Units) -> str:
    """What was measured, or the room to write it in."""
    if not row.measured:
        return _cell(["–"])
    if row.found is not None:
        return _cell(shown(row.found, units))
    return f"table.cell(inset: (y: 0pt))[#box(height: {FIELD_HEIGHT}mm)]"


def _abreast(texts: tuple[str, ...]) -> tuple[str, ...]:
    """Both units on one line, where a table is narrow enough."""
    return (" · ".join(texts),)


def _under_each_other(quantity: Quantity, texts: tuple[str, ...]) -> tuple[str, ...]:
    """A line a unit; what stands in brackets goes on a line of its own where it is long."""
    if isinstance(quantity, Words | Told) or max(map(len, texts)) <= _LONG:
        return texts
    return tuple(line for text in texts for line in text.replace(" (", "\n(").splitlines())


def _limits(row: Row, units: Units) -> tuple[str, ...]:
    low = shown_low(row.low, units) if row.low else ()
    high = shown_high(row.high, units) if row.high else ()
    if low and high:
        pairs = zip(low, high, strict=True)
        if units is Units.BOTH:
            # four lines would make the sheet a page longer
            return tuple(f"{a.partition(' ')[0]} to {b}".replace(" ", "\u00a0") for a, b in pairs)
        return tuple(part for a, b in pairs for part in (f"{a} to", b))
    if low:
        return "at least", *low
    return ("at most", *high) if high else ()


def _cell(lines: Iterable[str]) -> str:
    # a number never stands on another line than its unit
    return "[" + " \\ ".join(f"#{quoted(unparted(line))}" for line in lines) + "]"


def _table(columns: Sequence[str], head: Sequence[str], cells: Iterable[str]) -> str:
    heads = ", ".join(f"[#strong({quoted(word)})]" for word in head)
    body = ", ".join(cells)
    return f"#table(columns: ({', '.join(columns)},), table.header({heads}), {body})"
