"""The boundary integral against exact solutions, other programs and what theory demands.

Without a mark a number was computed by the boundary method itself at 160 points a piece, where it
no longer changes; with one groove it equals Weber's exact solution in all digits.
"""

import math

import numpy as np
import pytest
from section_rows import (
    fluted,
    fluted_sector_of,
    grooved,
    grooved_sector,
    land_shear,
    square,
)

from tapmodel.prediction.strength.edge import edge_of, smooth_edge
from tapmodel.prediction.strength.field import field_at
from tapmodel.prediction.strength.outlines import square_sector
from tapmodel.prediction.strength.torsion import round_torsion, torsion_of
from tapmodel.shape.outlines.outline import Arc, Line, full_circle

GROOVES = {
    (1, 0.05): (1.563271, 1.24738),
    (1, 0.1): (1.541969, 1.23219),
    (1, 0.2): (1.465231, 1.22848),
    (1, 0.3): (1.353853, 1.25568),
    (1, 0.4): (1.219386, 1.31214),
    (1, 0.5): (1.071732, 1.39960),
    (3, 0.05): (1.548259, 1.25720),
    (3, 0.1): (1.484939, 1.26953),
    (3, 0.2): (1.263841, 1.37301),
    (3, 0.3): (0.967115, 1.59724),
    (3, 0.4): (0.655597, 2.00454),
    (3, 0.5): (0.381852, 2.75964),
    (4, 0.05): (1.540792, 1.26131),
    (4, 0.1): (1.457037, 1.28513),
    (4, 0.2): (1.172246, 1.43637),
    (4, 0.3): (0.813800, 1.76618),
    (4, 0.4): (0.476250, 2.42896),
}
FLATS = {
    0.05: (1.47860, 0.7728),
    0.10: (1.31297, 0.8759),
    0.15: (1.11451, 1.0078),
    0.20: (0.90728, 1.1844),
    0.25: (0.71067, 1.4248),
    0.29: (0.57157, 1.6777),
}
TAPS = {
    # J [mm⁴], modulus at the floor [mm³], land by floor
    "M3": (0.7186, 0.602, 0.53),
    "M6": (11.443, 4.799, 0.53),
    "M10": (85.054, 22.195, 0.52),
    "M20": (1358.67, 176.12, 0.36),
    "Tr16x4": (568.60, 87.10, 0.43),
}


@pytest.mark.parametrize(("count", "groove"), GROOVES)
def test_a_circle_with_semicircular_grooves(count: int, groove: float):
    stiffness, peak = GROOVES[count, groove]
    found = grooved(groove, count)
    assert found.stiffness == pytest.approx(stiffness, abs=1e-6)
    assert found.peak == pytest.approx(peak, rel=2e-4)
    assert found.peak_place == pytest.approx((1 - groove, 0.0), abs=3e-3)


@pytest.mark.parametrize("groove", [0.05, 0.2, 0.5])
def test_one_groove_is_webers(groove: float):
    # Timoshenko and Goodier, Theory of Elasticity (from memory): 2r - a by twist and rigidity.
    found = grooved(groove, 1)
    assert found.peak * found.stiffness == pytest.approx(2 - groove, rel=1e-5)


def test_sectors_and_the_whole_outline_agree():
    sector = edge_of(grooved_sector(0.3, 1), 1)
    assert sector.turns == 1
    thirds = grooved(0.3, 3)
    whole = []
    for turn in (0.0, 120.0, 240.0):
        for arc in grooved_sector(0.3, 3):
            x, y = arc.centre
            there = complex(x, y) * np.exp(1j * math.radians(turn))
            ends = (arc.start_angle + turn, arc.end_angle + turn)
            whole.append(Arc((there.real, there.imag), arc.radius, *ends))
    found = torsion_of(edge_of(tuple(whole), points=32))
    assert found.stiffness == pytest.approx(thirds.stiffness, rel=1e-7)
    assert found.peak == pytest.approx(thirds.peak, rel=2e-4)


def test_square():
    # Saint-Venant's series.
    found = square(2.0)
    assert found.stiffness == pytest.approx(0.1405770 * 2**4, rel=2e-7)
    assert found.peak == pytest.approx(4.80388 / 2**3, rel=2e-5)
    assert found.modulus == pytest.approx(0.208165 * 2**3, rel=2e-5)
    assert found.peak_place == pytest.approx((1.0, 0.0), abs=1e-9)


def test_circle_and_ring():
    piece = Arc((0.0, 0.0), 3.0, 0.0, 120.0)
    for bore in (0.0, 1.0, 2.5):
        found = torsion_of(edge_of((piece,), 3, bore))
        stiffness, modulus = round_torsion(6.0, 2 * bore)
        assert stiffness == pytest.approx(math.pi * (3**4 - bore**4) / 2, rel=1e-12)
        assert found.stiffness == pytest.approx(stiffness, rel=1e-7)
        assert found.modulus == pytest.approx(modulus, rel=1e-6)
    assert torsion_of(edge_of(full_circle(3.0))).stiffness == pytest.approx(
        math.pi * 81 / 2, rel=1e-7
    )


def test_ellipse():
    a, b, count = 3.0, 1.2, 90
    turn = 2 * math.pi * (np.arange(count) + 0.5) / count
    places = a * np.cos(turn) + 1j * b * np.sin(turn)
    steps = (-a * np.sin(turn) + 1j * b * np.cos(turn)) * (2 * math.pi / count)
    bends = a * b / np.hypot(a * np.sin(turn), b * np.cos(turn)) ** 3
    found = torsion_of(smooth_edge(places, steps, bends))
    assert found.stiffness == pytest.approx(math.pi * a**3 * b**3 / (a**2 + b**2), rel=1e-9)
    assert found.peak == pytest.approx(2 / (math.pi * a * b**2), rel=1e-3)


def test_equilateral_triangle():
    side = 2.0
    low = side / (2 * math.sqrt(3))
    found = torsion_of(edge_of((Line((low, -side / 2), (low, side / 2)),), 3))
    assert found.stiffness == pytest.approx(math.sqrt(3) / 80 * side**4, rel=1e-6)
    assert found.peak == pytest.approx(20 / side**3, rel=1e-3)


@pytest.mark.parametrize("depth", FLATS)
def test_a_circle_with_four_flats(depth: float):
    stiffness, peak = FLATS[depth]
    found = torsion_of(edge_of(square_sector(2 - 2 * depth, 2.0), 4))
    assert found.stiffness == pytest.approx(stiffness, abs=6e-6)
    assert found.peak == pytest.approx(peak, abs=6e-5 + 1e-4 * peak)


def test_driving_square_with_turned_corners():
    turned = torsion_of(edge_of(square_sector(8.0, 10.0), 4))
    assert turned.stiffness == pytest.approx(567.05, abs=5e-3)
    assert turned.peak == pytest.approx(0.009475, abs=6e-7)
    full = torsion_of(edge_of(square_sector(8.0, 12.0), 4))
    assert full.stiffness == pytest.approx(575.80, abs=5e-3)
    assert full.peak == pytest.approx(0.009383, abs=6e-7)


@pytest.mark.parametrize("name", TAPS)
def test_fluted_sections_of_taps(name: str):
    stiffness, modulus, share = TAPS[name]
    found = fluted(name)
    assert found.stiffness == pytest.approx(stiffness, rel=6e-5)
    assert found.modulus == pytest.approx(modulus, rel=8e-4)
    assert land_shear(name, found) / found.peak == pytest.approx(share, abs=6e-3)


def test_a_fluted_section_by_finite_elements():
    # sectionproperties 3.10.2 with 7386 elements: J 32.925, shear 0.09004.
    found = fluted("round numbers")
    assert found.stiffness == pytest.approx(32.9220, abs=6e-5)
    assert found.stiffness == pytest.approx(32.925, rel=2e-4)
    assert found.peak == pytest.approx(0.090051, rel=5e-5)
    assert found.peak == pytest.approx(0.09004, rel=3e-4)
    assert land_shear("round numbers", found) == pytest.approx(0.032537, rel=2e-4)


def test_size_and_position_of_the_sector_do_not_matter():
    sector = grooved_sector(0.3, 4)
    large = tuple(
        Arc((7 * a.centre[0], 7 * a.centre[1]), 7 * a.radius, a.start_angle, a.end_angle)
        for a in sector
    )
    one, other = torsion_of(edge_of(sector, 4)), torsion_of(edge_of(large, 4))
    assert other.stiffness == pytest.approx(one.stiffness * 7**4, rel=1e-11)
    assert other.peak == pytest.approx(one.peak / 7**3, rel=1e-9)
    swapped = torsion_of(edge_of((sector[1], *turned(sector[:1])), 4))
    assert swapped.stiffness == pytest.approx(one.stiffness, rel=1e-7)


def turned(pieces: tuple[Arc, ...]) -> tuple[Arc, ...]:
    """A quarter of a turn on."""
    return tuple(
        Arc((-a.centre[1], a.centre[0]), a.radius, a.start_angle + 90, a.end_angle + 90)
        for a in pieces
    )


@pytest.mark.parametrize("bore", [0.1, 0.4])
def test_the_shear_runs_round_a_bore_as_theory_demands(bore: float):
    # Along any closed line the shear adds up to twice the area within it, bore and all, by J:
    # only then does the warping come back to where it began.
    found = torsion_of(edge_of(grooved_sector(0.4, 3), 3, bore))
    assert found.stiffness < grooved(0.4, 3).stiffness
    turn = 2 * math.pi * np.arange(200) / 200
    ring = 1.2 * bore
    field = field_at(found, ring * np.cos(turn), ring * np.sin(turn))
    along = field.shear_y * np.cos(turn) - field.shear_x * np.sin(turn)
    sum_along = float(np.sum(along)) * 2 * math.pi * ring / 200
    assert sum_along == pytest.approx(2 * math.pi * ring**2 / found.stiffness, rel=1e-5)


@pytest.mark.parametrize(
    ("name", "bore", "stiffness", "peak"),
    [("M20", 1.5, 1351.08, 0.0057099), ("round numbers", 1.2, 29.385, 0.10467)],
)
def test_a_bore_by_finite_elements(name: str, bore: float, stiffness: float, peak: float):
    # sectionproperties 3.10.2 with 5000 to 6500 elements, whose curved edges are polygons.
    edge = fluted(name).edge
    found = torsion_of(edge_of(fluted_sector_of(name), edge.turns, bore))
    assert found.stiffness == pytest.approx(stiffness, rel=8e-4)
    assert found.peak == pytest.approx(peak, rel=1e-3)


def test_a_small_bore_takes_away_what_it_would_of_a_shaft():
    solid, hollow = grooved(0.2, 3), torsion_of(edge_of(grooved_sector(0.2, 3), 3, 0.1))
    assert solid.stiffness - hollow.stiffness == pytest.approx(math.pi / 2 * 0.1**4, rel=2e-3)
    assert hollow.peak == pytest.approx(solid.peak, rel=3e-4)
