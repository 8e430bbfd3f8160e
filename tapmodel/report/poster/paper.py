"""Papers of a poster."""

from dataclasses import dataclass
from enum import StrEnum

from tapmodel.report.units import Paper


class PosterPaper(StrEnum):
    """Size of a poster, twice that of the sheet."""

    A3 = "A3"
    TABLOID = "Tabloid"


OF_SHEET = {Paper.A4: PosterPaper.A3, Paper.LETTER: PosterPaper.TABLOID}
"""The poster that is as large as two pages of a sheet."""

MARGIN = 12.0
"""White at every edge [mm]."""

GAP = 8.0
"""Between the columns [mm]."""


@dataclass(frozen=True, slots=True)
class Size:
    """Of a paper that lies on its long side [mm].

    Attributes:
        width, height: of the paper.
        right: width of the right column; the left one has the rest.
        pitch, blank: of the thread form and of the milling, at most, drawn to scale.
    """

    width: float
    height: float
    right: float
    pitch: float
    blank: float

    @property
    def left(self) -> float:
        """Width of the left column [mm]."""
        return self.width - 2 * MARGIN - GAP - self.right


SIZES = {
    PosterPaper.A3: Size(420.0, 297.0, 118.0, 34.0, 38.0),
    PosterPaper.TABLOID: Size(431.8, 279.4, 129.0, 28.0, 24.0),
}
"""Source: ISO 216; ANSI Y14.1, size B (both from memory)."""
