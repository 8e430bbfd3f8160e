import numpy as np
import pytest

from tapmodel.checks.ideal.quadrature import gauss_legendre


@pytest.mark.parametrize("count", [2, 7, 64])
def test_nodes_and_weights_are_the_library_s(count: int) -> None:
    nodes, weights = gauss_legendre(count)
    expected = np.polynomial.legendre.leggauss(count)
    np.testing.assert_allclose(nodes, expected[0], atol=1e-15)
    np.testing.assert_allclose(weights, expected[1], rtol=1e-11)


def test_many_nodes_integrate_the_highest_power_they_must() -> None:
    nodes, weights = gauss_legendre(600)
    assert float(weights @ nodes**1198) == pytest.approx(2 / 1199, rel=1e-12)
    assert float(weights @ np.exp(nodes)) == pytest.approx(np.e - 1 / np.e, rel=1e-14)
