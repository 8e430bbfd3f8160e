"""Shear and Prandtl's function anywhere inside a section in torsion, for a picture or the core."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.strength.torsion import Torsion

Floats = NDArray[np.float64]
Complexes = NDArray[np.complex128]

_AT_ONCE = 4096
_APART = 1e-12
"""Share of the section's size by which a point keeps clear of a node; the sums need that."""


@dataclass(frozen=True, slots=True, eq=False)
class Field:
    """What stands at points of a section when a torque of 1 N·mm twists it; NaN outside it.

    Attributes:
        function: Prandtl's: its slope across a direction is the shear along it [1/mm²].
        shear_x, shear_y: components of the shear [1/mm³].
    """

    function: Floats
    shear_x: Floats
    shear_y: Floats

    @property
    def shear(self) -> Floats:
        """Size of the shear [1/mm³]."""
        return np.hypot(self.shear_x, self.shear_y)


def field_at(torsion: Torsion, x: Floats, y: Floats) -> Field:
    """Shear and Prandtl's function at points [mm], all three arrays of their shape.

    Cauchy's integrals of f and of its derivative are each divided by that of 1, whose value is
    known; so they stay good beside the edge, where the bare sums over nodes fail.

    Args:
        torsion: the section.
        x: coordinates, any shape [mm].
        y: likewise, of the same shape.

    Source: the barycentric form of Cauchy's integral (Schneider and Werner, Mathematics of
    Computation 47 (1986) 285, from memory), derived here for powers of the places.
    """
    points = (np.asarray(x) + 1j * np.asarray(y)).ravel()
    parts = [_part(torsion, points[n : n + _AT_ONCE]) for n in range(0, len(points), _AT_ONCE)]
    function = np.concatenate([part[0] for part in parts])
    shear = np.concatenate([part[1] for part in parts])
    shape = np.shape(x)
    return Field(function.reshape(shape), shear.real.reshape(shape), shear.imag.reshape(shape))


def inside_of(torsion: Torsion, depth: float) -> Field:
    """The field along a line that runs `depth` [mm] under the outside, node by node.

    Source: derived here.
    """
    edge = torsion.edge
    inner = edge.places + depth * 1j * edge.steps / np.abs(edge.steps)
    return field_at(torsion, inner.real, inner.imag)


def _part(torsion: Torsion, points: Complexes) -> tuple[Floats, Complexes]:
    edge, turns = torsion.edge, torsion.edge.turns
    size = edge.size
    nodes = np.concatenate([edge.places, edge.bore_places]) / size
    steps = np.concatenate([edge.steps, edge.bore_steps]) / size
    values = torsion.values / size**2
    at = points / size
    powers, weights = nodes**turns, turns * nodes ** (turns - 1) * steps
    apart = powers[None, :] - (at**turns)[:, None]
    apart[np.abs(apart) < _APART] = _APART
    pull = weights / apart
    whole = pull.sum(axis=1)
    # A product by the library of linear algebra would wake its threads for nothing.
    f = np.einsum("ij,j->i", pull, values) / whole
    pull /= apart
    slope = (np.einsum("ij,j->i", pull, values) - f * pull.sum(axis=1)) / whole
    slope = slope * turns * at ** (turns - 1)
    within = whole.imag > np.pi
    function = (f.real - np.abs(at) ** 2 / 2) / torsion.stiffness * size**2
    shear = 1j * np.conj(np.conj(at) - slope) / torsion.stiffness * size
    return np.where(within, function, np.nan), np.where(within, shear, complex(np.nan, np.nan))
