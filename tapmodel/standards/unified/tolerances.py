"""Tolerances of Unified internal threads by the standard's formulas; everything in inches."""

from tapmodel.standards.inches import printed

FACTORS = {"1B": 1.95, "2B": 1.30, "3B": 0.975}
"""TD2 of each class in terms of the pitch-diameter tolerance of the screw of class 2A."""

SMALL = 0.25
"""Below this size the minor-diameter tolerance of every class follows one formula."""


def rounded_pitch(tpi: float) -> float:
    """Pitch to the eight places with which the standard computes.

    Source: ASME B1.1-2019, as read in Machinery's Handbook 31st ed. p. 1996.
    """
    return round(1 / tpi, 8)


def engagement(diameter: float, tpi: float, series: str) -> float:
    """Length of engagement LE that the tolerances are based on.

    Source: ASME B1.1 (from memory): D for UNC, UNF and 4, 6 and 8 UN, else 9P, which the handbook's
    worked example of 1/2-28 UNEF confirms (read, Machinery's Handbook 31st ed. p. 1996 ff.).
    """
    by_diameter = series in ("UNC", "UNF") or (series == "UN" and tpi in (4, 6, 8))
    return diameter if by_diameter else 9 * rounded_pitch(tpi)


def screw_tolerance(diameter: float, pitch: float, length: float) -> float:
    """Td2 of class 2A, on which the tolerances of every class are based.

    Source: ASME B1.1 (from memory); agrees with the worked example 1/2-28 UNEF-2A, 0.003668.
    """
    return printed(
        0.0015 * diameter ** (1 / 3) + 0.0015 * length**0.5 + 0.015 * pitch ** (2 / 3), 6
    )


def pitch_tolerance(diameter: float, tpi: float, series: str, hole_class: str) -> float:
    """TD2 of a class 1B, 2B or 3B.

    Source: ASME B1.1 (from memory).
    """
    length = engagement(diameter, tpi, series)
    return printed(FACTORS[hole_class] * screw_tolerance(diameter, rounded_pitch(tpi), length), 6)


def minor_tolerance(diameter: float, tpi: float, hole_class: str) -> float:
    """TD1 of a class 1B, 2B or 3B.

    Source: ASME B1.1; classes 1B and 2B from 1/4 in up as read in Machinery's Handbook 31st ed.
    p. 1996 ff., the rest from memory.
    """
    pitch = rounded_pitch(tpi)
    if hole_class == "3B":
        least = 0.23 * pitch - 1.5 * pitch**2 if tpi >= 13 else 0.12 * pitch
    else:
        least = 0.25 * pitch - 0.4 * pitch**2 if tpi > 4 else 0.15 * pitch
    if hole_class != "3B" and diameter >= SMALL:
        return printed(least, 6)
    computed = 0.05 * pitch ** (2 / 3) + 0.03 * pitch / diameter - 0.002
    return printed(min(max(computed, least), 0.394 * pitch), 6)
