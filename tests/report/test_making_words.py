"""What the sheet tells of the making, in words and numbers that leave nothing to be guessed."""

import math

import pytest

from tapmodel.designing.design import design_tap
from tapmodel.report.blocks import Angle, Length, Table
from tapmodel.report.chapters.machines import threading_tool
from tapmodel.spec.job_file import job_for


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
