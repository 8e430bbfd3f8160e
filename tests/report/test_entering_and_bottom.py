"""What lets a tap into its hole, and how deep a hole with a bottom is made."""

import math

import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Length, Row, Rows
from tapmodel.report.chapters import key_numbers
from tapmodel.report.chapters.tap import chamfer, hole
from tapmodel.report.units import Units, aimed, shown_high
from tapmodel.report.view.first import first_figures


def _rows(of: object, design: TapDesign) -> dict[str, Row]:
    section = of.chapter(design)  # type: ignore[attr-defined]
    found = (block for block in section.blocks if isinstance(block, Rows))
    return {str(row.label): row for block in found for row in block.rows}


@pytest.mark.parametrize("text", ["M64x1", "M10", "1/2 BSW", "Tr12x3", "M27x0.75"])
def test_a_point_within_its_limit_enters_the_smallest_hole(text: str) -> None:
    design = settled_of(text)
    point = _rows(chamfer, design)["point diameter"]
    assert point.high is not None
    assert point.high.mm == (design.hole.minor_min if design.bored else design.drill)
    assert isinstance(point.value, Length)
    assert point.value.mm < point.high.mm
    # the length is no size of its own: two of three settle the third
    length = _rows(chamfer, design)["length, follows from these"]
    assert (length.low, length.high, length.measured) == (None, None, False)
    rise = (design.tap.thread.major - point.value.mm) / 2
    assert isinstance(length.value, Length)
    slope = math.tan(math.radians(design.tap.chamfer.angle))
    assert length.value.mm == pytest.approx(rise / slope)


def test_a_blind_hole_is_drilled_below_its_full_thread() -> None:
    design = settled_of("M10", ["hole.kind=blind", "hole.depth=15"])
    rows = _rows(hole, design)
    # 15 mm, four pitches of chamfer and one of room
    drilled = rows["hole, depth of its full diameter"].value
    assert isinstance(drilled, Length)
    assert drilled.mm == pytest.approx(15 + 4 * 1.5 + 1.5)
    for label, depth in (
        ("stop with the tap's front so deep", 21.0),
        ("unfinished thread below, the tap's chamfer", 6.0),
    ):
        value = rows[label].value
        assert isinstance(value, Length)
        assert value.mm == pytest.approx(depth)
    assert "hole, depth of its full diameter" not in _rows(hole, settled_of("M10"))


def test_the_depth_to_drill_is_never_rounded_to_less() -> None:
    # 18 + 5 * 1.25 mm
    design = settled_of("M14x1.25", ["hole.kind=blind", "hole.depth=18"])
    for rooms in (hole, key_numbers):
        row = _rows(rooms, design)["hole, depth of its full diameter"]
        assert (aimed(row), aimed(row, Units.INCH)) == (("24.3 mm",), ("0.955 in",))
    (card,) = [one for one in first_figures(design, Units.MM) if one.key == "drill"]
    assert card.beside.replace("\u00a0", " ").endswith("full diameter at least 24.3 mm deep")


def test_a_size_that_is_its_own_limit_is_not_rounded_beyond_it() -> None:
    # 31.5 mm are 1.240157 in
    row = Row("across flats", Length(31.5), Length(31.25), Length(31.5))
    assert aimed(row, Units.INCH) == shown_high(Length(31.5), Units.INCH) == ("1.2401 in",)
    assert aimed(Row("free", Length(31.5)), Units.INCH) == ("1.2402 in",)
    assert aimed(Row("least", Length(31.5), low=Length(31.5)), Units.INCH) == ("1.2402 in",)
    assert aimed(Row("least", Length(8.0003), low=Length(8.0003)), Units.MM) == ("8.001 mm",)
