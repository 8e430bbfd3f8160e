"""The preferred numbers and how tolerances are rounded to them."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.standards.metric.r40 import R40, round_to_r40, whole_micrometres


def test_series_is_the_fortieth_root_of_ten_rounded():
    # ISO 3 rounds the theoretical values by at most 1.3 %.
    for index, number in enumerate(R40):
        assert number / 100 == pytest.approx(10 ** (index / 40), rel=0.013)
    assert len(R40) == 40


@given(st.floats(0.1, 5000))
def test_result_is_a_member_and_no_other_member_is_nearer(value: float):
    rounded = round_to_r40(value)
    members = [n * 10.0**k for k in range(-4, 3) for n in R40]
    assert min(abs(m - rounded) for m in members) < 1e-9
    assert abs(rounded - value) <= min(abs(m - value) for m in members) + 1e-9


@pytest.mark.parametrize(
    ("value", "rounded"), [(103.0, 100), (102.9, 100), (103.1, 106), (975.1, 1000), (64.5, 63)]
)
def test_nearest_and_half_way(value: float, rounded: float):
    assert round_to_r40(value) == pytest.approx(rounded)


def test_half_micrometres_go_to_the_even_number():
    assert [whole_micrometres(v) for v in (26.5, 31.5, 37.5, 42.5)] == [26, 32, 38, 42]


@given(st.floats(0.1, 5000), st.floats(0.1, 5000))
def test_rounding_keeps_order(one: float, other: float):
    small, large = sorted((one, other))
    assert round_to_r40(small) <= round_to_r40(large)
    assert all(a < b for a, b in pairwise(R40))
