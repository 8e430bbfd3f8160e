"""Heaps of sand on sections whose volume is known."""

import math

import pytest
from section_rows import FLUTED, fluted, fluted_sector_of

from tapmodel.prediction.strength.edge import edge_of
from tapmodel.prediction.strength.outlines import square_sector
from tapmodel.prediction.strength.plastic import sand_heap
from tapmodel.shape.outlines.outline import Arc


def heap(name: str, points: int = 32) -> float:
    edge = edge_of(fluted_sector_of(name), FLUTED[name][1], points=points, even=True)
    return sand_heap(edge)


def test_cone_and_pyramid():
    piece = Arc((0.0, 0.0), 2.0, 0.0, 120.0)
    assert sand_heap(edge_of((piece,), 3, points=32, even=True)) == pytest.approx(
        2 * math.pi * 8 / 3, rel=1e-6
    )
    hollow = edge_of((piece,), 3, 1.0, points=32, even=True)
    assert sand_heap(hollow) == pytest.approx(2 * math.pi * (8 - 1) / 3, rel=1e-6)
    square = edge_of(square_sector(3.0, 9.0), 4, points=32, even=True)
    assert sand_heap(square) == pytest.approx(3.0**3 / 3, rel=1e-3)


@pytest.mark.parametrize("name", ["M3", "M6", "M10", "M20", "Tr16x4"])
def test_taps_bear_about_twice_their_first_yield(name: str):
    share = heap(name) / fluted(name).modulus
    assert 1.91 < share < 2.04
    assert share == pytest.approx(heap(name, 150) / fluted(name).modulus, rel=4e-3)
