"""Where a text in two columns ends, and where it ends with drawings behind it.

Text is laid out by the typesetter, once for each size of its letters; drawings, which do not break,
are then added up here, so that many ways to set a sheet cost no more than a few layouts.
"""

import json
from collections.abc import Sequence
from dataclasses import dataclass, replace

import typst

from tapmodel.report.sheet.frame import APART
from tapmodel.report.sheet.style import TOP, fonts

_MARK = """\
#context {
  let at = here().position()
  [#metadata((at.page, at.x.mm(), at.y.mm())) <at>]
}"""


@dataclass(frozen=True, slots=True)
class Flow:
    """A text of two columns, lengths down from the upper edge of the room on a page.

    Attributes:
        begin: of the columns on the first page [mm].
        page: on which the text ends.
        second: whether it ends in the second column there.
        foot: of the text in that column [mm].
        depth: to which the longer of both columns reaches there [mm].
    """

    begin: float
    page: int
    second: bool
    foot: float
    depth: float

    def followed_by(self, heights: Sequence[float], room: float, *, beside: bool) -> "Flow":
        """The text with drawings behind it.

        Args:
            heights: of the drawings in their frames, with the white over each [mm].
            room: of a page [mm].
            beside: whether they begin a column of their own.
        """
        flow = self
        for number, height in enumerate(heights):
            if flow.foot + height > room or (beside and number == 0):
                flow = _next_column(flow)
                # no white at the head of a column
                flow = _down_to(flow, flow.foot + height - APART)
            else:
                flow = _down_to(flow, flow.foot + height)
        return flow


def _next_column(flow: Flow) -> Flow:
    if flow.second:
        return replace(flow, page=flow.page + 1, second=False, foot=0.0, depth=0.0)
    return replace(flow, second=True, foot=flow.begin if flow.page == 1 else 0.0)


def _down_to(flow: Flow, foot: float) -> Flow:
    return replace(flow, foot=foot, depth=max(foot, flow.depth))


def flow_of(head: str, columns: str) -> Flow:
    """Lay out a text.

    Args:
        head: style and title block, in the typesetter's words.
        columns: what the columns hold.
    """
    inside = in_columns(f"{columns}\n{_MARK}")
    text = f"{head}\n{_MARK}\n{inside}\n{_MARK}"
    found = typst.query(text.encode(), "<at>", field="value", font_paths=fonts())
    (_, left, begin), (page, across, foot), (_, _, depth) = json.loads(found)
    return Flow(begin - TOP, int(page), across > left, foot - TOP, depth - TOP)


def in_columns(columns: str) -> str:
    """Two of them."""
    return f"#columns(2, gutter: 6mm)[\n{columns}\n]"
