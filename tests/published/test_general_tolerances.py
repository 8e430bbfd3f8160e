"""Tolerances of sizes that no thread standard limits, held to their printed rows (from memory)."""

import pytest

from tapmodel.shop.core_zone import core_zone
from tapmodel.standards.general_tolerances import general_zone, shaft_zone
from tapmodel.standards.tables import read_table


@pytest.mark.parametrize(
    ("size", "grade", "micrometres"),
    [
        (10.0, "it9", 36),
        (10.01, "it9", 43),
        (3.0, "it9", 25),
        (8.0, "it12", 150),
        (80.0, "it16", 1900),
        (236.0, "it16", 2900),
    ],
)
def test_shafts_of_iso_286_are_never_above_their_size(
    size: float, grade: str, micrometres: float
) -> None:
    assert shaft_zone(size, grade) == pytest.approx((size - micrometres / 1000, size), abs=5e-7)


def test_each_grade_of_iso_286_is_the_one_three_below_times_four() -> None:
    # five grades are ten times; IT12 is four times IT9, and IT16 6.3 times IT12, rounded
    for row in read_table("iso_286"):
        assert float(row["it12"]) / float(row["it9"]) == pytest.approx(4, rel=0.05)
        assert float(row["it16"]) / float(row["it12"]) == pytest.approx(6.3, rel=0.05)


@pytest.mark.parametrize(
    ("size", "off"), [(3.0, 0.1), (6.0, 0.1), (24.0, 0.2), (31.0, 0.3), (121.0, 0.5), (500.0, 0.8)]
)
def test_general_tolerances_of_iso_2768_medium_go_either_way(size: float, off: float) -> None:
    assert general_zone(size) == pytest.approx((size - off, size + off))


def test_sizes_beyond_the_tables_have_no_tolerance() -> None:
    assert general_zone(0.49) is None
    assert general_zone(1001.0) is None
    assert shaft_zone(501.0, "it9") is None


def test_a_small_core_is_held_within_a_twentieth_of_itself() -> None:
    assert core_zone(4.0) == pytest.approx((3.9, 4.1))
    assert core_zone(1.2) == pytest.approx((1.14, 1.26))
    assert core_zone(0.3) == pytest.approx((0.285, 0.315))
