"""The torque at which a whole section yields: twice the heap of sand that would lie on it."""

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.strength.edge import Edge

Floats = NDArray[np.float64]

_STRAIGHT = 1e-12
"""A node whose height over another's tangent is less than this share of the size lies on it."""


def sand_heap(edge: Edge) -> float:
    """Fully plastic torque by yield in shear [mm³]: twice the volume of a heap of slope 1.

    The heap's height is the distance from the edge; from each node it rises as far as
    `reach_inwards` tells. Edges with sharp inner corners are not covered. A bore is
    filled to the level that the heap has at its rim.

    Source: Nadai's sand heap (textbook, from memory); its volume by lines derived here.
    """
    climb = reach_inwards(edge)
    length = np.abs(edge.steps)
    volume = edge.turns * float(np.sum(length * (climb**2 / 2 - edge.bends * climb**3 / 3)))
    return 2 * (volume - np.pi * edge.bore**3 / 3)


def reach_inwards(edge: Edge) -> Floats:
    """How far one gets from each node, square to the edge, before other edge is as near [mm].

    Source: derived here; a circle that touches the edge in the node and goes through another.
    """
    size = edge.size
    here = edge.places / size
    turned = np.exp(2j * np.pi / edge.turns * np.arange(edge.turns))
    others = (here[None, :] * turned[:, None]).ravel()
    inwards = 1j * edge.steps / np.abs(edge.steps)
    apart = others[None, :] - here[:, None]
    height = (np.conj(inwards)[:, None] * apart).real
    height = np.where(height > _STRAIGHT, height, np.nan)
    return np.nanmin(np.abs(apart) ** 2 / (2 * height), axis=1) * size
