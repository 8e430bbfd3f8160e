"""How fast carbon moves through hot iron (austenite): faster where there is more of it."""

import math
from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from tapmodel.sources import Source
from tapmodel.words import Certainty

Floats = NDArray[np.float64]

Diffusivity = Callable[[Floats], Floats]
"""From carbon [mass %] to its diffusivity [mm²/s]."""

AGREN = Source(
    "J. Ågren, A revised expression for the diffusivity of carbon in binary Fe-C austenite",
    "Scripta Metallurgica 20 (1986), as read in four public codes",
    Certainty.READ,
)

KELVIN = 273.15
"""Of 0 deg C."""

_CARBON, _IRON = 12.011, 55.845
"""Grams in a mole."""

_MM2 = 1e6
"""Square millimetres in a square metre."""


def agren(celsius: float) -> Diffusivity:
    """The diffusivity at a temperature [deg C], as a function of carbon.

    Source: `AGREN`; 10 % from two other published laws at 0.8 % carbon, 1 % at 0.2 %.
    """
    kelvin = celsius + KELVIN
    lean = 1 / kelvin - 2.221e-4

    def law(carbon: Floats) -> Floats:
        y = atoms_of_carbon(carbon)
        crowd = 1 + y * (1 - y) * 8339.9 / kelvin
        return _MM2 * 4.53e-7 * crowd * np.exp(-lean * (17767 - 26436 * y))

    return law


def atoms_of_carbon(carbon: Floats) -> Floats:
    """Atoms of carbon for each atom of iron, from carbon [mass %].

    Source: the masses of their moles.
    """
    return (carbon / _CARBON) / ((100 - carbon) / _IRON)


def reach(law: Diffusivity, richest: float, seconds: float) -> float:
    """The length sqrt(D t) that carbon goes in a time, at its fastest [mm].

    Args:
        law: of diffusion.
        richest: the most carbon anywhere [mass %].
        seconds: of time.

    Source: the scale of every solution of Fick's second law.
    """
    return math.sqrt(float(law(np.array([richest]))[0]) * seconds)
