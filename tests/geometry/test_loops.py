import numpy as np

from tapmodel.geometry.loops import contains, nested


def _square(centre: tuple[float, float], half: float) -> np.ndarray:
    return np.array(centre) + half * np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]])


def test_a_point_inside_is_told_from_one_outside() -> None:
    assert contains(_square((0.0, 0.0), 1.0), np.array([0.9, -0.9]))
    assert not contains(_square((0.0, 0.0), 1.0), np.array([1.1, 0.0]))


def test_a_hole_goes_to_the_cycle_around_it_and_an_island_in_it_is_a_face() -> None:
    outer, hole, island = (_square((0.0, 0.0), half) for half in (5.0, 3.0, 1.0))
    apart = _square((20.0, 0.0), 1.0)
    assert nested([island, apart, outer, hole]) == [(0, []), (1, []), (2, [3])]
