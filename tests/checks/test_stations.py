from math import pi, sqrt

import cadquery as cq
import pytest

from tapmodel.checks.proof.stations import cut, station_heights
from tapmodel.tap.tap import Tap


def test_stations_stand_in_order_in_every_length_of_the_tap(small_tap: Tap):
    heights = station_heights(small_tap)
    assert len(heights) == 11
    assert sum(0 < z < 2.0 for z in heights.values()) == 3
    assert sum(2.0 < z < 6.0 for z in heights.values()) == 3
    assert 29.0 < heights["square"] < 36.0
    assert 6.0 < heights["neck"] < 14.0


def test_surfaces_that_taps_do_not_have_are_cut_too(small_tap: Tap):
    leaning = cq.Solid.makeCylinder(2, 100, cq.Vector(0, 0, -10), cq.Vector(1, 0, 2))
    stations = cut(small_tap, leaning)
    assert [s.z for s in stations] == sorted(station_heights(small_tap).values())
    ellipse = 4 * pi * sqrt(5) / 2
    assert [s.area for s in stations] == pytest.approx([ellipse] * 11, rel=1e-9)
