"""The case that the trade's own table promises: Harris's formula."""

import math

from tapmodel.prediction.heat.diffusivity import KELVIN
from tapmodel.sources import Source
from tapmodel.words import Certainty

HARRIS = Source(
    "F. E. Harris",
    "total case of a saturated surface; constants from memory, they give the table as read",
    Certainty.MEMORY,
)

_MM_PER_INCH = 25.4


def total_case(celsius: float, hours: float) -> float:
    """Total depth of case [mm]: down to some 0.07 % more carbon than the core has.

    Args:
        celsius: at which it is carburised [deg C].
        hours: of time.

    Source: `HARRIS`; `31.6 sqrt(t) / 10**(6700 / (F + 460))` in inches, where 460 is the rounded
    absolute zero: with 459.67 the printed table comes out.
    """
    rankine = 1.8 * (celsius + KELVIN)
    return _MM_PER_INCH * 31.6 * math.sqrt(hours) / 10 ** (6700 / rankine)
