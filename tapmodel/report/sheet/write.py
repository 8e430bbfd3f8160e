"""The sheet to take to the machine: a PDF with the numbers of each operation and the drawings.

Black on white, fields to write measured values in beside their limits. The layout is a text for
typst, which carries its own fonts: text and narrow drawings in two columns, wide drawings after.
"""

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
from tapmodel.report.sheet.typeset import quoted, typeset
from tapmodel.report.units import Look, Paper, Units

_NAMES = {Paper.A4: "a4", Paper.LETTER: "us-letter"}
_UNITS = {
    Units.MM: "mm",
    Units.INCH: "inch",
    Units.BOTH: "mm and inch; drawings mm",
}
_SIZES = {Units.MM: "9pt", Units.INCH: "9pt", Units.BOTH: "8pt"}

_COLUMN = 88.5
"""Width of a drawing that still stands in a column [mm]."""

_STYLE = """\
#set document(title: {title})
#set page(paper: "{paper}", margin: (x: 13mm, top: 10mm, bottom: 12mm), footer-descent: 20%,
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
    wide = paged([drawing for drawing in drawings.values() if drawing.width_mm > _COLUMN])
    sections = (findings.chapter, *OPERATIONS, cautions.chapter)
    parts = [
        _STYLE.format(title=title, paper=_NAMES[look.paper], size=_SIZES[look.units]),
        _title_block(design, look),
        "#columns(2, gutter: 6mm)[",
        *(typeset(section(design), look.units) for section in sections),
        *_drawn(narrow),
        "]",
        *_drawn(wide),
    ]
    write_whole(path, typst.compile("\n".join(parts).encode(), timestamp=stamp()))


def _title_block(design: TapDesign, look: Look) -> str:
    return _TITLE.format(
        tap=quoted(f"Tap for {design.designation}"),
        name=quoted(design.name),
        hand=quoted(design.tap.thread.hand.value),
        units=quoted(_UNITS[look.units]),
        sign=quoted(sign_svg(look.projection)),
        angle=quoted(f"{look.projection.value} angle"),
    )


def paged(drawings: list[Drawing]) -> list[Drawing]:
    """Order in which they take the fewest pages: one of the high ones never waits for a page.

    The low half comes first, where text may have left it less than a page.
    """
    ranked = sorted(drawings, key=lambda drawing: drawing.height_mm)
    first = ranked[: len(ranked) // 2]
    return [*(d for d in drawings if d in first), *(d for d in drawings if d not in first)]


def _drawn(drawings: Iterable[Drawing]) -> Iterator[str]:
    """Each with its heading, at the size it is drawn for."""
    for drawing in drawings:
        image = f'image(bytes({quoted(drawing.svg())}), format: "svg", width: {drawing.width_mm}mm)'
        yield f"#block(breakable: false, above: 1.2em)[== #{quoted(drawing.title)}\n#{image}]"
