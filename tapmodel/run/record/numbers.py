"""Numbers as a file can hold them."""

import math


def finite(value: float | None) -> float | None:
    """No file takes a number without end; the texts beside it say that it is none."""
    return value if value is not None and math.isfinite(value) else None
