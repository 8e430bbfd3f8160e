"""Columns that end level, so that the page on which the text ends has room under both."""

import json

import typst

from tapmodel.report.sheet.style import BOTTOM, TOP, fonts

TRIES = 5
"""Heights that are tried between half of what the longer column took and all of it."""

_SLACK = 1.0  # what a column may miss at its foot [mm]


def level(head: str, columns: str, page: int, depth: float, height: float) -> tuple[float, str]:
    """How far down both columns of the last page reach [mm], and the text that is set so.

    Args:
        head: style and title block, in the typesetter's words.
        columns: what the columns hold.
        page: on which they end when the first is filled before the second.
        depth: to which the first then reaches there [mm].
        height: of the paper [mm].

    Returns:
        Not less than half the depth, as what does not break stays whole; `depth`, and an empty
        text, where nothing is gained.
    """
    room = height - TOP - BOTTOM
    begin = _asked(f"{head}\n#block(above: 0pt)[{_mark('begin')}]", "begin")
    before = room - (begin - TOP) + (page - 2) * room if page > 1 else -(begin - TOP)

    def text(down: float) -> str:
        return (
            f"{head}\n#block(height: {before + down:.2f}mm, breakable: true, above: 0pt)"
            f"[#columns(2, gutter: 6mm)[\n{columns}\n{_mark('inside')}\n]]"
        )

    def fits(down: float) -> bool:
        return _asked(text(down), "inside") <= TOP + down + _SLACK

    low, high = depth / 2, depth
    for _ in range(TRIES):
        middle = (low + high) / 2
        low, high = (low, middle) if fits(middle) else (middle, high)
    return (high, text(high)) if high < depth else (depth, "")


def _mark(label: str) -> str:
    """What tells how far down the page it stands [mm]."""
    return f"#context [#metadata(here().position().y.mm()) <{label}>]"


def _asked(text: str, label: str) -> float:
    found = typst.query(text.encode(), f"<{label}>", field="value", one=True, font_paths=fonts())
    return float(json.loads(found))
