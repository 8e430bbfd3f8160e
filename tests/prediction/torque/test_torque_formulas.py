"""Printed formulas of the tapping torque, cell by cell, each with its own constants."""

from dataclasses import replace

import pytest
from ideal_chips import plain_tap

from tapmodel.prediction.torque.formulas import (
    formula_a,
    formula_b,
    formula_c,
    is_coarse,
    torque_by_a,
    torque_by_b,
    torque_by_c,
)
from tapmodel.standards.materials.work import work_material, work_materials
from tapmodel.tap.tap import TapThread

# Thread, diameter, pitch, drill
SIZES = [
    ("M6", 6.0, 1.0, 5.0),
    ("M8", 8.0, 1.25, 6.8),
    ("M10", 10.0, 1.5, 8.5),
    ("M12", 12.0, 1.75, 10.2),
    ("M20", 20.0, 2.5, 17.5),
]
DIGITS = 0.0051


@pytest.mark.parametrize(
    ("size", "by_a", "by_b"),
    list(
        zip(
            SIZES,
            (0.385, 0.748, 1.461, 2.525, 8.269),
            (0.750, 1.562, 2.812, 4.594, 15.625),
            strict=True,
        )
    ),
)
def test_the_chip_integral_of_a_force_of_1000(
    size: tuple[str, float, float, float], by_a: float, by_b: float
) -> None:
    _, diameter, pitch, drill = size
    assert formula_a(diameter, drill, 30.0, 1000.0, 1.0) == pytest.approx(by_a, abs=6e-4)
    assert formula_b(diameter, pitch, 1000.0) == pytest.approx(by_b, abs=6e-4)


# Turns of chamfer 5 = plug, 1.5 = bottoming; columns M6 to M20
FORMULA_A = [
    ("C45", 5.0, (2.03, 3.94, 7.69, 13.30, 43.54)),
    ("C45", 1.5, (2.15, 4.17, 8.15, 14.08, 46.12)),
    ("42CrMo4", 5.0, (1.87, 3.64, 7.10, 12.27, 40.19)),
    ("42CrMo4 30 HRC", 5.0, (2.55, 4.95, 9.67, 16.71, 54.70)),
    ("42CrMo4 40 HRC", 5.0, (2.86, 5.56, 10.85, 18.75, 61.40)),
    ("EN-GJL-250", 5.0, (1.40, 2.71, 5.30, 9.15, 29.98)),
    ("EN AC-46200", 5.0, (0.63, 1.22, 2.37, 4.10, 13.44)),
    ("CuZn40", 5.0, (1.42, 2.75, 5.38, 9.29, 30.43)),
    ("X5CrNi18-10", 5.0, (2.18, 4.24, 8.29, 14.32, 46.89)),
]
FORMULA_B = [
    ("C45", (1.88, 3.91, 7.03, 11.48, 39.06)),
    ("42CrMo4", (1.95, 4.06, 7.31, 11.94, 40.62)),
    ("42CrMo4 30 HRC", (2.70, 5.62, 10.12, 16.54, 56.25)),
    ("EN-GJL-250", (0.94, 1.95, 3.52, 5.74, 19.53)),
    ("EN AC-46200", (0.51, 1.06, 1.91, 3.12, 10.62)),
    ("EN AW-6082", (0.60, 1.25, 2.25, 3.67, 12.50)),
]
FORMULA_C = [("C45", (3.32, 6.94, 12.46, 20.27, 70.75))]


def thread(pitch: float) -> TapThread:
    return replace(plain_tap().thread, pitch=pitch)


@pytest.mark.parametrize(("name", "turns", "row"), FORMULA_A)
def test_every_cell_of_formula_a(name: str, turns: float, row: tuple[float, ...]) -> None:
    for (_, diameter, pitch, drill), cell in zip(SIZES, row, strict=True):
        found = torque_by_a(work_material(name), thread(pitch), diameter, drill, turns)
        assert found == pytest.approx(cell, abs=DIGITS)


@pytest.mark.parametrize(("name", "row"), FORMULA_B)
def test_every_cell_of_formula_b(name: str, row: tuple[float, ...]) -> None:
    for (_, diameter, pitch, _), cell in zip(SIZES, row, strict=True):
        found = torque_by_b(work_material(name), thread(pitch), diameter)
        assert found == pytest.approx(cell, abs=DIGITS)


@pytest.mark.parametrize(("name", "row"), FORMULA_C)
def test_every_cell_of_formula_c(name: str, row: tuple[float, ...]) -> None:
    for (_, diameter, pitch, _), cell in zip(SIZES, row, strict=True):
        found = torque_by_c(work_material(name), thread(pitch), diameter)
        assert found == pytest.approx(cell, abs=DIGITS)


def test_the_row_of_an_end_of_life_test_in_iron() -> None:
    # M12x1.5 in GG25, drill 10.5: K fine 1.08 or coarse 1.25; B; C
    iron = work_material("GG25")
    fine = torque_by_a(iron, thread(1.5), 12.0, 10.5, 4.0)
    assert fine == pytest.approx(5.6, abs=0.05)
    assert formula_a(12.0, 10.5, 30.0, 2900.0, 1.25) == pytest.approx(6.5, abs=0.05)
    assert torque_by_b(iron, thread(1.5), 12.0) == pytest.approx(4.2, abs=0.05)
    assert formula_c(12.0, 1.5, "grey iron") == pytest.approx(7.7, abs=0.1)


def test_the_two_makers_agree_within_16_percent_for_steel() -> None:
    for name, low, high in (("C45", 0.0, 16.0), ("42CrMo4", -10.5, 3.5)):
        for _, diameter, pitch, drill in SIZES:
            a = torque_by_a(work_material(name), thread(pitch), diameter, drill, 5.0)
            b = torque_by_b(work_material(name), thread(pitch), diameter)
            assert a is not None
            assert b is not None
            assert low < 100 * (a / b - 1) < high


def test_none_where_no_table_has_a_row() -> None:
    v, magnesium = thread(1.5), work_material("magnesium")
    assert torque_by_a(magnesium, v, 10.0, 8.5, 4.0) is None
    assert torque_by_b(magnesium, v, 10.0) is None
    assert torque_by_c(magnesium, v, 10.0) is None
    brass = work_material("brass")
    # its column for fine bottoming taps is empty
    assert torque_by_a(brass, thread(1.0), 10.0, 9.0, 1.5) is None
    assert torque_by_a(brass, thread(1.0), 10.0, 9.0, 4.0) == pytest.approx(
        formula_a(10.0, 9.0, 30.0, 2300.0, 1.12)
    )


def test_none_for_a_thread_that_is_no_v() -> None:
    steel, steep = work_material("C45"), replace(thread(4.0), flank_angle=15.0)
    assert torque_by_a(steel, steep, 16.0, 12.0, 8.0) is None
    assert torque_by_b(steel, steep, 16.0) is None
    assert torque_by_c(steel, steep, 16.0) is None
    ba = replace(thread(0.81), flank_angle=23.75)
    assert torque_by_b(steel, ba, 4.7) is not None


def test_each_of_several_threads_takes_its_own_torque() -> None:
    steel, one = work_material("C45"), thread(1.5)
    two = replace(one, starts=2)
    for double, single in (
        (torque_by_a(steel, two, 20.0, 18.5, 4.0), torque_by_a(steel, one, 20.0, 18.5, 4.0)),
        (torque_by_b(steel, two, 20.0), torque_by_b(steel, one, 20.0)),
    ):
        assert single is not None
        assert double == pytest.approx(2 * single)


def test_formula_c_is_left_to_coarse_threads() -> None:
    assert torque_by_c(work_material("C45"), thread(0.75), 18.0) is None


@pytest.mark.parametrize(
    ("diameter", "pitch", "coarse"),
    [
        *((10.0, 1.5, True), (10.0, 1.25, False), (8.0, 1.25, True), (8.0, 1.0, False)),
        *((12.0, 1.5, False), (6.35, 25.4 / 20, True), (6.35, 25.4 / 28, False)),
        *((12.7, 25.4 / 13, True), (12.7, 25.4 / 20, False), (18.0, 0.75, False), (200, 6, True)),
    ],
)
def test_what_counts_as_coarse(diameter: float, pitch: float, coarse: bool) -> None:
    assert is_coarse(diameter, pitch) is coarse


def test_every_material_that_has_a_force_for_a_has_a_factor() -> None:
    for material in work_materials():
        found = torque_by_a(material, thread(1.5), 10.0, 8.5, 4.0)
        assert (found is None) == (material.torque_a is None), material.name
