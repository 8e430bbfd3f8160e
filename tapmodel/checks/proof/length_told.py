"""A measured distance in the unit in which it reads well: 16 mm, 0.88 mm, 12 µm, 0.02 µm."""

import math

_IN_MM = 100.0  # from here on [µm]
LEAST = 1e-3
"""Below it no reader cares [µm]."""


def length_told(micrometres: float) -> str:
    """Two digits of it, or all before the point, without exponent; 0 < `micrometres` [µm]."""
    value, unit = (
        (micrometres / 1000, "mm") if micrometres >= _IN_MM else (max(micrometres, LEAST), "µm")
    )
    digits = max(1 - math.floor(math.log10(value)), 0)
    text = f"{value:.{digits}f}"
    return f"{text.rstrip('0').rstrip('.') if '.' in text else text} {unit}"
