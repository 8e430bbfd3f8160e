import numpy as np
import pytest

from tapmodel.checks.ideal.land_tops import Tops, sweep
from tapmodel.checks.ideal.laws import land_radius
from tapmodel.tap.tap import Tap


def test_sweep_is_exact_where_cone_crest_and_flanks_cross(tap: Tap):
    z = np.linspace(0.05, tap.chamfer_length + tap.thread.pitch, 40)
    edge, start, end = np.full_like(z, 52.0), np.linspace(-1.0, 2.0, 40), np.full_like(z, 61.0)
    fine = np.linspace(0.0, 1.0, 40_001)[:, None]
    phi = start + (end - start) * fine
    radius = land_radius(tap, phi, edge + phi, np.broadcast_to(z, phi.shape))
    expected = np.trapezoid(radius**2 / 2, np.radians(phi), axis=0)
    assert sweep(tap, Tops(z, edge, start, end)) == pytest.approx(expected, rel=1e-7)
