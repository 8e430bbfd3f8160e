"""Blanks of hand taps in inch sizes, as the standard of the Unified taps lists them."""

import math
from dataclasses import dataclass
from functools import cache

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.standards.blanks import BlankRow
from tapmodel.standards.inches import MM
from tapmodel.standards.tables import cell_source, read_table
from tapmodel.words import Certainty

STANDARD = "ASME B94.9"
THREAD = Source(STANDARD, "general dimensions of hand taps, length of thread", Certainty.MEMORY)
SQUARE = Source(
    STANDARD,
    "square 0.75 of the shank (0.78 below 0.2 in), as all its rows that were read have it",
    Certainty.DERIVED,
)

SLENDER, SLENDER_SHARE, SHARE = 0.2, 0.78, 0.75
"""Shank [in] below which the square is so much of it, and else so much."""

LARGEST_FULL_SHANK = 0.375
"""Up to this thread diameter [in] the listed shank is as thick as the thread."""

_EQUAL = 1e-6


@dataclass(frozen=True, slots=True)
class _Listed:
    """A row as printed [in]."""

    diameter: float
    thread_length: float
    overall_length: float
    shank: float
    across_flats: float
    square_length: float
    read: str


def inch_blank_for(diameter: float) -> BlankRow | None:
    """Blank for a thread diameter [mm] between No. 0 and 1 1/2 in; None where the list has none.

    Between two listed sizes the lengths are those of the larger. The shank, too, up to 3/8 in;
    above that it is the thinner of the two neighbours', so that it passes the hole.

    Source: ASME B94.9, as each row of its table says; between the rows derived here.
    """
    rows, size = _rows(), diameter / MM
    above = next((row for row in rows if row.diameter >= size - _EQUAL), None)
    if above is None or size < rows[0].diameter - _EQUAL:
        return None
    if abs(above.diameter - size) <= _EQUAL:
        place = "general dimensions of hand taps"
        return _row(diameter, above, above, cell_source(STANDARD, place, above.read))
    below = rows[rows.index(above) - 1]
    holder = above if size <= LARGEST_FULL_SHANK else min(above, below, key=lambda row: row.shank)
    between = "between two rows: lengths of the larger size, the thinner shank above 3/8 in"
    return _row(diameter, above, holder, Source(STANDARD, between, Certainty.DERIVED))


def inch_square_for(shank: float) -> tuple[float, float]:
    """Driving square of a shank [mm]: (across flats, length) [mm].

    A listed shank has its listed square; another 0.75 of itself across flats (0.78 below 0.2 in),
    as long as the next listed square.

    Raises:
        InputError: shank not a positive size.

    Source: ASME B94.9, as each row of its table says; other shanks derived here.
    """
    if not 0 < shank < math.inf:
        raise InputError("shank", shank, "a diameter over 0 mm")
    size = shank / MM
    by_shank = sorted(_rows(), key=lambda row: row.shank)
    next_one = next((row for row in by_shank if row.shank >= size - _EQUAL), None)
    if next_one and abs(next_one.shank - size) <= _EQUAL:
        return _mm(next_one.across_flats), _mm(next_one.square_length)
    across = (SLENDER_SHARE if size < SLENDER else SHARE) * size
    return _mm(round(across, 3)), _mm(next_one.square_length if next_one else round(size, 2))


def inch_shanks() -> tuple[float, ...]:
    """Listed shanks [mm], thinnest first.

    Source: ASME B94.9, as each row of its table says.
    """
    return tuple(sorted({_mm(row.shank) for row in _rows()}))


def _row(diameter: float, lengths: _Listed, holder: _Listed, source: Source) -> BlankRow:
    return BlankRow(
        diameter=diameter,
        shank=_mm(holder.shank),
        thread_length=_mm(lengths.thread_length),
        overall_length=_mm(lengths.overall_length),
        square_across_flats=_mm(holder.across_flats),
        square_length=_mm(holder.square_length),
        listed=lengths is holder and abs(lengths.diameter * MM - diameter) <= _EQUAL * MM,
        source=source,
        thread_source=THREAD,
    )


def _mm(size: float) -> float:
    """A printed size in mm, free of binary noise."""
    return round(size * MM, 6)


@cache
def _rows() -> tuple[_Listed, ...]:
    return tuple(
        _Listed(*(float(cell) for cell in list(row.values())[1:-1]), read=row["read"])
        for row in read_table("asme_b94_9_blanks")
    )
