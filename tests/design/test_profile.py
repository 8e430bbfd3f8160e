import math
from dataclasses import replace

import numpy as np
import pytest

from tapmodel.shape.profile import profile_radius, segments
from tapmodel.tap.tap import Tap, TapThread

PITCH = 1.25


@pytest.fixture
def whitworth(small_tap: Tap) -> TapThread:
    """The basic profile of BS 84 on a major diameter of 10.

    Depth 0.640327 p, radius 0.137329 p: BS 84 as read in Machinery's Handbook 31st ed. p. 2087.
    """
    return replace(
        small_tap.thread,
        pitch=PITCH,
        flank_angle=27.5,
        major=10.0,
        pitch_diameter=10.0 - 0.640327 * PITCH,
        minor=10.0 - 2 * 0.640327 * PITCH,
        rounded_crest=True,
        rounded_root=True,
    )


def test_the_published_radius_and_depth_meet_the_flanks(whitworth: TapThread) -> None:
    assert whitworth.crest_flat == 0
    assert whitworth.crest_radius == pytest.approx(0.137329 * PITCH, abs=1e-6 * PITCH)
    assert whitworth.root_flat == 0
    assert whitworth.root_radius == pytest.approx(0.137329 * PITCH, abs=1e-6 * PITCH)
    crest, flank, root, _ = segments(whitworth)
    slope = -1 / math.tan(math.radians(27.5))
    assert flank.slope == pytest.approx(slope, rel=1e-5)
    assert float(flank.radius(np.array(PITCH / 4))) == pytest.approx(
        whitworth.pitch_diameter / 2, abs=1e-6 * PITCH
    )
    assert crest.end == pytest.approx(-crest.start)
    assert root.middle == pytest.approx(PITCH / 2)


def test_a_rounded_profile_has_no_corner(whitworth: TapThread) -> None:
    step = 1e-7
    parts = segments(whitworth)
    for segment in parts:
        places = np.array([segment.end - step, segment.end, segment.end + step])
        before, after = np.diff(profile_radius(parts, places)) / step
        assert before == pytest.approx(after, abs=1e-4)


def test_extremes_and_periods(whitworth: TapThread) -> None:
    w = np.linspace(-2 * PITCH, 3 * PITCH, 4001)
    radius = profile_radius(segments(whitworth), w)
    assert radius.max() == pytest.approx(whitworth.major / 2, abs=1e-9)
    assert radius.min() == pytest.approx(whitworth.minor / 2, abs=1e-6)
    shifted = profile_radius(segments(whitworth), w + PITCH)
    assert shifted == pytest.approx(radius, abs=1e-12)


def test_area_of_a_crest_arc_is_that_of_the_circle_segment(whitworth: TapThread) -> None:
    crest = segments(whitworth)[0]
    w = np.linspace(crest.start, crest.end, 20001)
    area = np.trapezoid(crest.radius(w) - crest.start_radius, w)
    swept = math.radians(180 - 55)
    assert area == pytest.approx(crest.arc**2 / 2 * (swept - math.sin(swept)), rel=1e-6)


def test_flats_are_flat_and_flanks_straight(small_tap: Tap) -> None:
    thread = small_tap.thread
    parts = segments(thread)
    w = np.linspace(-thread.crest_flat / 2, thread.crest_flat / 2, 5)
    assert profile_radius(parts, w) == pytest.approx(thread.major / 2, abs=1e-15)
    w = np.array([thread.pitch / 4, -thread.pitch / 4])
    assert profile_radius(parts, w) == pytest.approx(thread.pitch_diameter / 2, abs=1e-12)
