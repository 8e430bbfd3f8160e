"""Laws of indexing: the crank turns by the flute's angle, and the nearest hole is the nearest."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.shop.dividing import PLATES, RATIO, Crank, exact_moves, indexing, nearest_move

circles = st.lists(st.integers(2, 70), min_size=1, max_size=8)


def turned(crank: Crank) -> Fraction:
    return crank.turns + (Fraction(crank.holes, crank.circle) if crank.circle else 0)


@given(st.integers(2, 8), circles, st.sampled_from([1, 40, 60, 72, 90]))
def test_each_station_is_where_it_says(count: int, plates: list[int], ratio: int) -> None:
    found = indexing(count, plates, ratio)
    assert len(found.stations) == count
    assert found.stations[0].crank.turns == found.stations[0].crank.holes == 0
    for flute, station in enumerate(found.stations):
        angle = turned(station.crank) * 360 / ratio
        assert angle - Fraction(360 * flute, count) == station.error
        assert 0 <= station.crank.holes < max(station.crank.circle, 1)
    assert found.exact == (found.worst == 0)
    assert len({station.crank.circle for station in found.stations}) == 1


@given(st.integers(2, 8), circles, st.sampled_from([1, 40, 60, 72, 90]))
def test_no_circle_comes_nearer(count: int, plates: list[int], ratio: int) -> None:
    worst = indexing(count, plates, ratio).worst
    for circle in plates:
        # Half a hole at most, and no other circle beats the one that was taken.
        assert worst <= Fraction(360, ratio * circle * 2)
        assert worst <= indexing(count, [circle], ratio).worst


@given(st.integers(2, 8), circles)
def test_the_same_move_every_time_comes_round_to_the_first_flute(
    count: int, plates: list[int]
) -> None:
    for move in indexing(count, plates).moves:
        assert turned(move) * count == RATIO
        assert move.circle in {0, *plates}


def test_the_usual_plates_space_every_count_of_flutes() -> None:
    first = {count: indexing(count, PLATES).moves[0] for count in range(2, 9)}
    assert first == {
        2: Crank(20, 0, 0),
        3: Crank(13, 5, 15),
        4: Crank(10, 0, 0),
        5: Crank(8, 0, 0),
        6: Crank(6, 10, 15),
        7: Crank(5, 15, 21),
        8: Crank(5, 0, 0),
    }


def test_where_no_circle_does_each_flute_goes_to_its_nearest_hole() -> None:
    # 7 flutes on a circle of 20: 5 5/7 turns are 114 2/7 holes, so the third is at 228 4/7 -> 229.
    found = indexing(7, (16, 20))
    assert not found.exact
    assert [station.crank for station in found.stations[:4]] == [
        Crank(0, 0, 20),
        Crank(5, 14, 20),
        Crank(11, 9, 20),
        Crank(17, 3, 20),
    ]
    # 3/7 of a hole of 27 minutes: 11.571 minutes.
    assert float(found.worst * 60) == pytest.approx(11.5714, abs=1e-4)


@given(st.fractions(0, 40, max_denominator=400), circles, st.sampled_from([1, 40, 90]))
def test_one_move_is_exact_or_goes_to_the_nearest_hole_of_all(
    turns: Fraction, plates: list[int], ratio: int
) -> None:
    exact = exact_moves(turns, plates)
    assert all(turned(move) == turns for move in exact)
    whole = turns.denominator == 1
    assert [move.circle for move in exact] == (
        [0] if whole else [n for n in sorted(set(plates)) if (turns * n).denominator == 1]
    )
    nearest = nearest_move(turns, plates, ratio)
    # All holes of the turn in which it ends, and the first of the next.
    first = int(turns)
    holes = [Fraction(hole, n) for n in plates for hole in range(first * n, (first + 1) * n + 1)]
    assert (turned(nearest.crank) - turns) * 360 / ratio == nearest.error
    assert abs(turned(nearest.crank) - turns) == min(abs(hole - turns) for hole in holes)


@given(st.integers(2, 200), st.lists(st.integers(2, 70), min_size=1, max_size=5))
def test_of_many_divisions_no_circle_comes_nearer_either(count: int, plates: list[int]) -> None:
    found = indexing(count, plates)
    if not found.exact:
        each = {circle: indexing(count, [circle]).worst for circle in sorted(set(plates))}
        assert found.worst == min(each.values())
        first = next(circle for circle, worst in each.items() if worst == found.worst)
        assert {station.crank.circle for station in found.stations} == {first}
