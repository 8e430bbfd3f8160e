"""How every paper to take to the machine looks: page, letters, title block."""

from functools import cache

import typst

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.library import FAMILY, font_file
from tapmodel.report.chapters.in_the_hole.turning_it import hardness_told
from tapmodel.report.drawings.projection import sign_svg
from tapmodel.report.sheet.typeset import quoted
from tapmodel.report.units import Look, Paper
from tapmodel.report.words.sets import tap_for
from tapmodel.tap.tap import TapThread
from tapmodel.words import Units

_NAMES = {Paper.A4: "a4", Paper.LETTER: "us-letter"}
_UNITS = {
    Units.MM: "mm",
    Units.INCH: "inch",
    Units.BOTH: "mm and inch",
}
_SHARE = 0.77
"""Of sizes as a book has them: of the drawings' letters the small ones are as high with less."""

_HEADING = 1.22
"""Of headings, in sizes of the text."""

SIZES = {Units.MM: 9.0, Units.INCH: 9.0, Units.BOTH: 8.0}
"""Of the letters, as those of a book would be [pt]."""

LESS = 0.5
"""By which letters are smaller where that saves a page [pt]."""

TOP, BOTTOM = 10.0, 12.0
"""White above and under what stands on a page, the latter with its number [mm]."""

_STYLE = """\
#set document(title: {title})
#set page(paper: "{paper}", footer-descent: 20%,
  margin: (x: 13mm, top: {top}mm, bottom: {bottom}mm),
  footer: context align(center, text(6.4pt)[
    #{title} #h(2em) page #counter(page).display() of #counter(page).final().first()]))
#set text({size}, font: "{font}")
#set par(leading: 0.52em, spacing: 0.75em)
#set list(spacing: 0.52em)
#set table(stroke: 0.4pt, inset: (x: 3pt, top: 1.7pt, bottom: 2.2pt), align: horizon)
#set block(spacing: 0.7em)
#show heading: set block(above: 0.95em, below: 0.55em)
#show heading: set text({heading})
"""

_TITLE = """\
#table(columns: (1.2fr, 1fr, 1fr, 1fr), inset: 3pt, align: top,
  table.cell(colspan: 2)[#text(13.5pt, strong({tap}))],
  [name \\ #strong({name})],
  [hand of the thread \\ #strong({hand})],
  [material \\ #strong({steel})], [hardness \\ #strong({hardness})],
  [made by #v(5.5mm)], [date #v(5.5mm)],
  table.cell(colspan: 2, align: horizon)[#strong[Numbers calculated, check before cutting.]],
  {last}
)
#v(1mm)
"""

_CELL = "[units \\ #{units}],"

_SIGN = """\
  [#grid(columns: 2, gutter: 2mm, align: horizon,
    image(bytes({sign}), format: "svg"), {angle})],"""


def style(title: str, paper: Paper, size: float) -> str:
    """Page, letters and tables.

    Args:
        title: of every page, quoted.
        paper: its size.
        size: of the letters [pt].
    """
    return _STYLE.format(
        title=title,
        paper=_NAMES[paper],
        font=FAMILY,
        size=f"{_SHARE * size:.3f}pt",
        heading=f"{_HEADING * _SHARE * size:.3f}pt",
        top=TOP,
        bottom=BOTTOM,
    )


def page_title(design: TapDesign) -> str:
    """What stands under every page, quoted."""
    return quoted(f"{tap_for(design)} ({design.name})")


@cache
def fonts() -> typst.Fonts:
    """Of the drawings' family, and what else the machine has for names in other alphabets.

    They are looked for once: it takes as long as half of a sheet's text takes to be set.
    """
    return typst.Fonts(font_paths=[str(font_file().parent)])


def title_block(design: TapDesign, look: Look, *, drawn: bool = True) -> str:
    """What the paper is of, who made the tap, and in which units it speaks.

    Args:
        design: of the tap.
        look: the reader's.
        drawn: whether drawings follow, whose units and projection are to be told.
    """
    steel = design.work.steel
    return _TITLE.format(
        steel=quoted(steel.told),
        hardness=quoted(hardness_told(steel)),
        tap=quoted(tap_for(design)),
        name=quoted(design.name),
        hand=quoted(_hand(design.tap.thread)),
        last=_drawn(look) if drawn else _undrawn(look),
    )


def _hand(thread: TapThread) -> str:
    """With the number of starts where there are several."""
    return ", ".join([thread.hand.value, *([f"{thread.starts} starts"] * (thread.starts > 1))])


def _drawn(look: Look) -> str:
    units = _UNITS[look.units] + ("; drawings mm (inch)" if look.units is Units.BOTH else "")
    sign, angle = quoted(sign_svg(look.projection)), quoted(f"{look.projection.value} angle")
    return f"{_CELL.format(units=quoted(units))}\n{_SIGN.format(sign=sign, angle=angle)}"


def _undrawn(look: Look) -> str:
    return f"table.cell(colspan: 2){_CELL.format(units=quoted(_UNITS[look.units]))}"
