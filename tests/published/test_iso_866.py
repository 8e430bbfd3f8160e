"""Centre drills of type A. Status: every row from memory of ISO 866, the rims of ISO 6411."""

import math

import pytest

from tapmodel.standards.centre_drills import centre_drill, drilled
from tapmodel.standards.tables import read_table

# rim of a centre as ISO 6411 lists it for type A: pilot, body, shortest and longest pilot [mm]
ROWS = {
    1.06: (0.5, 3.15, 0.8, 1.0),
    2.12: (1.0, 3.15, 1.3, 1.9),
    3.35: (1.6, 4.0, 2.0, 2.8),
    4.25: (2.0, 5.0, 2.5, 3.3),
    5.3: (2.5, 6.3, 3.1, 4.1),
    6.7: (3.15, 8.0, 3.9, 4.9),
    8.5: (4.0, 10.0, 5.0, 6.2),
    13.2: (6.3, 16.0, 8.0, 9.2),
    21.2: (10.0, 25.0, 12.8, 14.2),
}


@pytest.mark.parametrize("rim", ROWS)
def test_each_listed_rim_is_made_by_its_drill(rim: float) -> None:
    # the listed rims are rounded, by less than a hundredth of themselves
    drill = centre_drill(0.99 * rim)
    assert drill is not None
    assert (drill.pilot, drill.body, drill.shortest, drill.longest) == ROWS[rim]


def test_pilots_follow_the_series_r10_and_bodies_carry_the_rim() -> None:
    rows = [[float(cell) for cell in row.values()] for row in read_table("iso_866")]
    for number, (pilot, body, shortest, longest) in enumerate(rows):
        assert pilot == pytest.approx(0.5 * 10 ** (number / 10), rel=0.016)
        assert 2.12 * pilot < body
        assert pilot < shortest < longest <= 2 * pilot


@pytest.mark.parametrize("rim", [0.4, 0.5, 21.3])
def test_a_rim_that_no_drill_makes_has_none(rim: float) -> None:
    assert centre_drill(rim) is None


def test_the_drill_goes_in_by_its_pilot_and_the_cone() -> None:
    drill = centre_drill(4.0)
    assert drill is not None
    assert drill.name == "A 2 x 5"
    assert drilled(drill, 4.0) == pytest.approx((2.5 + math.sqrt(3), 3.3 + math.sqrt(3)))
