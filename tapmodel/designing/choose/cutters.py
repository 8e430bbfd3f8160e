"""Ball-nose cutters: those that a shop is likely to have, and those that it can buy."""

import math

from tapmodel.spec.designations.reading.inches import MM

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

INCH_CUTTERS = tuple(round(float(MM) * sixteenths / 16, 4) for sixteenths in range(1, 21))
"""Diameters that inch cutters are stocked in, 1/16 to 1 1/4 in [mm] (from memory)."""


def cutters_to_buy(on_hand: tuple[float, ...]) -> tuple[float, ...]:
    """Cutters that are stocked and not on hand, of inches where all on hand are, all [mm].

    Source: `CUTTERS` and `INCH_CUTTERS`.
    """
    in_inches = on_hand and all(map(_of_inches, on_hand))
    stocked = INCH_CUTTERS if in_inches else (*MICRO_CUTTERS, *CUTTERS, *LARGE_CUTTERS)
    return tuple(cutter for cutter in sorted({*stocked}) if not _among(cutter, on_hand))


def _of_inches(cutter: float) -> bool:
    sixty_fourths = 64 * cutter / float(MM)
    return math.isclose(sixty_fourths, round(sixty_fourths), abs_tol=1e-6)


def _among(cutter: float, on_hand: tuple[float, ...]) -> bool:
    return any(math.isclose(cutter, other, abs_tol=1e-6) for other in on_hand)
