import numpy as np
import pytest

from tapmodel.checks.ideal.roots import bracketed_root


def test_many_roots_at_once_kinks_and_steep_ends_included():
    target = np.array([0.0, 1e-9, 0.3, 2.0, 26.9, 27.0])
    found = bracketed_root(lambda x: np.cbrt(x) - np.cbrt(target), 0 * target, target * 0 + 27.0)
    assert found == pytest.approx(target, abs=1e-12)
    kinked = bracketed_root(
        lambda x: np.where(x < 1, x - 1, 50 * (x - 1)) + 1e-3 * (target - 3),
        target * 0 - 4,
        target * 0 + 9,
    )
    below = 1e-3 * (3 - target)
    assert kinked == pytest.approx(np.where(below > 0, 1 + below / 50, 1 + below), abs=1e-13)


def test_without_a_change_of_sign_the_answer_is_the_low_end():
    low = np.array([1.0, 2.0])
    assert list(bracketed_root(lambda x: x + 1, low, low + 5)) == [1.0, 2.0]
