"""The most carbon that austenite holds."""

import numpy as np

from tapmodel.sources import Source
from tapmodel.words import Certainty

SATURATION = Source("iron-carbon diagram", "line Acm, low certainty", Certainty.MEMORY)

_HELD = ((727.0, 0.77), (850.0, 1.05), (900.0, 1.2), (925.0, 1.25), (950.0, 1.35), (1148.0, 2.11))
"""Temperature [deg C] and carbon [mass %]."""


def saturation(celsius: float) -> float:
    """The most carbon that austenite holds at a temperature [mass %].

    Args:
        celsius: from 727 to 1148 deg C; beyond these the ends' values.

    Source: `SATURATION`, straight between its points.
    """
    heats, carbon = zip(*_HELD, strict=True)
    return float(np.interp(celsius, heats, carbon))
