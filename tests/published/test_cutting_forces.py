"""Specific cutting forces as printed, and the constants that stand for them."""

import pytest

from tapmodel.standards.materials.kienzle import (
    FITTED,
    Kienzle,
    fitted_constants,
    turning_forces,
)
from tapmodel.standards.materials.work import work_material

# kc1.1, mc and the largest misfit [%] of the rows of RN-1391 p. 43 table 2, computed elsewhere
FITS = [
    ("St 42", 1811, 0.162, 1.4),
    ("St 50-2", 1991, 0.257, 1.2),
    ("St 60-2 C 45 C 60", 2085, 0.173, 0.6),
    ("St 70-2 18CrNi8", 2272, 0.297, 0.7),
    ("42CrMo4", 2526, 0.250, 0.3),
    ("16MnCr5", 2109, 0.262, 0.7),
    ("Mn and CrNi steels", 2394, 0.201, 0.7),
    ("Mn-austenitic", 3364, 0.216, 0.8),
    ("GE 240", 1610, 0.157, 1.5),
    ("GE 260", 1817, 0.152, 0.9),
    ("EN-GJL to 200 HB", 922, 0.220, 1.4),
    ("EN-GJL 200-250 HB", 1186, 0.246, 1.1),
]


@pytest.mark.parametrize(("row", "kc11", "mc", "misfit"), FITS)
def test_the_fitted_constants_give_the_printed_row(
    row: str, kc11: float, mc: float, misfit: float
) -> None:
    found = fitted_constants(row)
    assert found == (pytest.approx(kc11, abs=0.5), pytest.approx(mc, abs=5e-4))
    worst = max(abs(found[0] * h ** -found[1] / kc - 1) for h, kc in turning_forces(row))
    assert 100 * worst == pytest.approx(misfit, abs=0.07)


@pytest.mark.parametrize(
    ("name", "row", "printed", "within"),
    [
        ("E295", "St 50-2", (3.51, 1.93), 1.5),
        ("42CrMo4", "42CrMo4", (4.41, 2.42), 1.5),
        ("16MnCr5", "16MnCr5", (3.70, 2.03), 1.5),
        ("EN-GJL-250", "EN-GJL 200-250 HB", (2.04, 1.12), 2.5),
        ("C45", "St 60-2 C 45 C 60", (3.01, 2.18), 6.5),
        ("C60", "St 60-2 C 45 C 60", (3.15, 2.08), 4.0),
    ],
)
def test_the_constants_from_the_textbook_give_the_rows_of_the_chuck_maker(
    name: str, row: str, printed: tuple[float, float], within: float
) -> None:
    law = work_material(name).kienzle
    own = [(law.specific_force(h, law.rake), kc) for h, kc in turning_forces(row)]
    assert (own[0][0] / 1000, own[-1][0] / 1000) == pytest.approx(printed, abs=0.006)
    assert max(abs(ours / kc - 1) for ours, kc in own) < within / 100


# Computed from 2220, 0.14 and 2500, 0.26 elsewhere
THIN = [
    ("C45", 0.02, 3839),
    ("C45", 0.03, 3627),
    ("C45", 0.05, 3377),
    ("C45", 0.1, 3064),
    ("42CrMo4", 0.02, 6913),
    ("42CrMo4", 0.03, 6221),
    ("42CrMo4", 0.05, 5448),
    ("42CrMo4", 0.1, 4549),
    ("mild steel", 0.05, 3277),
]


@pytest.mark.parametrize(("name", "thickness", "force"), THIN)
def test_thin_chips_take_more_force(name: str, thickness: float, force: float) -> None:
    law = work_material(name).kienzle
    assert law.specific_force(thickness, law.rake) == pytest.approx(force, abs=0.6)


def test_a_degree_more_of_rake_takes_one_percent_off() -> None:
    law = work_material("C45").kienzle
    assert law.rake == 6
    assert law.specific_force(1.0, 6.0) == pytest.approx(2220)
    assert law.specific_force(1.0, 16.0) == pytest.approx(1998)
    assert law.specific_force(1.0, 0.0) == pytest.approx(2353.2)
    iron, light = work_material("GG25").kienzle, work_material("6082").kienzle
    assert (iron.rake, light.rake) == (2, 12)
    assert isinstance(iron, Kienzle)


def test_the_tests_cut_chips_from_a_tenth_to_one_millimetre() -> None:
    assert pytest.approx((0.11, 1.13), abs=0.005) == FITTED
    assert turning_forces("GE 240")[0] == pytest.approx((FITTED[0], 2300))
