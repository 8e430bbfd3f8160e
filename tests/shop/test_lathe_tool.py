"""The threading tool against values worked out by hand from the definitions."""

import math
from dataclasses import replace

import pytest

from tapmodel.shop.lathe_tool import Side, lathe_tool
from tapmodel.tap.tap import Tap
from tapmodel.words import Hand


def test_single_start_metric(small_tap: Tap):
    """M8x1: major 8.05, pitch diameter 7.42, root flat 0.125; tan of the lead angle = 1/(pi*d)."""
    tool = lathe_tool(small_tap.thread)
    assert tool.included_angle == 60.0
    assert (tool.nose_flat, tool.nose_radius) == (pytest.approx(0.125), 0.0)
    assert tool.crest_flat == pytest.approx(0.136269, abs=1e-6)
    # minor = 7.42 - 0.375*1.7320508 = 6.770481
    assert tool.depth == pytest.approx(0.639760, abs=1e-6)
    feeds = dict(tool.infeed_at_compound)
    assert list(feeds) == [0.0, 29.0, 29.5, 30.0]
    assert feeds[0.0] == tool.depth
    assert feeds[29.5] == pytest.approx(0.639760 * 1.1489555, abs=1e-6)
    # arctan of 0.0395419, 0.0428992 and 0.0470146
    assert tool.helix_major == pytest.approx(2.26440, abs=2e-5)
    assert tool.helix_pitch == pytest.approx(2.45643, abs=2e-5)
    assert tool.helix_minor == pytest.approx(2.69176, abs=2e-5)
    assert tool.leading_clearance == pytest.approx(5.69176, abs=2e-5)
    assert tool.trailing_clearance == pytest.approx(0.73560, abs=2e-5)
    # tan = 0.5773503*cos(2.45643 deg) = 0.5768198
    assert tool.tilted_included_angle == pytest.approx(59.95443, abs=1e-4)


def test_hand_changes_the_leading_side_and_nothing_else(small_tap: Tap):
    right = lathe_tool(small_tap.thread)
    left = lathe_tool(replace(small_tap.thread, hand=Hand.LEFT))
    assert right.leading_side is Side.HEADSTOCK
    assert left == replace(right, leading_side=Side.TAILSTOCK)


def test_several_starts_need_clearance_on_the_leading_side_only(small_tap: Tap):
    tool = lathe_tool(replace(small_tap.thread, starts=3))
    assert tool.helix_minor == pytest.approx(math.degrees(math.atan(3 * 0.0470146)), abs=1e-4)
    assert tool.trailing_clearance < 0 < tool.leading_clearance


def test_round_nose(small_tap: Tap):
    thread = small_tap.thread
    minor = thread.pitch_diameter - thread.flanks.arc_height(0.137)
    rounded = replace(thread, minor=minor, rounded_root=True)
    tool = lathe_tool(rounded)
    assert (tool.nose_flat, tool.nose_radius) == (0.0, pytest.approx(0.137))


@pytest.mark.parametrize("rounded", [False, True])
def test_a_sharp_tip_goes_deeper_to_where_the_flanks_would_meet(
    small_tap: Tap, *, rounded: bool
) -> None:
    thread = small_tap.thread
    flat, radius = 0.125, 0.137
    height = thread.flanks.arc_height(radius) if rounded else thread.flanks.height(flat)
    tool = lathe_tool(replace(thread, minor=thread.pitch_diameter - height, rounded_root=rounded))
    # a flat of 2*x*tan(30 deg) at x from the corner; an arc ends r/sin(30 deg) - r from it
    assert tool.sharp_adds == pytest.approx(radius if rounded else flat * 3**0.5 / 2, rel=1e-9)
    assert (tool.depth + tool.sharp_adds) == pytest.approx(
        (thread.major - thread.pitch_diameter) / 2 + thread.pitch * 3**0.5 / 4
    )
