"""Centre drills: which one makes a centre of a rim, and how deep it goes."""

import math
from dataclasses import dataclass
from functools import cache

from tapmodel.sources import Source
from tapmodel.standards.tables import read_table
from tapmodel.words import Certainty

SOURCE = Source("ISO 866", "centre drills, type A", Certainty.MEMORY)

RIM = 2.12
"""Widest rim of a centre for its pilot, as ISO 6411 has it for type A (from memory)."""

_SLOPE = math.tan(math.radians(30.0))


@dataclass(frozen=True, slots=True)
class CentreDrill:
    """A drill of type A, for a 60 degree centre without a protecting chamfer [mm].

    Attributes:
        pilot, body: diameters.
        shortest, longest: length of the pilot, which is not made to one size.
    """

    pilot: float
    body: float
    shortest: float
    longest: float

    @property
    def name(self) -> str:
        """As it is ordered: "A 2 x 5", pilot and body."""
        return f"A {self.pilot:g} x {self.body:g}"


def centre_drill(rim: float) -> CentreDrill | None:
    """The smallest drill whose centre may have a rim of that diameter [mm].

    None where the pilot would take the whole rim, or the largest drill is too small.

    Source: ISO 866 and ISO 6411 (from memory).
    """
    drills = (drill for drill in _drills() if rim <= RIM * drill.pilot)
    found = next(drills, None)
    return found if found and found.pilot < rim else None


def drilled(drill: CentreDrill, rim: float) -> tuple[float, float]:
    """Least and greatest depth from the touching of the pilot to a rim of that diameter [mm].

    Source: derived here; the cone of 60 degrees from pilot to rim, and the pilot before it.
    """
    cone = (rim - drill.pilot) / 2 / _SLOPE
    return cone + drill.shortest, cone + drill.longest


@cache
def _drills() -> tuple[CentreDrill, ...]:
    """Thinnest first."""
    names = ("pilot", "body", "shortest", "longest")
    return tuple(
        CentreDrill(*(float(row[name]) for name in names)) for row in read_table("iso_866")
    )
