"""Centre drills: which one makes a centre of a rim, and how deep it goes."""

import math
from dataclasses import dataclass
from functools import cache

from tapmodel.sources import Source
from tapmodel.standards.inches import MM
from tapmodel.standards.tables import read_table
from tapmodel.words import Certainty, ToolSizes

SOURCES = {
    ToolSizes.METRIC: Source("ISO 866", "centre drills, type A", Certainty.MEMORY),
    ToolSizes.INCH: Source("ASME B94.11M", "centre drills, plain type", Certainty.MEMORY),
}

RIM = 2.12
"""Widest rim of a centre for its pilot, as ISO 6411 has it for type A (from memory), and for inch
drills likewise (common practice)."""

_SLOPE = math.tan(math.radians(30.0))


@dataclass(frozen=True, slots=True)
class CentreDrill:
    """A drill for a 60 degree centre without a protecting chamfer [mm].

    Attributes:
        name: as it is ordered: "A 2 x 5", pilot and body, or "no. 2".
        pilot, body: diameters.
        shortest, longest: length of the pilot, which is not made to one size.
    """

    name: str
    pilot: float
    body: float
    shortest: float
    longest: float


def centre_drill(rim: float, tools: ToolSizes = ToolSizes.METRIC) -> CentreDrill | None:
    """The smallest drill of those sizes whose centre may have a rim of that diameter [mm].

    None where the pilot would take the whole rim, or the largest drill is too small.

    Source: `SOURCES` and ISO 6411 (from memory).
    """
    drills = (drill for drill in _drills(tools) if rim <= RIM * drill.pilot)
    found = next(drills, None)
    return found if found and found.pilot < rim else None


def drilled(drill: CentreDrill, rim: float) -> tuple[float, float]:
    """Least and greatest depth from the touching of the pilot to a rim of that diameter [mm].

    Source: derived here; the cone of 60 degrees from pilot to rim, and the pilot before it.
    """
    cone = (rim - drill.pilot) / 2 / _SLOPE
    return cone + drill.shortest, cone + drill.longest


@cache
def _drills(tools: ToolSizes) -> tuple[CentreDrill, ...]:
    """Thinnest first."""
    names = ("pilot", "body", "shortest", "longest")
    if tools is ToolSizes.INCH:
        return tuple(
            CentreDrill(f"no. {row['name']}", *(float(row[name]) * MM for name in names))
            for row in read_table("inch_centre_drills")
        )
    rows = [[float(row[name]) for name in names] for row in read_table("iso_866")]
    return tuple(CentreDrill(f"A {row[0]:g} x {row[1]:g}", *row) for row in rows)
