"""The boundary integral against sectionproperties, a general program of finite elements.

Its sections are polygons here, whose corners lie on the curved edges: they lack what lies between
chord and arc, and shear peaks between corners, so it agrees the better the finer they are. Its
mesher is not free for all uses, which binds whoever runs these tests, not who uses the program.
"""

import cmath
import math
import os

import pytest
from section_rows import fluted, fluted_sector_of
from shapely import Polygon

from tapmodel.prediction.strength.edge import edge_of
from tapmodel.prediction.strength.outlines import square_sector
from tapmodel.prediction.strength.torsion import torsion_of
from tapmodel.shape.outlines.outline import Arc, Line

# Its mesher is compiled where it is installed; where no compiler is, pip leaves it out in silence.
pytest.importorskip(
    "cytriangle", reason="sectionproperties has no mesher: make .venv anew with a C compiler"
)

# Its sections are so few that compiling would take longer than it spares.
os.environ.setdefault("NUMBA_DISABLE_JIT", "1")

from sectionproperties.analysis import Section
from sectionproperties.pre import Geometry

FINE = 0.03
"""Chord of an arc in its radius: with `ELEMENTS` it makes stiffness and peak 0.3 per mille less."""

ELEMENTS = 800
TORQUE = 1.0

Piece = Arc | Line


def by_elements(sector: tuple[Piece, ...], turns: int, bore: float = 0.0) -> tuple[float, float]:
    """Torsion constant and peak of shear in a torque of 1."""
    corners = [
        corner * cmath.exp(2j * math.pi * turn / turns)
        for turn in range(turns)
        for piece in sector
        for corner in corners_of(piece)
    ]
    hole = [bore * cmath.exp(1j * FINE * n) for n in range(int(2 * math.pi / FINE))] if bore else []
    polygon = Polygon(
        [(corner.real, corner.imag) for corner in corners],
        [[(place.real, place.imag) for place in hole]] if hole else [],
    )
    geometry = Geometry(polygon)
    geometry.create_mesh(mesh_sizes=[polygon.area / ELEMENTS])
    section = Section(geometry)
    section.calculate_geometric_properties()
    section.calculate_warping_properties()
    shear = section.calculate_stress(mzz=TORQUE).get_stress()[0]["sig_zxy_mzz"]
    return float(section.get_j()), float(shear.max())


def corners_of(piece: Piece) -> list[complex]:
    """Along a piece, its end left to the next."""
    if isinstance(piece, Line):
        return [complex(*piece.start)]
    turned = math.radians(piece.end_angle - piece.start_angle)
    count = max(2, math.ceil(abs(turned) / FINE))
    centre, first = complex(*piece.centre), math.radians(piece.start_angle)
    return [
        centre + piece.radius * cmath.exp(1j * (first + turned * n / count)) for n in range(count)
    ]


@pytest.mark.parametrize("name", ["M20", "Tr16x4"])
def test_fluted_sections(name: str) -> None:
    found = fluted(name)
    stiffness, peak = by_elements(fluted_sector_of(name), found.edge.turns)
    assert found.stiffness == pytest.approx(stiffness, rel=1e-3)
    assert found.peak == pytest.approx(peak, rel=5e-3)


def test_a_fluted_section_with_a_centre_in_it() -> None:
    sector, turns = fluted_sector_of("M20"), fluted("M20").edge.turns
    found = torsion_of(edge_of(sector, turns, 1.5))
    stiffness, peak = by_elements(sector, turns, 1.5)
    assert found.stiffness == pytest.approx(stiffness, rel=1e-3)
    assert found.peak == pytest.approx(peak, rel=5e-3)


def test_a_driving_square() -> None:
    sector = square_sector(8.0, 10.0)
    found = torsion_of(edge_of(sector, 4))
    stiffness, peak = by_elements(sector, 4)
    assert found.stiffness == pytest.approx(stiffness, rel=5e-4)
    assert found.peak == pytest.approx(peak, rel=3e-3)
