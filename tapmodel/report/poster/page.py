"""The page of a poster in the typesetter's words: one grid, one family of letters, much white."""

import base64
from collections.abc import Iterable, Sequence

from tapmodel.export.dxf.library import FAMILY
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.projection import sign_svg
from tapmodel.report.poster.hero import Hero
from tapmodel.report.poster.limits import LimitRow
from tapmodel.report.poster.paper import GAP, MARGIN, Size
from tapmodel.report.sheet.typeset import quoted
from tapmodel.report.units import Projection, unparted
from tapmodel.report.view.first import Figure
from tapmodel.report.view.judged import Judged
from tapmodel.words import Units

SIDE = 186.0
"""Width of the side view's panel [mm]."""

_LINE, _HAIR, _GREY = "0.6pt", "0.25pt", "luma(90)"
_BETWEEN = 5.0  # panels of a column [mm]
_LARGE, _LESS = 16.0, 11.5  # numbers that matter, in one unit and in both [pt]

_STYLE = """\
#set document(title: {title})
#set page(width: {width}mm, height: {height}mm, margin: {margin}mm)
#set text(7.6pt, font: "{font}", number-width: "tabular")
#set par(leading: 0.55em, spacing: 0.7em)
#set block(spacing: 0pt)
#set grid(align: left)
"""


def style(title: str, size: Size) -> str:
    """Paper and letters."""
    return _STYLE.format(
        title=quoted(title), width=size.width, height=size.height, margin=MARGIN, font=FAMILY
    )


def columns(left: Sequence[str], right: Sequence[str], size: Size) -> str:
    """The whole page.

    Args:
        left: head, picture, and what stands under it; the picture takes what they leave free.
        right: panels, the white between them shared out.
        size: of the paper.
    """
    head, picture, foot = left
    wide = (
        f"grid(columns: 100%, rows: (auto, 1fr, auto), row-gutter: {_BETWEEN}mm, "
        f"{head}, {picture}, {foot})"
    )
    narrow = " #v(1fr) ".join(f"#{panel}" for panel in right)
    body = f"block(height: 100%, width: 100%)[{narrow}]"
    widths = f"({size.left}mm, {size.right}mm)"
    return f"#grid(columns: {widths}, rows: 100%, gutter: {GAP}mm, {wide}, {body})"


def head(title: str, under: str, verdict: Judged) -> str:
    """Title, the tap in a line, and what is to be thought of it."""
    judged = f"{verdict.sign} {verdict.text}"
    return (
        f"stack(spacing: 3.4mm, text(27pt, strong({quoted(title)})), text(9.4pt, {quoted(under)}), "
        f"box(stroke: {_LINE}, inset: (x: 2.4mm, y: 1.7mm), "
        f"text(9.4pt, strong({quoted(judged)}))))"
    )


def picture(shown: Hero, instead: Drawing) -> str:
    """The picture as large as it can be, or a drawing where there is none, and what it is."""
    if shown.png:
        data = base64.b64encode(shown.png).decode()
        wide, high = shown.size
        svg = (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}" height="{high}">'
            f'<image width="{wide}" height="{high}" href="data:image/png;base64,{data}"/></svg>'
        )
        seen = (
            f'image(bytes({quoted(svg)}), format: "svg", width: 100%, height: 100%, fit: "contain")'
        )
    else:
        seen = f"align(center + horizon, {drawn(instead)})"
    return (
        f"grid(columns: 100%, rows: (1fr, auto), {seen}, text(fill: {_GREY}, {quoted(shown.told)}))"
    )


def drawn(drawing: Drawing) -> str:
    """A drawing at the size it is drawn for."""
    return f'image(bytes({quoted(drawing.svg())}), format: "svg", width: {drawing.width_mm}mm)'


def panel(title: str, note: str, *bodies: str) -> str:
    """A title with a note at its right end, a line, and what they head."""
    top = (
        f"grid(columns: (1fr, auto), align: (left + bottom, right + bottom), "
        f"text(9pt, strong({quoted(title)})), text(fill: {_GREY}, {quoted(note)}))"
    )
    line = f"line(length: 100%, stroke: {_LINE})"
    return f"stack(spacing: 1.5mm, {', '.join([top, line, *bodies])})"


def beside(parts: Sequence[str], widths: Sequence[str]) -> str:
    """Panels or pictures in a row."""
    return (
        f"grid(columns: ({', '.join(widths)},), column-gutter: {GAP}mm, align: left + top, "
        f"{', '.join(parts)})"
    )


def under(parts: Iterable[str]) -> str:
    """Panels one under the other."""
    return f"stack(spacing: {_BETWEEN}mm, {', '.join(parts)})"


def centred(inside: str) -> str:
    """In the middle of the width."""
    return f"align(center, {inside})"


def numbers(figures: Sequence[Figure], units: Units) -> str:
    """Each with its name before it and what belongs to it under it."""
    size = _LESS if units is Units.BOTH else _LARGE
    cells = list[str]()
    for figure in figures:
        cells.append(f"text(8.6pt, {quoted(figure.label)})")
        cells.append(f"align(right, text({size}pt, strong({quoted(figure.text)})))")
        told = f"text(fill: {_GREY}, {quoted(figure.beside)})"
        cells.append(f"grid.cell(colspan: 2, inset: (top: 0.9mm, bottom: 1.3mm), {told})")
        cells.append(f"grid.hline(stroke: {_HAIR})")
    cells.pop()
    return (
        "grid(columns: (auto, 1fr), align: (left + bottom, right + bottom), "
        f"inset: (top: 1.3mm), {', '.join(cells)})"
    )


def limits(rows: Sequence[LimitRow]) -> str:
    """Target and limits of the tap, and limits of the hole."""
    heads = ("", "tap, target", "tap, limits", "hole, limits")
    cells = [f"text(fill: {_GREY}, {quoted(word)})" for word in heads]
    for row in rows:
        cells.append(f"grid.hline(stroke: {_HAIR})")
        cells.append(f"strong({quoted(row.name)})")
        cells += [_lines(texts) for texts in (row.target, row.tap, row.hole)]
    return (
        "grid(columns: (auto, 1fr, 1.35fr, 1.35fr), align: (left, right, right, right) , "
        f"inset: (y: 0.9mm), {', '.join(cells)})"
    )


def _lines(texts: Sequence[str]) -> str:
    return "[" + " \\ ".join(f"#{quoted(text)}" for text in texts) + "]"


def told(lines: Sequence[str]) -> str:
    """Short sentences, a line each."""
    rows = ", ".join(quoted(unparted(line)) for line in lines)
    return f"block(width: 100%, {{ set par(hanging-indent: 1em); stack(spacing: 1.7mm, {rows}) }})"


def title_block(cells: Sequence[tuple[str, str]], projection: Projection, tap: str) -> str:
    """Framed, at the foot: what is drawn, and how.

    Args:
        cells: label and text of each, in pairs beside each other.
        projection: whose sign stands in it.
        tap: what the poster is of.
    """
    sign = f'image(bytes({quoted(sign_svg(projection))}), format: "svg")'
    angle = quoted(f"{projection.value} angle")
    parts = [
        f"grid.cell(colspan: 2, text(11pt, strong({quoted(tap)})))",
        *(_cell(label, text) for label, text in cells),
        f"grid(columns: (auto, auto), gutter: 2mm, align: horizon, {sign}, {angle})",
        f"align(horizon, strong({quoted('Calculated, not measured.')}))",
    ]
    return (
        f"grid(columns: (1fr, 1fr), stroke: {_LINE}, inset: (x: 1.7mm, y: 1.4mm), "
        f"align: left + horizon, {', '.join(parts)})"
    )


def _cell(label: str, text: str) -> str:
    return f"[#text(6.4pt, fill: {_GREY}, {quoted(label)}) \\ #{quoted(text)}]"
