"""Kienzle tooth by tooth on chips made by hand, beside the two printed formulas."""

import numpy as np
import pytest
from ideal_chips import of_one_force, plain_tap, through, v_chips

from tapmodel.designing.settle import settle
from tapmodel.prediction.chips.record import Chips
from tapmodel.prediction.chips.teeth import chips_of
from tapmodel.prediction.torque.cutting import (
    cutting_forces,
    cutting_torques,
    most_together,
    teeth_of,
    thin_share,
    together,
)
from tapmodel.prediction.torque.formulas import formula_a, torque_by_a, torque_by_b
from tapmodel.prediction.torque.torque import SPREAD
from tapmodel.spec.job_file import job_for
from tapmodel.standards.materials.work import WorkMaterial, work_material


def torque(chips: Chips, material: WorkMaterial, rake: float | None = None) -> float:
    teeth, law = teeth_of(chips), material.kienzle
    forces = cutting_forces(teeth, law, law.rake if rake is None else rake)
    return float(np.sum(cutting_torques(teeth, forces)))


# Torque, and A and B in it; a chamfer of 5 pitches, 3 lands (M20: 4)
ROWS = [
    ("C45", 6.0, 1.0, 5.0, 3, 1.38, 1.47, 1.36),
    ("C45", 8.0, 1.25, 6.8, 3, 2.61, 1.51, 1.50),
    ("C45", 10.0, 1.5, 8.5, 3, 4.93, 1.56, 1.43),
    ("C45", 12.0, 1.75, 10.2, 3, 8.31, 1.60, 1.38),
    ("C45", 20.0, 2.5, 17.5, 4, 27.1, 1.61, 1.44),
    ("42CrMo4", 6.0, 1.0, 5.0, 3, 2.33, 0.80, 0.84),
    ("42CrMo4", 8.0, 1.25, 6.8, 3, 4.32, 0.84, 0.94),
    ("42CrMo4", 10.0, 1.5, 8.5, 3, 7.96, 0.89, 0.92),
    ("42CrMo4", 12.0, 1.75, 10.2, 3, 13.12, 0.94, 0.91),
    ("42CrMo4", 20.0, 2.5, 17.5, 4, 42.5, 0.95, 0.96),
    ("GG25", 6.0, 1.0, 5.0, 3, 1.08, 1.29, 0.87),
    ("GG25", 8.0, 1.25, 6.8, 3, 2.00, 1.36, 0.98),
    ("GG25", 10.0, 1.5, 8.5, 3, 3.69, 1.44, 0.95),
    ("GG25", 12.0, 1.75, 10.2, 3, 6.09, 1.50, 0.94),
    ("GG25", 20.0, 2.5, 17.5, 4, 19.7, 1.52, 0.99),
]


@pytest.mark.parametrize(
    ("name", "diameter", "pitch", "drill", "lands", "expected", "a_share", "b_share"), ROWS
)
def test_tooth_by_tooth_meets_the_printed_formulas_as_computed_elsewhere(  # noqa: PLR0913 PLR0917
    name: str,
    diameter: float,
    pitch: float,
    drill: float,
    lands: int,
    expected: float,
    a_share: float,
    b_share: float,
) -> None:
    material, thread = work_material(name), plain_tap(diameter, pitch).thread
    found = torque(v_chips(diameter, drill, 5 * pitch, 5 * lands), material)
    assert found == pytest.approx(expected, rel=5e-3)
    a = torque_by_a(material, thread, diameter, drill, 5.0)
    b = torque_by_b(material, thread, diameter)
    assert a is not None
    assert b is not None
    # told as quotients of rounded torques
    assert a / found == pytest.approx(a_share, abs=0.0075)
    assert b / found == pytest.approx(b_share, abs=0.0075)


def test_the_spread_of_a_sharp_v_is_wider_upwards() -> None:
    shares = [share for row in ROWS for share in row[-2:]]
    assert (min(shares), max(shares)) == (0.80, 1.61)


def real_shares(name: str, row: tuple[float, ...]) -> list[float]:
    """A and B in the torque of the teeth of a tap as the rules make it."""
    diameter, pitch, drill, lands = row
    sets = [f"flutes.count={lands:g}", "chamfer.pitches=5"]
    design = settle(job_for(f"M{diameter:g}", sets))
    assert (design.drill, design.tap.thread.pitch) == (drill, pitch)
    thread, material = design.tap.thread, work_material(name)
    whole = torque(chips_of(design.tap, drill), material)
    printed = (
        torque_by_a(material, thread, diameter, drill, 5.0),
        torque_by_b(material, thread, diameter),
    )
    return [one / whole for one in printed if one is not None]


def test_the_spread_is_that_of_the_chips_of_real_taps() -> None:
    shares = [share for name, *row in ROWS for share in real_shares(name, tuple(row[:4]))]
    assert len(shares) == 2 * len(ROWS)
    assert (min(shares), max(shares)) == pytest.approx(SPREAD, abs=0.006)


def test_the_law_meets_both_formulas_within_13_percent_in_plain_steel() -> None:
    shares = [
        share for name, *row in ROWS if name == "C45" for share in real_shares(name, tuple(row[:4]))
    ]
    assert (min(shares), max(shares)) == pytest.approx((0.87, 1.06), abs=0.006)


def test_a_force_that_is_the_same_for_all_chips_gives_the_integral() -> None:
    for count in (3, 12, 40):
        chips = v_chips(10.0, 8.5, 6.0, count)
        whole = formula_a(10.0, 8.5, 30.0, 2000.0, 1.0)
        assert torque(chips, of_one_force("C45", 2000.0)) == pytest.approx(whole, rel=1e-9)


def test_thinner_chips_need_more_torque_by_the_law() -> None:
    steel = work_material("C45")
    few, many = (torque(v_chips(10.0, 8.5, 6.0, count), steel) for count in (12, 24))
    assert many / few == pytest.approx(2**0.14)
    # a bottoming chamfer against a plug one: 10 to 15 % less, where formula A has 6 % more
    bottoming, plug = (torque(v_chips(10.0, 8.5, 6.0, count), steel) for count in (5, 15))
    assert bottoming / plug == pytest.approx(0.857, abs=0.005)


def test_a_degree_of_rake_takes_one_percent_off() -> None:
    chips, steel = v_chips(10.0, 8.5, 6.0, 12), work_material("C45")
    base = torque(chips, steel)
    assert torque(chips, steel, 16.0) == pytest.approx(0.9 * base)
    assert torque(chips, steel, -4.0) == pytest.approx(1.1 * base)


def test_chips_thinner_than_those_of_the_tests_are_told() -> None:
    def share(count: int) -> float:
        teeth, law = teeth_of(v_chips(10.0, 8.5, 6.0, count)), work_material("C45").kienzle
        return thin_share(teeth, cutting_torques(teeth, cutting_forces(teeth, law, 6.0)))

    # 0.75 mm of depth in chips of 0.0625, and of 0.125 mm
    assert share(12) == 1.0
    assert share(6) == 0.0


def test_no_teeth_need_no_torque() -> None:
    teeth = teeth_of(Chips((), 0.0, 0.0, 0.0, 0.0))
    forces = cutting_forces(teeth, work_material("C45").kienzle, 6.0)
    assert forces.size == 0
    assert thin_share(teeth, forces) == 0.0
    assert most_together(teeth.height, forces, 5.0) == 0.0
    assert together(teeth.height, forces, np.array([1.0]), 5.0).tolist() == [0.0]


def test_teeth_cut_together_while_they_are_in_the_work() -> None:
    heights, values = np.array([1.0, 2.0, 3.0, 4.0]), np.array([1.0, 10.0, 100.0, 1000.0])
    fronts = np.array([0.5, 1.0, 2.5, 3.49, 3.5, 3.51, 4.0, 5.6, 6.4, 6.6])
    # work of 2.5 mm: the tooth at 1 is in it from 1 until the front is at 3.5
    expected = [0, 1, 11, 111, 111, 110, 1110, 1000, 1000, 0]
    assert together(heights, values, fronts, 2.5).tolist() == expected
    assert most_together(heights, values, 2.5) == 1110
    assert most_together(heights, values, float("inf")) == 1111
    assert most_together(heights, values, 0.1) == 1000
    # one enters as another leaves, whatever their last digits
    for off in (-1e-12, 0.0, 1e-12):
        assert most_together(heights * (1 + off), values, 2.0) == 1110


def test_the_hole_made_for_these_tests_is_the_usual_one() -> None:
    hole = through()
    assert (hole.diameter, hole.drill, hole.depth, hole.blind) == (10.0, 8.5, 15.0, False)
