"""Tolerances of sizes that no thread standard limits: of the blank, the square and the flutes."""

from tapmodel.sources import Source
from tapmodel.standards.tables import read_table
from tapmodel.words import Certainty

SHAFTS = Source("ISO 286-1:2010", "table 1", Certainty.MEMORY)
GENERAL = Source("ISO 2768-1:1989", "table 1, medium", Certainty.MEMORY)

Zone = tuple[float, float]
"""Least and greatest size [mm]."""


def shaft_zone(size: float, grade: str) -> Zone | None:
    """A size of position h: never above `size` [mm]; None beyond the table.

    Args:
        size: nominal [mm].
        grade: "it9", "it12" or "it16".

    Source: ISO 286-1:2010 (from memory).
    """
    for row in read_table("iso_286"):
        if float(row["over"]) < size <= float(row["to"]):
            return size - float(row[grade]), size
    return None


def general_zone(size: float) -> Zone | None:
    """A length [mm] either way; None below 0.5 mm, where each size has to state its own.

    Source: ISO 2768-1:1989, medium (from memory).
    """
    for row in read_table("iso_2768_medium"):
        least, most = float(row["from"]), float(row["to"])
        if least <= size <= most:
            return size - float(row["off"]), size + float(row["off"])
    return None
