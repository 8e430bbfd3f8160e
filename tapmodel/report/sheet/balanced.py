"""Columns that end level, so that the page on which the text ends has room under both."""

import json

import typst

from tapmodel.report.sheet.flow import Flow, in_columns
from tapmodel.report.sheet.style import TOP, fonts

TRIES = 5
"""Heights that are tried between half of what the longer column took and all of it."""

_SLACK = 1.0  # what a column may miss at its foot [mm]


def level(head: str, columns: str, end: Flow, room: float) -> tuple[float, str]:
    """How far down both columns of the last page reach [mm], and the text that is set so.

    Args:
        head: style and title block, in the typesetter's words.
        columns: what the columns hold.
        end: of the text, the first column filled before the second.
        room: of a page [mm].

    Returns:
        Not less than half of the depth before, as what does not break stays whole; that depth, and
        an empty text, where nothing is gained.
    """
    before = (room - end.begin) + (end.page - 2) * room if end.page > 1 else -end.begin

    def text(down: float) -> str:
        height = f"{before + down:.2f}mm"
        inside = in_columns(f"{columns}\n{_mark('inside')}")
        return f"{head}\n#block(height: {height}, breakable: true, above: 0pt)[{inside}]"

    def fits(down: float) -> bool:
        return _asked(text(down), "inside") <= TOP + down + _SLACK

    low, high = end.depth / 2, end.depth
    for _ in range(TRIES):
        middle = (low + high) / 2
        low, high = (low, middle) if fits(middle) else (middle, high)
    return (high, text(high)) if high < end.depth else (end.depth, "")


def _mark(label: str) -> str:
    """What tells how far down the page it stands [mm]."""
    return f"#context [#metadata(here().position().y.mm()) <{label}>]"


def _asked(text: str, label: str) -> float:
    found = typst.query(text.encode(), f"<{label}>", field="value", one=True, font_paths=fonts())
    return float(json.loads(found))
