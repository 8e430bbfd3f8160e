"""The sheet to take to the machine: a PDF with the numbers of each operation and the drawings.

Black on white, fields to write measured values in beside their limits. The layout is a text for
typst, which carries its own fonts: text and narrow drawings in two columns, wide drawings after,
which `pages` deals out once it is known where the text ends.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

import typst

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import write_whole
from tapmodel.export.clock import stamp
from tapmodel.report.chapters import cautions, findings
from tapmodel.report.chapters.order import OPERATIONS
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.projection import sign_svg
from tapmodel.report.sheet.pages import Pages, dealt
from tapmodel.report.sheet.typeset import quoted, typeset
from tapmodel.report.units import Look, Paper, Units

_NAMES = {Paper.A4: "a4", Paper.LETTER: "us-letter"}
_UNITS = {
    Units.MM: "mm",
    Units.INCH: "inch",
    Units.BOTH: "mm and inch; drawings mm",
}
_SIZES = {Units.MM: "9pt", Units.INCH: "9pt", Units.BOTH: "8pt"}

HEIGHTS = {Paper.A4: 297.0, Paper.LETTER: 279.4}
"""Of the papers [mm]."""

_TOP, _BOTTOM = 10.0, 12.0
"""White above and under what stands on a page, the latter with its number [mm]."""

_HEADING = 12.0
"""What a drawing takes beside its own height: its heading, and white around both [mm]."""

_COLUMN = 88.5
"""Width of a drawing that still stands in a column [mm]."""

_STYLE = """\
#set document(title: {title})
#set page(paper: "{paper}", footer-descent: 20%,
  margin: (x: 13mm, top: {top}mm, bottom: {bottom}mm),
  footer: context align(center, text(8pt)[
    #{title} #h(2em) page #counter(page).display() of #counter(page).final().first()]))
#set text({size})
#set par(leading: 0.45em, spacing: 0.7em)
#set list(spacing: 0.5em)
#set table(stroke: 0.4pt, inset: (x: 3pt, y: 2pt), align: horizon)
#set block(spacing: 0.7em)
#show heading: set block(above: 1em, below: 0.6em)
#show heading: set text(11pt)
"""

_TITLE = """\
#table(columns: (1.2fr, 1fr, 1fr, 1fr), inset: 3pt, align: top,
  table.cell(colspan: 2)[#text(17pt, strong({tap}))],
  [name \\ #strong({name})],
  [hand of the thread \\ #strong({hand})],
  [material #v(5.5mm)], [hardness #v(5.5mm)], [made by #v(5.5mm)], [date #v(5.5mm)],
  table.cell(colspan: 2, align: horizon)[#strong[Numbers calculated, check before cutting.]],
  [units \\ #{units}],
  [#grid(columns: 2, gutter: 2mm, align: horizon,
    image(bytes({sign}), format: "svg"), {angle})],
)
#v(1mm)
"""


def write_sheet(
    path: Path, design: TapDesign, drawings: Mapping[str, Drawing], look: Look | None = None
) -> None:
    """Write the sheet.

    Args:
        path: of the PDF.
        design: every number of the tap.
        drawings: by name, drawn in the look's projection; they stand true to scale.
        look: size, units and the projection that the title block states.

    Raises:
        InputError: when nothing can be written there.
    """
    look = look or Look()
    title = quoted(f"Tap for {design.designation} ({design.name})")
    narrow = [drawing for drawing in drawings.values() if drawing.width_mm <= _COLUMN]
    wide = [drawing for drawing in drawings.values() if drawing.width_mm > _COLUMN]
    sections = (findings.chapter, *OPERATIONS, cautions.chapter)
    parts = [
        _STYLE.format(
            title=title,
            paper=_NAMES[look.paper],
            size=_SIZES[look.units],
            top=_TOP,
            bottom=_BOTTOM,
        ),
        _title_block(design, look),
        "#columns(2, gutter: 6mm)[",
        *(typeset(section(design), look.units) for section in sections),
        *_drawn(narrow),
        "]",
    ]
    text, room = "\n".join(parts), HEIGHTS[look.paper] - _TOP - _BOTTOM
    pages = dealt([d.height_mm + _HEADING for d in wide], room - _depth(text), room)
    laid = "\n".join([text, *_laid(wide, pages)])
    write_whole(path, typst.compile(laid.encode(), timestamp=stamp()))


def _depth(text: str) -> float:
    """How far down its last page a text of two columns reaches, from the top of the page's room."""
    # What is set to the width of the page stands under the longer of both columns.
    end = "\n#context [#metadata(here().position().y.mm()) <end>]"
    found = json.loads(typst.query(f"{text}{end}".encode(), "<end>", field="value", one=True))
    return float(found) - _TOP


def _laid(drawings: list[Drawing], pages: Pages) -> Iterator[str]:
    """The drawings of each page, the white between them shared out."""
    for number, page in enumerate(pages):
        if number > 0:
            yield "#pagebreak()"
        for at, drawn in enumerate(_drawn([drawings[n] for n in page])):
            if at > 0:
                yield "#v(1fr)"
            yield drawn
        if number > 0:
            yield "#v(1fr)"


def _title_block(design: TapDesign, look: Look) -> str:
    return _TITLE.format(
        tap=quoted(f"Tap for {design.designation}"),
        name=quoted(design.name),
        hand=quoted(design.tap.thread.hand.value),
        units=quoted(_UNITS[look.units]),
        sign=quoted(sign_svg(look.projection)),
        angle=quoted(f"{look.projection.value} angle"),
    )


def _drawn(drawings: Iterable[Drawing]) -> Iterator[str]:
    """Each with its heading, at the size it is drawn for."""
    for drawing in drawings:
        image = f'image(bytes({quoted(drawing.svg())}), format: "svg", width: {drawing.width_mm}mm)'
        yield f"#block(breakable: false, above: 1.2em)[== #{quoted(drawing.title)}\n#{image}]"
