"""Roots, borders and extrema of functions whose answers are known exactly."""

import math
from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.numerics import border, borders, bracketed_roots, distinct, lowest, rising_root


def test_many_roots_at_once_kinks_and_steep_ends_included():
    target = np.array([0.0, 1e-9, 0.3, 2.0, 26.9, 27.0])
    found = bracketed_roots(lambda x: np.cbrt(x) - np.cbrt(target), 0 * target, target * 0 + 27.0)
    assert found == pytest.approx(target, abs=1e-12)
    kinked = bracketed_roots(
        lambda x: np.where(x < 1, x - 1, 50 * (x - 1)) + 1e-3 * (target - 3),
        target * 0 - 4,
        target * 0 + 9,
    )
    below = 1e-3 * (3 - target)
    assert kinked == pytest.approx(np.where(below > 0, 1 + below / 50, 1 + below), abs=1e-13)


def test_without_a_change_of_sign_the_answer_is_the_low_end():
    low = np.array([1.0, 2.0])
    assert list(bracketed_roots(lambda x: x + 1, low, low + 5)) == [1.0, 2.0]


@pytest.mark.parametrize("way", [1.0, -1.0])
def test_a_root_at_an_end_is_found_beside_others(way: float):
    root = np.array([-3.0, 5.0, 1.25])
    found = bracketed_roots(lambda x: way * (x - root) * (x + 20), root * 0 - 3.0, root * 0 + 5.0)
    assert list(found) == [-3.0, 5.0, 1.25]


def test_a_coarser_root_costs_fewer_rounds():
    root, calls = np.array([0.3, 0.7]), [0, 0]

    def counted(which: int) -> Callable[[np.ndarray], np.ndarray]:
        def function(x: np.ndarray) -> np.ndarray:
            calls[which] += 1
            return np.exp(x) - np.exp(root)

        return function

    coarse = bracketed_roots(counted(0), root * 0, root * 0 + 1.0, 1e-2)
    fine = bracketed_roots(counted(1), root * 0, root * 0 + 1.0)
    assert calls[0] < calls[1]
    assert coarse == pytest.approx(root, abs=1e-2)
    assert fine == pytest.approx(root, abs=5e-16)


@given(st.floats(1e-6, 100.0))
def test_a_rising_root_to_the_last_bits(root: float):
    found = rising_root(lambda x: x**3 - root**3, 0.0, 200.0)
    assert found == pytest.approx(root, rel=4e-16)


def test_few_calls_where_the_function_is_nearly_straight():
    """Bisection would call some 55 times."""
    calls: list[float] = []

    def rising(x: float) -> float:
        calls.append(x)
        return x + 0.1 * math.sin(x) - 2.0

    found = rising_root(rising, 0.0, 5.0)
    assert len(calls) < 20
    assert rising(found) == pytest.approx(0.0, abs=1e-15)


def test_no_root_between_the_ends():
    assert rising_root(lambda x: x, 0.5, 2.0) == 0.5
    assert rising_root(lambda x: x - 2.0, 0.5, 2.0) == 2.0


@given(st.floats(1e-3, 99.0))
def test_a_border_is_found_to_the_last_bit(place: float):
    low, high = border(lambda x: x <= place, 0.0, 100.0)
    assert low <= place <= high
    # Sixty halvings of a hundred.
    assert high - low <= 2 * max(math.ulp(place), 100.0 * 2.0**-60)
    (found,) = borders(lambda x: x <= place, np.zeros(1), np.full(1, 100.0))
    assert low <= found <= high


def test_a_border_may_be_asked_for_roughly():
    low, high = border(lambda x: x <= 50.3, 0.0, 100.0, 1e-3)
    assert low <= 50.3 < high
    # Relative above 1, and no closer than a halving more would be.
    assert 0.5e-3 * 50.3 / 1.01 < high - low <= 1e-3 * high


def test_the_lowest_place_of_a_curve():
    assert lowest(lambda x: (x - 0.37) ** 2, -2.0, 1.0) == pytest.approx(0.37, abs=1e-8)
    # A kink is placed as exactly as the thirds go.
    assert lowest(lambda x: abs(x - 0.37), -2.0, 1.0) == pytest.approx(0.37, abs=1e-10)
    assert lowest(lambda x: x, 2.0, 5.0) == pytest.approx(2.0, abs=1e-9)


@given(st.lists(st.integers(-5, 5)))
def test_different_whole_numbers_are_those_of_a_set(numbers: list[int]):
    assert distinct(np.array(numbers, dtype=np.intp)).tolist() == sorted({*numbers})
    pairs = np.array([numbers, numbers], dtype=np.intp)
    assert distinct(pairs).tolist() == sorted({*numbers})
