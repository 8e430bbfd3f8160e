"""Names of materials as people write them: "C45", "mild steel", 1.4301, 304."""

MOST = 10_000
"""Whole numbers from here on are no name of a material."""

PLACES = 4
"""Decimals of the numbers that standards give to materials: 1.0570 must not become 1.057."""


def as_name(value: object) -> object:
    """A number that may be the name of a material as text; whatever else it is, as it is."""
    if isinstance(value, bool):
        return value
    if isinstance(value, int) and 0 < value < MOST:
        return str(value)
    # A number of a standard has one digit before its point.
    if isinstance(value, float) and 0 < value < 10:
        return f"{value:.{PLACES}f}"
    return value
