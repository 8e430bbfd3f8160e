import numpy as np
import pytest

from tapmodel.geometry import loops
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


def _rows(count: int) -> list[np.ndarray]:
    """Squares one behind the other, every third with a hole, and one frame around all."""
    squares = [_square((3.0 * n, 0.1 * n), 1.0) for n in range(count)]
    holes = [_square((3.0 * n, 0.1 * n), 0.4) for n in range(0, count, 3)]
    frame = _square((1.5 * count, 0.0), 2.0 * count)
    shuffled = np.random.default_rng(7).permutation(len(squares) + len(holes) + 1)
    every = [*squares, *holes, frame]
    return [every[n] for n in shuffled]


def test_many_cycles_nest_as_each_asked_of_each_says() -> None:
    cycles = _rows(60)
    depth = [sum(contains(a, b[0]) for a in cycles if a is not b) for b in cycles]
    assert max(depth) == 2
    expected = {n: set[int]() for n, deep in enumerate(depth) if deep % 2 == 0}
    for n, deep in enumerate(depth):
        if deep % 2:
            around = [m for m, a in enumerate(cycles) if m != n and contains(a, cycles[n][0])]
            expected[max(around, key=lambda m: depth[m])].add(n)
    assert {n: set(holes) for n, holes in nested(cycles)} == expected


def test_questions_grow_with_the_cycles_and_not_with_their_square(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    asked = 0

    def counted(polygon: np.ndarray, point: np.ndarray) -> bool:
        nonlocal asked
        asked += 1
        return contains(polygon, point)

    monkeypatch.setattr(loops, "contains", counted)
    nested(_rows(900))
    # Each cycle asks the frame and its own row.
    assert asked < 3 * 1200
