"""The formulas behind the tolerance tables of ISO 965-1, for pairs the tables do not hold.

The printed tables depart from them in some cells ("smooth progression"), so a table value, where
there is one, always comes first; see `tapmodel.standards.metric.tolerances`.
"""

import math
from itertools import pairwise

from tapmodel.sources import Source
from tapmodel.standards.metric.r40 import whole_micrometres
from tapmodel.words import Certainty

RANGE_LIMITS = (0.175, 0.35, 0.7, 0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45.0, 90.0, 180.0, 355.0)
"""Over the one, up to and including the next [mm].

Machinery's Handbook 31st ed. p. 2025 prints 1.5 for 1.4; the standard has 1.4 (from memory). It
begins at 0.99; the ranges below that carry its doubling on.
"""

PITCH_FACTORS = {4: 0.85, 5: 1.06, 6: 1.32, 7: 1.7, 8: 2.12}
MINOR_FACTORS = {4: 0.63, 5: 0.8, 6: 1.0, 7: 1.25, 8: 1.6}
FORMULA_SOURCE = Source(
    "ISO 965-1:1998",
    "clause 13 formula rounded to R40, grade factors as read in Machinery's Handbook 27th ed. "
    "p. 1797",
    Certainty.READ,
)


def diameter_range(diameter: float) -> tuple[float, float]:
    """The range (over, up to and including) [mm] that a diameter [mm] falls into.

    Source: ISO 965-1, table of TD2; Machinery's Handbook 31st ed. p. 2025.
    """
    return next(pair for pair in pairwise(RANGE_LIMITS) if pair[0] < diameter <= pair[1])


def computed_pitch_tolerance(diameter: float, pitch: float, grade: int) -> int:
    """TD2 [µm] = factor x 90 P^0.4 d^0.1 with d the geometric mean of the diameter range [mm].

    Source: ISO 965-1:1998 clause 13 (read; the geometric mean from memory).
    """
    mean = math.sqrt(math.prod(diameter_range(diameter)))
    return whole_micrometres(PITCH_FACTORS[grade] * 90 * pitch**0.4 * mean**0.1)


def computed_minor_tolerance(pitch: float, grade: int) -> int:
    """TD1 [µm] = factor x (433 P - 190 P^1.22) up to P 0.8, factor x 230 P^0.7 above.

    The standard gives the second for P >= 1 and nothing between; there the second is used, being
    the tighter of the two.

    Source: ISO 965-1:1998 clause 13 (read).
    """
    basic = 433 * pitch - 190 * pitch**1.22 if pitch <= 0.8 else 230 * pitch**0.7
    return whole_micrometres(MINOR_FACTORS[grade] * basic)


def computed_deviation(pitch: float) -> int:
    """EI [µm] of position G = 15 + 11 P.

    Source: ISO 965-1:1998 clause 13 (read).
    """
    return whole_micrometres(15 + 11 * pitch)
