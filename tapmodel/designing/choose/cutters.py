"""Ball-nose cutters: those that a shop is likely to have, and those that it can buy."""

import math
from functools import lru_cache

from tapmodel.spec.designations.reading.inches import MM
from tapmodel.words import ToolSizes

LARGEST_MICRO = 2.0
"""Thread diameter [mm] below which the rule counts on micro cutters."""
LEAST_LARGE = 60.0
"""Thread diameter [mm] above which the rule counts on large cutters."""

CUTTERS = (
    *(0.5, 0.8, 1.0, 1.2, 1.5, 1.6, 1.8, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0, 7.0, 8.0),
    *(10.0, 12.0, 14.0, 16.0, 18.0, 20.0),
)
"""Diameters that ball-nose cutters are stocked in [mm] (from memory)."""
MICRO_CUTTERS = (
    *(0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9),
    *(1.0, 1.2, 1.4, 1.5, 1.6, 1.8, 2.0),
)
LARGE_CUTTERS = (5.0, 6.0, 7.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 25.0, 32.0)


def _sixty_fourths(*numbers: int) -> tuple[float, ...]:
    return tuple(round(float(MM) * number / 64, 6) for number in numbers)


INCH_CUTTERS = _sixty_fourths(*range(2, 17), 18, 20, 22, 24, 28, 32, 36, 40, 44, 48)
"""Diameters that inch cutters are stocked in, 1/32 to 3/4 in [mm] (from memory)."""
INCH_MICRO_CUTTERS = (
    *(round(float(MM) * thousandths / 1000, 6) for thousandths in (5, 8, 10, 12, 15, 20, 25)),
    *_sixty_fourths(2, 3, 4, 5),
)
INCH_LARGE_CUTTERS = _sixty_fourths(12, 14, 16, 18, 20, 24, 28, 32, 36, 40, 44, 48, 56, 64, 80)


def cutters_likely(diameter: float, tools: ToolSizes) -> tuple[float, ...]:
    """Cutters that the rule counts on for a thread of that nominal `diameter`, all [mm].

    Source: the tables above.
    """
    inch = tools is ToolSizes.INCH
    if diameter < LARGEST_MICRO:
        return INCH_MICRO_CUTTERS if inch else MICRO_CUTTERS
    if diameter > LEAST_LARGE:
        return INCH_LARGE_CUTTERS if inch else LARGE_CUTTERS
    return INCH_CUTTERS if inch else CUTTERS


@lru_cache(maxsize=64)
def cutters_to_buy(on_hand: tuple[float, ...]) -> tuple[float, ...]:
    """Cutters that are stocked and not on hand, of inches where all on hand are, all [mm].

    Source: `CUTTERS`, `INCH_CUTTERS` and the smaller and larger beside them.
    """
    if on_hand and all(map(_of_inches, on_hand)):
        stocked = (*INCH_MICRO_CUTTERS, *INCH_CUTTERS, *INCH_LARGE_CUTTERS)
    else:
        stocked = (*MICRO_CUTTERS, *CUTTERS, *LARGE_CUTTERS)
    return tuple(cutter for cutter in sorted({*stocked}) if not among(cutter, on_hand))


def _of_inches(cutter: float) -> bool:
    inches = cutter / float(MM)
    return any(math.isclose(inches * n, round(inches * n), abs_tol=1e-4) for n in (64, 1000))


def among(cutter: float, on_hand: tuple[float, ...]) -> bool:
    """Whether a cutter is one of those on hand, all [mm]."""
    return any(math.isclose(cutter, other, abs_tol=1e-6) for other in on_hand)
