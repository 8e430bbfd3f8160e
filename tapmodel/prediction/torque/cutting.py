"""What the teeth need to take their chips, by Kienzle's law."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.chips.record import Chips
from tapmodel.standards.materials.kienzle import FITTED, Kienzle

Floats = NDArray[np.float64]

N_M = 1000.0
"""N·mm in a N·m."""

SAME = 1e-6
"""Depths that differ by less are the same [mm]."""


@dataclass(frozen=True, slots=True)
class Teeth:
    """The chips of all teeth, in the order in which they meet the work, each (n,).

    Attributes:
        height: z of the tooth [mm].
        area: of its chip [mm²].
        width: of its chip along the cone [mm].
        radius: of its chip [mm].
    """

    height: Floats
    area: Floats
    width: Floats
    radius: Floats

    @property
    def thickness(self) -> Floats:
        """Mean thickness of the chips [mm]."""
        return self.area / self.width


def teeth_of(chips: Chips) -> Teeth:
    """The chips as columns."""
    rows = [(tooth.height, tooth.area, tooth.width, tooth.radius) for tooth in chips.teeth]
    return Teeth(*np.array(rows, dtype=float).reshape(-1, 4).T)


def cutting_forces(teeth: Teeth, law: Kienzle, rake: float) -> Floats:
    """Force of every tooth along its cut [N], (n,).

    The law is carried on below the chips of its tests: `thin_share` says for how much. What an edge
    rubs off rather than cuts comes dear by it too, as the law has no least thickness.

    Args:
        teeth: with their chips.
        law: of the material.
        rake: of the edges [deg].

    Source: Kienzle; force = kc(mean thickness) x area of the chip.
    """
    specific = law.kc11 * teeth.thickness**-law.mc
    return law.of_rake(rake) * specific * teeth.area


def cutting_torques(teeth: Teeth, forces: Floats) -> Floats:
    """Torque of every tooth [N·m], (n,): its force at the radius of its chip."""
    return forces * teeth.radius / N_M


def thin_share(teeth: Teeth, torques: Floats) -> float:
    """Share of the torque from chips thinner than the tests behind the constants cut.

    Source: limits of those tests, `kienzle.FITTED`.
    """
    total = float(np.sum(torques))
    if total == 0:
        return 0.0
    return float(np.sum(torques[teeth.thickness < FITTED[0]])) / total


def together(heights: Floats, values: Floats, fronts: Floats, reach: float) -> Floats:
    """Sum of the values of all teeth in the work, for places of the tap's front, (m,).

    Args:
        heights: z of the teeth, ascending, (n,) [mm].
        values: of the teeth, (n,).
        fronts: depth of the front below the face of the work, (m,) [mm].
        reach: thickness of the work, `inf` for a hole with a bottom [mm].

    Source: derived here; a tooth at z is in the work while `0 <= front - z <= reach`: where the
    work is a whole number of the teeth's spacings thick, one enters as another leaves, and both
    count, on whatever side their last digits lie.
    """
    sums = np.concatenate(([0.0], np.cumsum(values)))
    entered = np.searchsorted(heights, fronts, side="right")
    left = np.searchsorted(heights, fronts - reach - SAME, side="left")
    return sums[entered] - sums[left]


def most_together(heights: Floats, values: Floats, reach: float) -> float:
    """The greatest sum of `together` on the whole way; it is met as a tooth enters."""
    if not heights.size:
        return 0.0
    return float(np.max(together(heights, values, heights, reach)))
