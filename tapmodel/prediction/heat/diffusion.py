"""Carbon that goes into a section: Fick's second law by finite elements.

The diffusivity depends on the carbon. Its integral over the carbon (Kirchhoff's potential) makes
the flux a gradient, so that one matrix serves every step and no carbon is lost between elements.
"""

from dataclasses import dataclass

import numpy as np

from tapmodel.prediction.heat.diffusivity import Diffusivity
from tapmodel.prediction.heat.grid import Floats, Grid
from tapmodel.prediction.heat.sparse import Sparse

STEPS = 24
"""Of time, each longer than the one before; as fine as the usual grid."""

_CLOSE = 1e-10
"""Carbon [mass %] by which a step of Newton's method may still move."""

_MOST = 30  # steps of Newton's method; three do as a rule


@dataclass(frozen=True, slots=True)
class Diffused:
    """Carbon in a section after a time.

    Attributes:
        grid: of the section.
        carbon: at its nodes [mass %].
        gained: by the whole section [mass % · mm²].
        entered: through its surface [mass % · mm²]; equals what was gained.
    """

    grid: Grid
    carbon: Floats
    gained: float
    entered: float


@dataclass(frozen=True, slots=True)
class Bath:
    """What a section stands in.

    Attributes:
        law: of diffusion in it.
        start: carbon of the steel [mass %].
        surface: carbon at its surface, from the first moment on [mass %].
    """

    law: Diffusivity
    start: float
    surface: float


class _Marching:
    """The state from step to step."""

    def __init__(self, grid: Grid, bath: Bath) -> None:
        self._bath, self._inside = bath, ~grid.surface
        self.mass, self._stiffness = _matrices(grid)
        self._within = self._stiffness.within(self._inside)
        self.carbon = np.where(grid.surface, bath.surface, bath.start)
        self.entered = float(self.mass @ (self.carbon - bath.start))

    def flux(self) -> float:
        """Through the surface [mass % · mm²/s]."""
        return float(np.sum(self._flow()[~self._inside]))

    def _flow(self) -> Floats:
        """Out of each node to its neighbours [mass % · mm²/s]."""
        return self._stiffness.times(_potential(self._bath, self.carbon))

    def solve(self, weight: float, known: Floats, step: float) -> None:
        """Find carbon with `weight * mass * carbon + step * K * potential = mass * known`."""
        inside = self._inside
        mass = self.mass[inside]
        for _ in range(_MOST):
            flow = self._flow()[inside]
            left = mass * (known[inside] - weight * self.carbon[inside]) - step * flow
            law = self._bath.law(self.carbon[inside])
            # In the potential the matrix is symmetric.
            moved = self._within.solved(step, weight * mass / law, left) / law
            self.carbon[inside] += moved
            if np.max(np.abs(moved), initial=0.0) < _CLOSE:
                return


def diffused(grid: Grid, bath: Bath, seconds: float, steps: int = STEPS) -> Diffused:
    """The carbon in a section after a time, whose surface has its carbon from the start.

    Args:
        grid: of the section; no carbon passes its other sides, which are planes of symmetry or lie
            deeper than carbon comes.
        bath: what it stands in.
        seconds: of time.
        steps: their ends grow with the square of their number.

    Source: linear triangles with lumped mass; backward differences of second order (Gear), the
    first step by Euler's.
    """
    state = _Marching(grid, bath)
    ends = seconds * (np.arange(steps + 1) / steps) ** 2
    lengths = np.diff(ends)
    before, entered_before = state.carbon.copy(), state.entered
    for number, step in enumerate(lengths.tolist()):
        now, entered_now = state.carbon.copy(), state.entered
        ratio = step / float(lengths[number - 1]) if number else 0.0
        weight = (1 + 2 * ratio) / (1 + ratio)
        recent, older = 1 + ratio, -(ratio**2) / (1 + ratio)
        state.solve(weight, recent * now + older * before, step)
        came = recent * entered_now + older * entered_before + step * state.flux()
        state.entered = came / weight
        before, entered_before = now, entered_now
    gained = float(state.mass @ (state.carbon - bath.start))
    return Diffused(grid, state.carbon, gained, state.entered)


_PLACES, _WEIGHTS = np.polynomial.legendre.leggauss(8)


def _potential(bath: Bath, carbon: Floats) -> Floats:
    """The diffusivity's integral from the steel's carbon up to `carbon` [mass % · mm²/s]."""
    half = (carbon - bath.start)[:, None] / 2
    return (bath.law(bath.start + half * (1 + _PLACES)) @ _WEIGHTS) * half[:, 0]


def _matrices(grid: Grid) -> tuple[Floats, Sparse]:
    """Area that each node stands for [mm²], and the matrix of the gradients."""
    corners = grid.nodes[grid.triangles]
    sides = np.roll(corners, -1, axis=1) - np.roll(corners, 1, axis=1)
    first, second = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    areas = np.abs(first[:, 0] * second[:, 1] - first[:, 1] * second[:, 0]) / 2
    # Half of each, for they cover the section twice.
    parts = np.einsum("eik,ejk->eij", sides, sides) / (8 * areas)[:, None, None]
    rows = np.repeat(grid.triangles, 3, axis=1).ravel()
    columns = np.tile(grid.triangles, (1, 3)).ravel()
    count = len(grid.nodes)
    mass = np.zeros(count)
    np.add.at(mass, grid.triangles, areas[:, None] / 6)
    return mass, Sparse.summed(rows, columns, parts.ravel(), count)
