"""Blanks of hand taps in millimetre sizes: shank, lengths and square for a thread diameter."""

import math
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.standards.metric.pitches import MAX_DIAMETER, MIN_DIAMETER
from tapmodel.standards.tables import read_table
from tapmodel.words import Certainty

LISTED = Source("ISO 529:2017", "coarse-pitch hand taps; square by ISO 237", Certainty.MEMORY)
BETWEEN = Source(
    "ISO 529:2017",
    "between two rows: lengths of the larger size, shank of the larger size up to 10 mm and the "
    "thinner of the two above, so that it passes the hole; square by ISO 237",
    Certainty.DERIVED,
)
BELOW = Source(
    "tapmodel",
    "below the smallest size of ISO 529: its shank, overall length and square, so that the tap can "
    "be held; the thread shorter in proportion",
    Certainty.DERIVED,
)
BEYOND = Source(
    "tapmodel", "in proportion to the largest listed size; square 0.8 x shank", Certainty.DERIVED
)

LARGEST_FULL_SHANK = 10.0
"""Up to this thread diameter [mm] the listed shank is about as thick as the thread."""


@dataclass(frozen=True, slots=True)
class BlankRow:
    """Sizes of a blank [mm].

    Attributes:
        diameter: thread diameter asked for.
        shank: shank diameter.
        thread_length: greatest length of the thread, chamfer included.
        overall_length: front to rear face.
        square_across_flats, square_length: driving square.
        listed: True when the standard lists this very diameter.
        source: where the row comes from.
        thread_source: where the length of its thread comes from.
    """

    diameter: float
    shank: float
    thread_length: float
    overall_length: float
    square_across_flats: float
    square_length: float
    listed: bool
    source: Source
    thread_source: Source


def blank_for(diameter: float) -> BlankRow:
    """Blank for a thread diameter of 0.3 to 300 [mm], in millimetre sizes.

    Between two listed sizes the lengths are those of the larger. The shank, too, up to 10 mm;
    above that it is the thinner of the two neighbours' shanks, so that it passes the hole. Below
    M1 only the thread grows shorter (to the next 0.5 mm). Beyond M60 all sizes grow in proportion
    (lengths to the next whole mm, shank down to a whole mm).

    Raises:
        InputError: diameter out of range.

    Source: ISO 529:2017 (from memory); between and beyond its rows derived here.
    """
    if not MIN_DIAMETER <= diameter <= MAX_DIAMETER:
        raise InputError("diameter", diameter, f"{MIN_DIAMETER:g} to {MAX_DIAMETER:g} mm")
    rows = _listed()
    for size, shank, thread, overall in rows:
        if size == diameter:
            return _row(diameter, shank, thread, overall, LISTED)
    size, shank, thread, overall = rows[0]
    if diameter < size:
        shorter = math.ceil(round(2 * thread * diameter / size, 6)) / 2
        return _row(diameter, shank, shorter, overall, BELOW)
    for (_, below, _, _), (size, shank, thread, overall) in pairwise(rows):
        if diameter < size:
            chosen = shank if diameter <= LARGEST_FULL_SHANK else min(below, shank)
            return _row(diameter, chosen, thread, overall, BETWEEN)
    size, shank, thread, overall = rows[-1]
    k = diameter / size
    return _row(
        diameter, math.floor(k * shank), math.ceil(k * thread), math.ceil(k * overall), BEYOND
    )


def square_for(shank: float) -> tuple[float, float]:
    """Driving square of a shank diameter: (across flats, length), all [mm].

    Outside the table: 0.8 x shank, 1 mm longer than wide and at least 4 mm long.

    Raises:
        InputError: shank not a positive size.

    Source: ISO 237:1975 (from memory); outside its range derived here.
    """
    if not 0 < shank < math.inf:
        raise InputError("shank", shank, "a diameter over 0 mm")
    for over, to, across_flats, length in _squares():
        if over < shank <= to:
            return across_flats, length
    across_flats = 0.8 * shank
    return across_flats, max(4.0, across_flats + 1)


@cache
def _listed() -> tuple[tuple[float, ...], ...]:
    """Thread, shank, length of thread and of all, row by row [mm]."""
    return tuple(tuple(map(float, row.values())) for row in read_table("iso_529"))


@cache
def _squares() -> tuple[tuple[float, ...], ...]:
    """Shank over and up to, across flats and length of its square, row by row [mm]."""
    columns = ("over", "to", "across_flats", "length")
    return tuple(tuple(float(row[name]) for name in columns) for row in read_table("iso_237"))


@cache
def shanks() -> tuple[float, ...]:
    """Preferred shanks [mm], thinnest first.

    Source: ISO 237:1975 (from memory).
    """
    return tuple(float(row["shank"]) for row in read_table("iso_237"))


def _row(diameter: float, shank: float, thread: float, overall: float, source: Source) -> BlankRow:
    across_flats, length = square_for(shank)
    return BlankRow(
        diameter=diameter,
        shank=shank,
        thread_length=thread,
        overall_length=overall,
        square_across_flats=across_flats,
        square_length=length,
        listed=source is LISTED,
        source=source,
        thread_source=source,
    )
