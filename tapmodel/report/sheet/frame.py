"""Frames of drawings: each has a line round it and a strip under it that says what it is.

Where drawings are alone on a page their frames share out its height, so that no page looks
half empty.
"""

from collections.abc import Sequence

from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import scale_text
from tapmodel.report.sheet.typeset import quoted

WHITE, STRIP, APART = 2.0, 5.6, 2.4
"""Over and under a drawing within its frame, height of the strip, and between frames [mm]."""

TAKEN = 2 * WHITE + STRIP + APART
"""What a drawing takes beside its own height [mm]."""

_NARROW = 100.0
"""Frames of less width have room for the title and the scale alone [mm]."""

_LINE, _HAIR = "0.5pt", "0.25pt"


def row(drawings: Sequence[Drawing], tap: str, *, fills: bool) -> str:
    """Drawings beside each other, each at the size it is drawn for.

    Args:
        drawings: one, or two that stand in half of the page's width.
        tap: what they are of.
        fills: whether the frames grow into what a page leaves free, in proportion to their height.
    """
    highest = max(drawing.height_mm for drawing in drawings) + TAKEN - APART
    height = f"{highest:.2f}fr" if fills else "auto"
    cells = [_framed(drawing, tap, fills=fills, alone=len(drawings) == 1) for drawing in drawings]
    inside = cells[0] if len(cells) == 1 else _abreast(cells, fills=fills)
    return f"#block(breakable: false, above: {APART}mm, height: {height})[#{inside}]"


def _abreast(cells: Sequence[str], *, fills: bool) -> str:
    rows = "rows: 100%, " if fills else ""
    return f"grid(columns: (1fr, 1fr), {rows}gutter: {APART}mm, {', '.join(cells)})"


def _framed(drawing: Drawing, tap: str, *, fills: bool, alone: bool) -> str:
    """One drawing; of two abreast the lower is in the middle of its frame."""
    image = f'image(bytes({quoted(drawing.svg())}), format: "svg", width: {drawing.width_mm}mm)'
    room = "100%" if fills or not alone else "auto"
    white = "1fr" if room == "100%" else "auto"
    wide = alone and drawing.width_mm > _NARROW
    return (
        f"block(width: 100%, height: {room}, stroke: {_LINE}, inset: 0pt)"
        f"[#grid(columns: 1fr, rows: ({white}, {STRIP}mm), "
        f"align(center + horizon, pad(y: {WHITE}mm, {image})), {_strip(drawing, tap, wide=wide)})]"
    )


def _strip(drawing: Drawing, tap: str, *, wide: bool) -> str:
    """Title, and what the drawing is of, its scale, and that nothing in it was measured."""
    told = [f"scale {scale_text(drawing.scale)}"] if drawing.of_part else []
    if wide:
        told = [tap, *told, "calculated, not measured"]
    cells = [f"strong({quoted(drawing.title)})", *(f"text(0.9em, {quoted(one)})" for one in told)]
    columns = ", ".join(["1fr", *["auto"] * len(told)])
    return (
        f"grid(columns: ({columns}), rows: {STRIP}mm, align: horizon, inset: (x: 2mm), "
        f"stroke: (top: {_LINE}, rest: none), {f', grid.vline(stroke: {_HAIR}), '.join(cells)})"
    )
