"""The printed tolerances of ISO trapezoidal nuts against the formulas behind them."""

import math
from itertools import product

import pytest

from tapmodel.standards.metric.formulas import computed_minor_tolerance, diameter_range
from tapmodel.standards.metric.r40 import whole_micrometres
from tapmodel.standards.tables import read_table
from tapmodel.standards.trapezoidal.tolerances import pitch_tolerance

GRADES = (7, 8, 9)
TD2_FACTORS = {7: 1.7, 8: 2.12, 9: 2.65}

# Cells of the printed tables that are not the formula rounded to R40: (formula and R40, printed).
# Grade 7 of TD2 and all of TD1 read; grades 8 and 9 from memory.
PITCH_EXCEPTIONS = {
    (11.2, 1.5, 9): (335, 355),
    (11.2, 2.0, 9): (375, 400),
    (11.2, 3.0, 7): (300, 280),
    (22.4, 3.0, 7): (315, 300),
    (22.4, 3.0, 8): (400, 375),
    (22.4, 3.0, 9): (500, 475),
    (22.4, 8.0, 8): (560, 600),
    (22.4, 8.0, 9): (710, 750),
    (45.0, 8.0, 9): (750, 800),
    (45.0, 12.0, 7): (600, 560),
    (90.0, 9.0, 9): (850, 900),
    (90.0, 10.0, 7): (600, 560),
    (90.0, 18.0, 8): (900, 950),
    (90.0, 18.0, 9): (1120, 1180),
    (355.0, 4.0, 7): (475, 500),
    (355.0, 4.0, 8): (560, 630),
    (355.0, 4.0, 9): (710, 800),
    (355.0, 36.0, 9): (1700, 1800),
    (355.0, 40.0, 7): (1180, 1120),
    (355.0, 40.0, 8): (1500, 1400),
    (355.0, 44.0, 7): (1180, 1250),
}


def test_printed_pitch_tolerances_are_the_rounded_formula_but_for_the_listed_cells():
    different = {}
    for row, grade in product(read_table("trapezoidal_td2"), GRADES):
        mean = math.sqrt(float(row["over"]) * float(row["to"]))
        assert diameter_range(mean) == (float(row["over"]), float(row["to"]))
        formula = TD2_FACTORS[grade] * 90 * float(row["pitch"]) ** 0.4 * mean**0.1
        if whole_micrometres(formula) != int(row[str(grade)]):
            cell = (float(row["to"]), float(row["pitch"]), grade)
            different[cell] = (whole_micrometres(formula), int(row[str(grade)]))
    assert different == PITCH_EXCEPTIONS


def test_printed_minor_tolerances_are_grade_4_of_iso_965_1():
    rows = {float(row["pitch"]): int(row["td1"]) for row in read_table("trapezoidal_td1")}
    metric = {float(row["pitch"]): int(row["4"] or 0) for row in read_table("td1")}
    shared = [pitch for pitch in rows if metric.get(pitch)]
    assert len(shared) == 7
    assert all(rows[pitch] == metric[pitch] for pitch in shared)
    different = {p: v for p, v in rows.items() if computed_minor_tolerance(p, 4) != v}
    assert different == {12.0: 800}  # formula 825, R40 850


# Each formula value [µm], k x 90 P^0.4 d^0.1, lies within 1 % of where the next R40 number begins.
@pytest.mark.parametrize(
    ("diameter", "pitch", "grade", "rounded"),
    [
        (60, 2, 7, 300),  # 305.83, from 307.5 on 315
        (100, 1.5, 7, 300),  # 292.15, up to 290 280
        (30, 9, 8, 630),  # 649.30, from 650 on 670
        (20, 3.5, 8, 425),  # 415.13, up to 412.5 400
        (60, 5, 9, 670),  # 687.78, from 690 on 710
        (20, 3.5, 9, 530),  # 518.91, up to 515 500
    ],
)
def test_computed_pitch_tolerance(diameter: float, pitch: float, grade: int, rounded: int):
    found = pitch_tolerance(diameter, pitch, grade)
    assert (found.micrometres, found.printed) == (rounded, False)
