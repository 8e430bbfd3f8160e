"""The sheet to take to the machine: a PDF with the numbers of each operation and the drawings.

Black on white, fields to write measured values in beside their limits. The layout is a text for
typst, which carries its own fonts.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

import typst

from tapmodel.design.tap_design import TapDesign
from tapmodel.export.atomic import whole_file
from tapmodel.report.blocks import Block, Paragraphs, Row, Rows, Section, Table
from tapmodel.report.drawings.sheet import Drawing
from tapmodel.report.sections import cautions
from tapmodel.report.sections.order import OPERATIONS
from tapmodel.report.units import Paper, Units, shown, shown_high, shown_low

_NAMES = {Paper.A4: "a4", Paper.LETTER: "us-letter"}

_STYLE = """\
#set document(title: {title})
#set page(paper: "{paper}", margin: (x: 15mm, y: 13mm), footer: context align(center, text(8pt)[
  #{title} #h(2em) page #counter(page).display() of #counter(page).final().first()]))
#set text(8.8pt)
#set table(stroke: 0.4pt, inset: (x: 4pt, y: 2.3pt))
#show heading: set block(above: 0.9em, below: 0.5em)
"""


def write_sheet(
    path: Path,
    design: TapDesign,
    drawings: Mapping[str, Drawing],
    paper: Paper = Paper.A4,
    units: Units = Units.MM,
) -> None:
    """Write the sheet.

    Args:
        path: of the PDF.
        design: every number of the tap.
        drawings: by name; they stand on pages of their own, true to scale.
        paper: size.
        units: of all lengths.

    Raises:
        InputError: when nothing can be written there.
    """
    title = _text(f"Tap for {design.designation} ({design.name})")
    parts = [
        _STYLE.format(title=title, paper=_NAMES[paper]),
        f"= #{title}",
        *(_section(section(design), units) for section in OPERATIONS),
        _section(cautions.section(design), units),
        *_drawn(drawings.values()),
    ]
    with whole_file(path) as draft:
        draft.write_bytes(typst.compile("\n".join(parts).encode()))


def _text(words: str) -> str:
    """A string of the layout language."""
    return json.dumps(words, ensure_ascii=False)


def _section(section: Section, units: Units) -> str:
    return "\n".join([f"== #{_text(section.title)}", *(_block(b, units) for b in section.blocks)])


def _block(block: Block, units: Units) -> str:
    match block:
        case Rows():
            return _caption(block.caption) + _rows(block.rows, units)
        case Table():
            cells = [cell for line in block.lines for cell in line]
            texts = ["\n".join(shown(cell, units)) for cell in cells]
            return _caption(block.caption) + _table(
                ["auto"] * len(block.head), [*block.head, *texts], len(block.head)
            )
        case Paragraphs():
            return "\n".join(f"- #{_text(words)}" for words in block.texts)


def _caption(words: str) -> str:
    return f"#{_text(words)}\n" if words else ""


def _rows(rows: Iterable[Row], units: Units) -> str:
    head = ["", "aim", "limits", "measured"]
    cells: list[str] = []
    for row in rows:
        cells += [row.label, " = ".join(shown(row.value, units)), _limits(row, units)]
        cells.append("" if row.measured else "–")
    return _table(["1.35fr", "1fr", "1.1fr", "0.6fr"], [*head, *cells], len(head))


def _limits(row: Row, units: Units) -> str:
    low = shown_low(row.low, units) if row.low else ()
    high = shown_high(row.high, units) if row.high else ()
    if low and high:
        return " = ".join(f"{a} to {b}" for a, b in zip(low, high, strict=True))
    if low:
        return "at least " + " = ".join(low)
    return "at most " + " = ".join(high) if high else ""


def _table(columns: list[str], cells: list[str], heads: int) -> str:
    """A table whose first cells are its head."""
    texts = [f"[#{_text(cell)}]" for cell in cells]
    head = ", ".join(f"[#strong({_text(cell)})]" for cell in cells[:heads])
    body = ", ".join(texts[heads:])
    return f"#table(columns: ({', '.join(columns)},), table.header({head}), {body})"


def _drawn(drawings: Iterable[Drawing]) -> Iterator[str]:
    """Drawings at the size they are drawn for, on pages laid across."""
    yield "#set page(flipped: true)"
    for drawing in drawings:
        image = f'image(bytes({_text(drawing.svg())}), format: "svg", width: {drawing.width_mm}mm)'
        yield f"#block(breakable: false)[== #{_text(drawing.title)}\n#{image}]"
