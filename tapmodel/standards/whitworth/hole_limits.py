"""Limits of the Whitworth nut that a tap is to cut, computed in inches as BS 84 does."""

import math

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.standards.inches import MM
from tapmodel.standards.limits import HoleLimits, HoleLimitsFound, Unlisted
from tapmodel.standards.thread_forms import WHITWORTH
from tapmodel.standards.whitworth.pitches import pairing_source, series_of
from tapmodel.values import NO_VALUES, Values
from tapmodel.words import Certainty

FACTORS = {"close": 2 / 3, "medium": 1.0, "normal": 3 / 2}
"""Effective-diameter tolerance of each class of nut, in that of class medium."""

TOLERANCES = Source(
    "BS 84:1956",
    "bases of tolerances: T = 0.002 D^1/3 + 0.003 L^1/2 + 0.005 p^1/2 inch for class medium, "
    "2/3 T close, 3/2 T normal; minor diameter 0.2 p + 0.004 to 0.007 inch (medium confidence)",
    Certainty.MEMORY,
)
LENGTH = Source(
    "tapmodel",
    "rule of this program: length of engagement L equal to the diameter",
    Certainty.DERIVED,
)


def whitworth_hole_limits(
    diameter: float, threads: float, nut_class: str, text: str
) -> HoleLimitsFound:
    """Limits of an internal thread.

    Args:
        diameter: nominal diameter D [inch].
        threads: threads per inch.
        nut_class: close, medium or normal.
        text: the designation, for messages.

    Raises:
        InputError: the tolerances of this class are wider than the thread is deep.

    Source: BS 84:1956, form as read in Machinery's Handbook, tolerances from memory; the depth of
    thread and the tolerances are rounded to 0.0001 inch, the diameters are their sums.
    """
    depth = round(WHITWORTH.pitch_drop / threads, 4)
    pitch_tolerance = round(FACTORS[nut_class] * effective_tolerance(diameter, threads), 4)
    minor_tolerance = round(nut_minor_tolerance(threads), 4)
    if max(pitch_tolerance, minor_tolerance) >= depth:
        raise InputError(
            "designation",
            text,
            f"fewer than {threads:g} threads per inch at this diameter, or a closer class than "
            f"{nut_class}: its tolerances exceed the depth of the thread",
        )
    effective, minor = diameter - depth, diameter - 2 * depth
    listed = bool(series_of(diameter, threads))
    pairing = (pairing_source(diameter),) if listed else ()
    return HoleLimitsFound(
        limits=HoleLimits(
            major_min=_mm(diameter),
            pitch_min=_mm(effective),
            pitch_max=_mm(effective + pitch_tolerance),
            minor_min=_mm(minor),
            minor_max=_mm(minor + minor_tolerance),
        ),
        listed=listed,
        sources=(TOLERANCES, WHITWORTH.source, *pairing, LENGTH),
        note=NO_VALUES if listed else Values(why=(Unlisted.WHITWORTH_SERIES,), threads=threads),
    )


def effective_tolerance(diameter: float, threads: float) -> float:
    """Effective-diameter tolerance T of class medium [inch], not rounded.

    Args:
        diameter: nominal diameter, taken as length of engagement too [inch].
        threads: threads per inch.

    Source: BS 84:1956 (from memory, medium confidence); L = D is a rule of this program.
    """
    return 0.002 * math.cbrt(diameter) + 0.003 * math.sqrt(diameter) + 0.005 / math.sqrt(threads)


def nut_minor_tolerance(threads: float) -> float:
    """Minor-diameter tolerance of a nut of any class [inch], not rounded.

    BS 84 speaks of 26 and finer, of 24 and 22, and of 20 and coarser threads per inch; a number
    between two of these takes the tolerance of the finer one.

    Source: BS 84:1956 (from memory, medium confidence); between the numbers derived here.
    """
    constant = 0.007 if threads <= 20 else 0.005 if threads <= 24 else 0.004
    return 0.2 / threads + constant


def _mm(inches: float) -> float:
    """In mm; the rounding only takes away the noise of binary fractions."""
    return round(inches * MM, 9)
