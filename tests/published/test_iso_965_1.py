"""Hole limits against published rows; `iso_965_1.csv` names source and status of each column.

Not used, because the source itself is off: threadlib's M1.4x0.3 (its D1 and D2 belong to P 0.2),
M52 (TD2 0.315 against 0.335 of its range), P 1.25 at 14 to 18 mm (TD2 0.170 against 0.180), pitches
that ISO 261 does not list, and limits that the file rounds to 0.01 mm from 105 mm up.
"""

import csv
from pathlib import Path

import pytest

from tapmodel.spec.designation import parse
from tapmodel.spec.hole_class import parse_hole_class
from tapmodel.standards.limits import HoleLimits
from tapmodel.standards.metric.hole_limits import metric_hole_limits

HALF_DIGIT = 0.0005
ROWS = list(
    csv.DictReader(
        (
            line
            for line in (Path(__file__).with_name("iso_965_1.csv")).read_text("utf-8").splitlines()
            if not line.startswith("#")
        ),
        delimiter=";",
    )
)


def limits(thread: str, hole_class: str) -> HoleLimits:
    asked = parse(f"{thread}-{hole_class}")
    found = metric_hole_limits(asked.diameter, asked.pitch, parse_hole_class(asked.effective_class))
    assert found.listed
    assert found.note == {}
    return found.limits


def printed(cell: str) -> list[float]:
    return [float(number) for number in cell.split("/")]


def cells(column: str) -> list[tuple[str, str]]:
    return [(row["thread"], row[column]) for row in ROWS if row[column] != "-"]


def test_enough_rows_are_held():
    used = sum(row[column] != "-" for row in ROWS for column in row if column.startswith("D2_"))
    assert len(ROWS) >= 45
    assert used >= 180


@pytest.mark.parametrize(("thread", "cell"), cells("D2_6H"))
def test_greatest_pitch_diameter_6h_read(thread: str, cell: str):
    assert limits(thread, "6H").pitch_max == pytest.approx(float(cell), abs=HALF_DIGIT)


@pytest.mark.parametrize(("thread", "cell"), cells("D1_6H"))
def test_minor_diameter_6h_read(thread: str, cell: str):
    found = limits(thread, "6H")
    assert [found.minor_min, found.minor_max] == pytest.approx(printed(cell), abs=HALF_DIGIT)


@pytest.mark.parametrize(("thread", "cell"), cells("D2_min"))
def test_least_pitch_and_major_diameter_of_position_h_read(thread: str, cell: str):
    found = limits(thread, "6H")
    assert found.pitch_min == pytest.approx(float(cell), abs=HALF_DIGIT)
    assert found.major_min == parse(thread).diameter


@pytest.mark.parametrize("grade", ["4H", "5H"])
def test_greatest_pitch_diameter_4h_5h_from_memory(grade: str):
    for thread, cell in cells(f"D2_{grade}"):
        found = limits(thread, grade)
        assert found.pitch_max == pytest.approx(float(cell), abs=HALF_DIGIT), thread


@pytest.mark.parametrize(("thread", "cell"), cells("D2_6G"))
def test_pitch_diameter_6g_derived(thread: str, cell: str):
    found = limits(thread, "6G")
    assert [found.pitch_min, found.pitch_max] == pytest.approx(printed(cell), abs=HALF_DIGIT)


@pytest.mark.parametrize(("thread", "cell"), cells("D1_6G"))
def test_minor_and_major_diameter_6g_derived(thread: str, cell: str):
    found, plain = limits(thread, "6G"), limits(thread, "6H")
    assert [found.minor_min, found.minor_max] == pytest.approx(printed(cell), abs=HALF_DIGIT)
    shift = printed(cell)[0] - plain.minor_min
    assert found.major_min == pytest.approx(plain.major_min + shift, abs=HALF_DIGIT)


# ASME B1.13M-2005, internal threads 6H in inches, read in screw_thread_lib 0.0.6 data/ASME.py.
ASME_B1_13M = {
    "M8x1.25": (0.26169, 0.27213, 0.28299, 0.28929),
    "M12x1.75": (0.39787, 0.41106, 0.42768, 0.43555),
    "M20x2.5": (0.68087, 0.69858, 0.72346, 0.73228),
    "M24x3": (0.81701, 0.83669, 0.86815, 0.87858),
}


@pytest.mark.parametrize("thread", ASME_B1_13M)
def test_the_american_rows_in_inches_agree(thread: str):
    found = limits(thread, "6H")
    metric = (found.minor_min, found.minor_max, found.pitch_min, found.pitch_max)
    half_digit = 0.000005 + 1e-9
    assert [size / 25.4 for size in metric] == pytest.approx(ASME_B1_13M[thread], abs=half_digit)


# TD1 grades 4, 5, 6, 7, read in Machinery's Handbook 27th ed. p. 1794 (µm).
TD1 = {
    0.5: (90, 112, 140, 180),
    0.6: (100, 125, 160, 200),
    0.7: (112, 140, 180, 224),
}


@pytest.mark.parametrize("pitch", TD1)
def test_minor_tolerances_of_four_grades_read(pitch: float):
    for grade, micrometres in zip("4567", TD1[pitch], strict=True):
        found = limits("M4x0.7" if pitch == 0.7 else f"M3.5x{pitch}", f"{grade}H")
        assert found.minor_max - found.minor_min == pytest.approx(micrometres / 1000, abs=1e-9)
