"""Temperatures as people write them: 925, 925C, "1700 F"."""

import re

HOW = "a temperature such as 925, 925C or 1700F; a bare number is in °C"
"""What a message says is allowed."""

_TEMPERATURE = re.compile(
    r"(?P<number>-?[0-9]{1,5}(?:\.[0-9]{0,9})?)\s*(?:°|deg)?\s*(?P<unit>[CF])?",
    re.IGNORECASE | re.ASCII,
)


def celsius_of(text: str) -> float | None:
    """A temperature [deg C]; None where `text` is none."""
    found = _TEMPERATURE.fullmatch(text.strip())
    if found is None:
        return None
    return celsius(float(found["number"]), (found["unit"] or "C").upper())


def celsius(temperature: float, unit: str) -> float:
    """A temperature [deg C] as written in deg C or F; any other quantity as it is."""
    return (temperature - 32) / 1.8 if unit == "F" else temperature
