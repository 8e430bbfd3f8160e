"""From the clearance over a land to what is told of it."""

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.rubbing.record import Contact, Threshold, Trace
from tapmodel.prediction.rubbing.surfaces import Land, Surface, land_of

Floats = NDArray[np.float64]

LEAST_PROUD = 1e-5
"""A hundredth of a micrometre [mm]: clearances are worked out no finer."""

UM = 1000.0
"""Micrometres in a millimetre."""


def contact_of(surface: Surface, land: Land, threshold: Threshold) -> Contact:
    """How a surface of a land touches the work.

    Source: derived here.
    """
    per_degree = float(surface.edges.per_degree[0])
    phi, clearance = land.phi[0], land.clearance[0]
    least = float(np.min(land.clearance))
    return Contact(
        radius=float(surface.edges.radii[0]),
        clearance_min_um=least * UM,
        heel_clearance_um=float(clearance[-1]) * UM,
        rubbing_length=per_degree * length_below(phi, clearance, threshold.clearance),
        land_width=per_degree * float(phi[-1] - phi[0]),
        binds=least < -LEAST_PROUD,
    )


def length_below(phi: Floats, clearance: Floats, level: float) -> float:
    """Over how much of `phi`, (n,), the clearance lies below `level`, in the unit of `phi`.

    Between two neighbours it is taken to run straight.

    Source: derived here.
    """
    above = clearance - level
    first, last = above[:-1], above[1:]
    rise = last - first
    crossing = np.clip(-first / np.where(rise == 0, 1.0, rise), 0.0, 1.0)
    share = np.where(first < 0, np.where(last < 0, 1.0, crossing), 1.0 - crossing)
    return float(np.sum(np.diff(phi) * np.where((first >= 0) & (last >= 0), 0.0, share)))


def trace_of(surface: Surface, count: int) -> Trace:
    """Clearance along a surface at the radius that is told, at `count` angles or one more."""
    land = land_of(surface, count)
    phi = land.phi[0]
    along = (phi - phi[0]) * surface.edges.per_degree[0]
    return Trace(phi, along, land.clearance[0] * UM)
