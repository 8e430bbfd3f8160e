import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.shop.wires.rising_root import rising_root


@given(st.floats(1e-6, 100.0))
def test_root_to_the_last_bits(root: float):
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


def test_no_root_above_the_beginning():
    assert rising_root(lambda x: x, 0.5, 2.0) == 0.5
