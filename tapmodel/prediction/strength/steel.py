"""What stress a hardened steel bears, by its hardness."""

import math

import numpy as np

from tapmodel.errors import InputError
from tapmodel.prediction.band import Band

TENSILE = (
    (30.0, 970.0),
    (35.0, 1105.0),
    (40.0, 1260.0),
    (45.0, 1480.0),
    (48.0, 1635.0),
    (50.0, 1760.0),
    (51.0, 1820.0),
    (52.0, 1880.0),
    (53.0, 1950.0),
    (54.0, 2015.0),
    (55.0, 2075.0),
)
"""Hardness [HRC] and tensile strength [MPa]: a coupling maker's table after JIS and SAE, as read on
mikipulley.co.jp, from 45 HRC; below it ISO 18265, from memory."""

HARDEST = 70.0
"""No steel is harder [HRC]."""

CAPPED = (2000.0, 2100.0)
"""Between which the strength beyond 55 HRC is taken to lie [MPa]: no usable tensile test is
published there, for flaws decide (from memory, with medium confidence)."""

TESTED = 1.0
"""How well a hardness is known [HRC]: what a tester repeats and a part varies (common practice)."""

SHEARED = 1 / math.sqrt(3)
"""Shear by tension at which a ductile metal yields (von Mises)."""

YIELDS = (0.8, 0.9, 0.95)
"""Yield by tensile strength of hardened steel tempered low: least, likely, greatest; 0.9 as
derived for the table of strengths, the ends from memory."""


def tensile(hardness: float) -> Band:
    """Tensile strength of a hardened steel [MPa], which is also where it breaks in torsion.

    In torsion the greatest tension equals the shear, and a brittle steel breaks by it.

    Args:
        hardness: [HRC].

    Raises:
        InputError: softer or harder than the table and its continuation reach.

    Source: `TENSILE`; from its end on its last value, within `CAPPED`.
    """
    softest, table_end = TENSILE[0][0], TENSILE[-1][0]
    if not softest <= hardness <= HARDEST:
        allowed = f"{softest:g} to {HARDEST:g} HRC"
        raise InputError("hardness", hardness, allowed)
    if hardness >= table_end:
        return Band(CAPPED[0], TENSILE[-1][1], CAPPED[1])
    low, likely, high = (_table(hardness + more) for more in (-TESTED, 0.0, TESTED))
    return Band(min(low, CAPPED[0]), likely, high)


def yield_shear(hardness: float) -> Band:
    """Shear at which a hardened steel first yields [MPa]; arguments and errors as `tensile`.

    Source: von Mises on `YIELDS` of the tensile strength.
    """
    breaks = tensile(hardness)
    least, likely, most = YIELDS
    return Band(
        SHEARED * least * breaks.low,
        SHEARED * likely * breaks.likely,
        SHEARED * most * breaks.high,
    )


def _table(hardness: float) -> float:
    at, strength = zip(*TENSILE, strict=True)
    return float(np.interp(hardness, at, strength))
