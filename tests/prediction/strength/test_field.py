"""The stress inside a section against exact solutions, close to the edge too."""

import numpy as np
import pytest
from section_rows import fluted, grooved, grooved_sector

from tapmodel.prediction.strength.edge import edge_of
from tapmodel.prediction.strength.field import field_at, inside_of
from tapmodel.prediction.strength.torsion import torsion_of
from tapmodel.shape.outlines.outline import Arc

GROOVE = 0.2


def spread() -> tuple[np.ndarray, np.ndarray]:
    x, y = np.random.default_rng(4).uniform(-1.05, 1.05, (2, 3000))
    return x, y


def test_webers_function_and_its_slope():
    # Prandtl's function (rho² - a²)(2 r cos(psi)/rho - 1)/2 about the groove's centre.
    torsion = grooved(GROOVE, 1)
    x, y = spread()
    found = field_at(torsion, x, y)
    rho = np.hypot(x - 1, y)
    inside = (rho > GROOVE) & (np.hypot(x, y) < 1)
    assert np.array_equal(np.isfinite(found.function), inside)
    u, v, square = (1 - x)[inside], y[inside], rho[inside] ** 2
    exact = (square - GROOVE**2) * (2 * u / square - 1) / 2
    assert found.function[inside] * torsion.stiffness == pytest.approx(exact, abs=1e-8)
    # d/dy and -d/dx of that, u running against x.
    along = 2 * u / square - 1
    shear_x = v * along - (square - GROOVE**2) * 2 * u * v / square**2
    slope_u = u * along + (square - GROOVE**2) * (1 / square - 2 * u**2 / square**2)
    assert found.shear_x[inside] * torsion.stiffness == pytest.approx(shear_x, abs=3e-7)
    assert found.shear_y[inside] * torsion.stiffness == pytest.approx(slope_u, abs=3e-7)


def test_a_round_shaft_with_a_bore():
    torsion = torsion_of(edge_of((Arc((0.0, 0.0), 2.0, 0.0, 90.0),), 4, 0.5))
    x, y = np.array([0.0, 1.0, 0.6, -1.2]), np.array([1.99, 0.2, 0.0, -1.5])
    found = field_at(torsion, x, y)
    assert found.shear_x * torsion.stiffness == pytest.approx(-y, abs=1e-6)
    assert found.shear_y * torsion.stiffness == pytest.approx(x, abs=1e-6)
    assert found.shear * torsion.stiffness == pytest.approx(np.hypot(x, y), abs=1e-6)
    assert np.isnan(field_at(torsion, np.array([0.3]), np.array([0.1])).shear).all()


def test_it_meets_the_shear_along_the_edge():
    torsion = fluted("M10")
    edge = torsion.edge
    inner = torsion.places - 1e-7 * torsion.places / abs(torsion.places)
    on_land = abs(abs(torsion.places) - edge.size) < 1e-9
    found = field_at(torsion, inner.real, inner.imag)
    assert found.shear[on_land] == pytest.approx(
        torsion.shear[on_land], rel=1e-4, abs=1e-4 * torsion.peak
    )
    under = inside_of(torsion, 1e-6)
    assert float(np.nanmax(under.shear)) == pytest.approx(torsion.peak, rel=2e-3)


def test_it_is_the_same_in_every_sector():
    torsion = fluted("M20")
    x, y = 4.0 * spread()[0], 4.0 * spread()[1]
    one, other = field_at(torsion, x, y), field_at(torsion, -y, x)
    assert other.function == pytest.approx(one.function, rel=1e-9, nan_ok=True)
    assert other.shear_x == pytest.approx(-one.shear_y, abs=1e-12, nan_ok=True)


def test_the_torque_is_the_moment_of_the_shear():
    torsion = torsion_of(edge_of(grooved_sector(0.4, 4), 4, 0.2))
    line = (np.arange(800) + 0.5) / 400 - 1
    x, y = np.meshgrid(line, line)
    found = field_at(torsion, x, y)
    moment = x * found.shear_y - y * found.shear_x
    assert np.nansum(moment) * (1 / 400) ** 2 == pytest.approx(1.0, rel=2e-3)
