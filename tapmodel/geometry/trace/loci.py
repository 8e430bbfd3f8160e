"""What a family of loci is; its kinds say where they run, where they show and what they part."""

from abc import ABC, abstractmethod

import numpy as np
from numpy.typing import NDArray

from tapmodel.geometry.trace.keys import FacePair
from tapmodel.geometry.trace.zeros import Function

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


class Loci(ABC):
    """Loci of one kind, evaluated together: locus `i` at parameter `t` (arrays of one shape).

    Attributes:
        lower, upper: bounds of the parameter, one of each for every locus.
        longest_span: the most that one polynomial may cover.
        least_degree: of the polynomials, but for edges shorter than `bends_over`.
        bends_over: length of the parameter that no polynomial of a low degree follows.
        density: multiplies the first cells where a locus passes many turns.
    """

    lower: Floats
    upper: Floats
    longest_span: float = float(np.inf)
    least_degree: int = 3
    bends_over: float = 0.0
    density: int = 1

    @abstractmethod
    def at(self, i: Indices, t: Floats) -> Floats:
        """Points, shape (..., 3) [mm]."""

    @abstractmethod
    def carriers(self, i: Indices, t: Floats) -> list[FacePair]:
        """The two faces that meet along loci `i` about parameters `t`, shape (n,) both."""

    def conditions(self, i: Indices, t: Floats) -> Floats:
        """Shape (k, ...): all positive where the locus is an edge of the tap; it is all the way."""
        del i
        return np.ones((1, *t.shape))

    def cuts(self) -> list[Function]:
        """Functions at whose zeros the edge passes from one neighbour face to another."""
        return []

    def angle(self, i: Indices, t: Floats) -> Floats:
        """Angle behind the crest edge of a land [rad]; where no more is said, the parameter."""
        del i
        return t

    def kink_angles(self) -> list[float]:
        """Angles behind the crest edge at which the curvature jumps [rad]."""
        return []

    def kinks(self) -> list[Function]:
        """Functions at whose zeros the curvature jumps, so that one polynomial must end."""
        return [self._at_angle(angle) for angle in self.kink_angles()]

    def _at_angle(self, angle: float) -> Function:
        return lambda i, t: self.angle(i, t) - angle
