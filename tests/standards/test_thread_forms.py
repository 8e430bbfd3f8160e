"""The basic profile against plane geometry."""

import math

import pytest

from tapmodel.standards.thread_forms import METRIC

SIX_DIGITS = 1e-6


def test_drops_follow_from_the_flats_and_the_flank_angle():
    # A flank climbs (width / tan) on radius while the groove narrows by 2 x width on the axis.
    slope = math.tan(math.radians(METRIC.flank_angle))
    assert METRIC.height == pytest.approx(1 / (2 * slope), abs=SIX_DIGITS)
    assert METRIC.pitch_drop == pytest.approx((0.5 - METRIC.crest_flat) / slope, abs=SIX_DIGITS)
    below_pitch_line = METRIC.minor_drop - METRIC.pitch_drop
    assert below_pitch_line == pytest.approx((0.5 - METRIC.root_flat) / slope, abs=SIX_DIGITS)


def test_basic_sizes_are_whole_micrometres():
    assert METRIC.pitch_diameter(12, 1.75) == 10.863
    assert METRIC.minor_diameter(12, 1.75) == 10.106
