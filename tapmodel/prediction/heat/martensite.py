"""What a quench makes of the carbon: hardness of martensite, and austenite that stays soft."""

import math

from tapmodel.sources import Source
from tapmodel.words import Certainty

HARDNESS = Source(
    "Litwinchuk 1976", "fit to the hardness of martensite, as read in a public code", Certainty.READ
)
START = Source(
    "K. W. Andrews 1965",
    "start of martensite, linear formula, which ends near 0.6 % carbon",
    Certainty.MEMORY,
)
RETAINED = Source("Koistinen and Marburger 1959", "austenite left by a quench", Certainty.MEMORY)

_FIT = (7.35247546, -49.43090942, 123.8518122, -176.93894801, 137.65069739, 22.54730001)
"""Of HRC in powers of the carbon [mass %], the fifth first."""

FITTED = (0.1, 1.0)
"""Carbon [mass %] for which the fit is told; beyond it the end's value is taken."""

ROOM = 20.0
"""Of the quenchant at its end [deg C]."""


def martensite_hardness(carbon: float) -> float:
    """Hardness of martensite as quenched [HRC], were nothing else there.

    Args:
        carbon: [mass %].

    Source: `HARDNESS`. Above 0.9 % the fit does not fall as steel does that keeps austenite.
    """
    held = min(max(carbon, FITTED[0]), FITTED[1])
    found = 0.0
    for factor in _FIT:
        found = found * held + factor
    return found


def martensite_start(carbon: float) -> float:
    """Where martensite begins to form in plain carbon steel [deg C].

    Source: `START`; `539 - 423 C`, the other elements left out.
    """
    return 539 - 423 * carbon


def retained_austenite(carbon: float) -> float:
    """Share of austenite that a quench to 20 deg C leaves, 0 to 1; an order of size.

    Source: `RETAINED`; `exp(-0.011 (Ms - 20))`.
    """
    return math.exp(-0.011 * max(martensite_start(carbon) - ROOM, 0.0))
