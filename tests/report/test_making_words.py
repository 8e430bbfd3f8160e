"""What the sheet tells of the making, in words and numbers that leave nothing to be guessed."""

import math

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.report.blocks import Angle, Chapter, Length, Row, Rows, Table
from tapmodel.report.chapters.machines import threading_tool
from tapmodel.report.chapters.order import OPERATIONS
from tapmodel.report.drawings.catalogue import all_drawings
from tapmodel.report.units import told
from tapmodel.spec.job_file import job_for


def _rows(chapter: Chapter) -> list[Row]:
    return [row for block in chapter.blocks if isinstance(block, Rows) for row in block.rows]


def test_how_much_deeper_a_sharp_nose_goes() -> None:
    design = design_tap(job_for("1/2 BSW"))
    (table,) = (b for b in threading_tool.chapter(design).blocks if isinstance(b, Table))
    told = {
        line[0].degrees: line[-1].mm
        for line in table.lines
        if isinstance(line[0], Angle) and isinstance(line[-1], Length)
    }
    assert table.head[-1] == "sharp nose adds"
    deeper = design.tap.thread.root_radius * (1 / math.sin(math.radians(27.5)) - 1)
    assert told[0.0] == pytest.approx(deeper)
    assert told[27.5] == pytest.approx(deeper / math.cos(math.radians(27.5)))


@pytest.mark.parametrize("text", ["1/2 BSW LH", "M10"])
def test_the_squares_length_and_the_taps_alone_say_where_the_square_begins(text: str) -> None:
    """A third length with limits of its own would contradict the limits of both."""
    design = design_tap(job_for(text))
    rows = [row for section in OPERATIONS for row in _rows(section(design))]
    blank = design.tap.blank
    lengths = {
        row.label: row.value.mm
        for row in rows
        if isinstance(row.value, Length) and "from the rear end" in told(row.label)
    }
    assert lengths == {"length, from the rear end": blank.square_length}
    assert not any(
        isinstance(row.value, Length) and math.isclose(row.value.mm, blank.square_start)
        for row in rows
    )
    words = {
        entity.dxf.text
        for entity in all_drawings(design)["side"].document.modelspace().query("TEXT")
    }
    assert not any(f"{blank.square_start:g} " in text for text in words)
    assert any("lengths from the cutting end but the square's" in text for text in words)
