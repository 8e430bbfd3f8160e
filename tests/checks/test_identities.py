"""What follows from the fields of a definition, which the proof takes as given: by hand here."""

import math
from dataclasses import replace

import designs
import pytest

from tapmodel.tap.tap import Tap

# Depth of the Whitworth thread and its roundings, in pitches (BS 84, from memory).
DEPTH, ROUNDING = 0.640327, 0.137329


def test_flats_end_where_the_flanks_do(small_tap: Tap) -> None:
    thread, slope = small_tap.thread, math.tan(math.radians(30.0))
    assert thread.minor == pytest.approx(7.42 - (0.5 - 0.125) / slope, rel=1e-12)
    assert thread.root_flat == pytest.approx(0.125, rel=1e-12)
    assert thread.root_radius == 0.0
    assert thread.crest_flat == pytest.approx(0.5 - (8.05 - 7.42) * slope, rel=1e-12)
    assert thread.crest_radius == 0.0


def test_arcs_are_those_of_the_whitworth_thread(small_tap: Tap) -> None:
    thread = replace(
        small_tap.thread,
        flank_angle=27.5,
        major=20.0 + DEPTH,
        pitch_diameter=20.0,
        minor=20.0 - DEPTH,
        rounded_crest=True,
        rounded_root=True,
    )
    assert thread.crest_radius == pytest.approx(ROUNDING, rel=1e-5)
    assert thread.root_radius == pytest.approx(ROUNDING, rel=1e-5)
    assert (thread.crest_flat, thread.root_flat) == (0.0, 0.0)


def test_lead_core_directions_and_lengths(small_tap: Tap) -> None:
    assert small_tap.thread.lead == 1.0
    assert designs.two_starts().thread.lead == 3.5
    assert small_tap.flutes.core_diameter == pytest.approx(2 * math.sqrt(10.4) - 3.4, rel=1e-12)
    assert small_tap.flutes.angles == (0.0, 120.0, 240.0)
    assert small_tap.blank.square_start == 29.0
    assert small_tap.chamfer_length == pytest.approx(2.0, rel=1e-12)
