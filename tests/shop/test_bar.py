"""The bar that a tap is sawn from."""

from itertools import pairwise

import pytest
from asked import settled_of

from tapmodel.shop.bar import bar_for, stocked
from tapmodel.words import ToolSizes


def test_stocked_bars_rise_in_steps_that_waste_little() -> None:
    for tools in ToolSizes:
        sizes = stocked(tools)
        assert list(sizes) == sorted(set(sizes))
        assert all(thick < 1.6 * thin for thin, thick in pairwise(sizes))
    assert stocked(ToolSizes.INCH)[-1] == pytest.approx(16 * 25.4)
    assert {3 * 25.4, 0.5625 * 25.4} < set(stocked(ToolSizes.INCH))
    assert {6.5, 11, 18, 400} < set(stocked(ToolSizes.METRIC))


def test_bar_and_piece_by_hand() -> None:
    bar = bar_for(settled_of("M18x0.75").tap, ToolSizes.METRIC)
    # 18.05 mm and a twentieth; 112 mm and twice 1 mm
    assert (bar.least, bar.diameter, bar.length) == pytest.approx((18.9525, 20, 114))
    tap = settled_of("M3").tap
    bar = bar_for(tap, ToolSizes.METRIC)
    # a shank of 3.15 mm and 0.5 mm; in front a stub of half the cutter and 1 mm, and a point
    assert (bar.least, bar.diameter) == pytest.approx((3.65, 4))
    stub = tap.flutes.cutter_diameter / 2 + 1
    assert bar.stub > stub
    assert bar.length == pytest.approx(48 + 2 + bar.stub)
