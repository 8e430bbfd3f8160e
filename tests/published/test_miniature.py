"""Miniature threads against published rows: basic sizes of ISO 1501, limits of ASME B1.10M.

The limits were read in Machinery's Handbook 31st ed., table 5 of the section on Unified miniature
screw threads (a copy on the web); they are the table of the program itself, so that they are held
here to what else was read: the basic sizes of JIS B 0201:1973 (read on the web), which says that it
agrees with ISO/R 1501:1970. The tolerances of ISO 1501 were not found in any public text.
"""

import pytest

from tapmodel.spec.designation import parse
from tapmodel.standards.limits import HoleLimits
from tapmodel.standards.metric.pitches import coarse_pitch
from tapmodel.standards.thread_forms import METRIC, MINIATURE
from tapmodel.standards.unified.miniature import RULES, miniature_sizes

HALF_DIGIT = 0.0005 + 1e-9

# Size, pitch, D2 and D1 of JIS B 0201:1973 table 1 [mm]; D1 = d - 0.96 P there.
JIS_B_0201 = """
0.3 0.08 0.248 0.223|0.35 0.09 0.292 0.264|0.4 0.1 0.335 0.304|0.45 0.1 0.385 0.354
0.5 0.125 0.419 0.380|0.55 0.125 0.469 0.430|0.6 0.15 0.503 0.456|0.7 0.175 0.586 0.532
0.8 0.2 0.670 0.608|0.9 0.225 0.754 0.684|1 0.25 0.838 0.760|1.1 0.25 0.938 0.860
1.2 0.25 1.038 0.960|1.4 0.3 1.205 1.112
"""
ROWS = [
    [float(cell) for cell in row.split()]
    for row in JIS_B_0201.strip().replace("\n", "|").split("|")
]


def limits(size: float) -> HoleLimits:
    return RULES.hole_limits(RULES.settle(parse(f"{size:.2f} UNM"))).limits


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row[0]:g}")
def test_the_american_and_the_international_miniature_thread_agree(row: list[float]):
    size, pitch, pitch_diameter, minor = row
    found = limits(size)
    assert miniature_sizes()[size][0] == pitch
    assert coarse_pitch(size) == pitch
    assert found.pitch_min == pitch_diameter
    assert METRIC.pitch_diameter(size, pitch) == pytest.approx(pitch_diameter, abs=HALF_DIGIT)
    assert size - 0.96 * pitch == pytest.approx(minor, abs=HALF_DIGIT)
    # The American hole may be 0.08 P smaller and is never finished at the international size only.
    assert found.minor_min == pytest.approx(minor - 0.08 * pitch, abs=2 * HALF_DIGIT)
    assert found.minor_max > minor


# Formulas that the read table follows; those of the tolerances are inferred from it.
@pytest.mark.parametrize("size", miniature_sizes())
def test_every_row_follows_the_form_and_one_formula_of_tolerance(size: float):
    pitch, found = miniature_sizes()[size]
    assert found.minor_min == pytest.approx(size - MINIATURE.minor_drop * pitch, abs=HALF_DIGIT)
    assert found.pitch_min == pytest.approx(size - MINIATURE.pitch_drop * pitch, abs=HALF_DIGIT)
    assert found.major_min == pytest.approx(size + 0.072 * pitch, abs=HALF_DIGIT)
    assert found.pitch_max - found.pitch_min == pytest.approx(0.08 * pitch + 0.008, abs=0.001)
    assert found.minor_max - found.minor_min == pytest.approx(0.32 * pitch + 0.012, abs=0.001)


def test_one_row_as_read():
    assert limits(0.3) == HoleLimits(0.306, 0.248, 0.262, 0.217, 0.254)
    assert limits(1.4) == HoleLimits(1.422, 1.205, 1.237, 1.088, 1.196)
