"""Saint-Venant torsion of a section whose edge is lines and arcs.

Prandtl's function is `u - r**2/2`, u the harmonic function that equals `r**2/2` on the edge; its
conjugate v is, but for the sign, how far the section warps. Both are one analytic function f =
u + iv, found on the edge alone. A bore about the axis is a second edge, on which u is `r**2/2`
and a constant that makes f analytic in the bore's surroundings: one condition for one more
unknown. Sections with other holes are not covered.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapmodel.prediction.strength.analytic import conjugate
from tapmodel.prediction.strength.edge import Edge, by_number

Floats = NDArray[np.float64]
Complexes = NDArray[np.complex128]

_CROWDED = 1e-3
"""Nodes whose step is less than this share of the section's size by number are too close to a
corner to tell the shear there; on a convex corner it vanishes, on a sharp inner one it has no
bound."""


@dataclass(frozen=True, slots=True, eq=False)
class Torsion:
    """A section in torsion; shears are those of a torque of 1 N·mm.

    Attributes:
        edge: of the section.
        stiffness: the torsion constant J [mm⁴]: torque by twist and modulus of rigidity.
        values: f at the nodes of the outside and, after them, of the bore, shape (n + m,) [mm²].
        places: x + iy of the nodes of the outside at which the shear is told, shape (k,) [mm].
        shear: along the edge there, shape (k,) [1/mm³].
        peak: greatest of all [1/mm³], between nodes.
        peak_place: x and y where it stands, in the sector given [mm].
    """

    edge: Edge
    stiffness: float
    values: Complexes
    places: Complexes
    shear: Floats
    peak: float
    peak_place: tuple[float, float]

    @property
    def modulus(self) -> float:
        """Torque by peak shear [mm³]."""
        return 1 / self.peak


def torsion_of(edge: Edge) -> Torsion:
    """Torsion constant and shear along the edge of a section.

    Source: derived here; J is the integral of `r**2/4 (r.n) ds + v d(r**2/2)` along the edge, the
    shear along it `|dv/ds - r.n| / J`.
    """
    size = edge.size
    outside, bore = edge.places / size, edge.bore_places / size
    places = np.concatenate([outside, bore])
    steps = np.concatenate([edge.steps, edge.bore_steps]) / size
    across = (np.conj(places) * steps).imag
    slope = (np.conj(places) * steps).real
    square = np.abs(places) ** 2
    real, imaginary = _analytic(places, steps, edge, square / 2, slope)
    sector = float(np.sum(square * across / 4 + imaginary * slope))
    stiffness = sector * edge.turns
    count = len(outside)
    length = np.abs(steps[:count])
    told = length > _CROWDED
    swirl = by_number(imaginary[:count]) - across[:count]
    shear = np.abs(swirl[told] / length[told]) / stiffness
    peak, place = peak_of(outside[told], shear)
    return Torsion(
        edge=edge,
        stiffness=stiffness * size**4,
        values=(real + 1j * imaginary) * size**2,
        places=edge.places[told],
        shear=shear / size**3,
        peak=peak / size**3,
        peak_place=(place.real * size, place.imag * size),
    )


def round_torsion(diameter: float, bore: float = 0.0) -> tuple[float, float]:
    """J [mm⁴] and modulus [mm³] of a round section, `bore` the diameter of a bore in it [mm].

    Source: Coulomb's law of the round shaft.
    """
    stiffness = math.pi * (diameter**4 - bore**4) / 32
    return stiffness, stiffness / (diameter / 2)


def _analytic(
    places: Complexes, steps: Complexes, edge: Edge, real: Floats, slope: Floats
) -> tuple[Floats, Floats]:
    """Real and imaginary part of f on the edge, in the plane of the powers of the places."""
    turns = edge.turns
    powers = places**turns
    power_steps = turns * places ** (turns - 1) * steps
    if not len(edge.bore_places):
        found = conjugate(powers, power_steps, real[:, None], slope[:, None])
        return real, found[:, 0]
    inner = np.zeros_like(real)
    inner[len(edge.places) :] = 1.0
    known = np.stack([real, inner], axis=1)
    found = conjugate(powers, power_steps, known, np.stack([slope, 0 * slope], axis=1))
    # Cauchy's integral of an analytic function vanishes in the bore, also on the axis.
    pull = power_steps / powers
    left = np.sum(pull[:, None] * (known + 1j * found), axis=0).imag
    constant = -left[0] / left[1]
    return real + constant * inner, found[:, 0] + constant * found[:, 1]


def peak_of(places: Complexes, shear: Floats) -> tuple[float, complex]:
    """Greatest shear and its place.

    Args:
        places: nodes in order along an edge, x + iy, shape (n,), any unit.
        shear: at each, shape (n,), any unit.

    Source: the parabola through the greatest node and its neighbours on either side.
    """
    middle = int(np.argmax(shear))
    here = complex(places[middle])
    if middle in (0, len(shear) - 1):
        return float(shear[middle]), here
    before, after = middle - 1, middle + 1
    left = -abs(here - complex(places[before]))
    right = abs(complex(places[after]) - here)
    rise_left = (shear[before] - shear[middle]) / left
    rise_right = (shear[after] - shear[middle]) / right
    bend = (rise_right - rise_left) / (right - left)
    if not bend < 0:
        return float(shear[middle]), here
    slope = rise_left - bend * left
    away = float(np.clip(-slope / (2 * bend), left / 2, right / 2))
    other = complex(places[before] if away < 0 else places[after])
    share = away / (left if away < 0 else right)
    return float(shear[middle] + slope * away + bend * away**2), here + share * (other - here)
