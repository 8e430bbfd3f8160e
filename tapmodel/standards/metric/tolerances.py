"""Tolerances and deviations of ISO metric internal threads: printed value first, else formula."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

from tapmodel.sources import Source
from tapmodel.spec.hole_class import Position
from tapmodel.standards.metric.formulas import (
    FORMULA_SOURCE,
    computed_deviation,
    computed_minor_tolerance,
    computed_pitch_tolerance,
    diameter_range,
)
from tapmodel.standards.tables import Row, cell_source, read_table

DOCUMENT = "ISO 965-1:2013"

KEPT = 64
"""Values that are remembered of each kind: a design asks for some again, and each trial of a cure
for all."""


@dataclass(frozen=True, slots=True)
class TableValue:
    """One tolerance or deviation.

    Attributes:
        micrometres: its size.
        printed: True when it stands in the standard's table, False when its formula gave it.
        source: where it comes from.
    """

    micrometres: int
    printed: bool
    source: Source


@cache
def _pitch_rows() -> Mapping[tuple[float, float, float], Row]:
    return {
        (float(row["over"]), float(row["to"]), float(row["pitch"])): row
        for row in read_table("td2")
    }


@cache
def _rows_by_pitch(table: str) -> Mapping[float, Row]:
    return {float(row["pitch"]): row for row in read_table(table)}


def _printed(row: Row | None, grade: int, place: str) -> TableValue | None:
    if row is None or not row[str(grade)]:
        return None
    read = row["read_6" if grade == 6 else "read_rest"]
    source = cell_source(DOCUMENT, f"{place} grade {grade}", read)
    return TableValue(int(row[str(grade)]), printed=True, source=source)


@lru_cache(maxsize=KEPT)
def pitch_tolerance(diameter: float, pitch: float, grade: int) -> TableValue:
    """TD2 for a diameter and pitch [mm] and a grade 4 to 8.

    Source: ISO 965-1:2013 table 4, else ISO 965-1:1998 clause 13.
    """
    row = _pitch_rows().get((*diameter_range(diameter), pitch))
    return _printed(row, grade, "table 4, TD2") or TableValue(
        computed_pitch_tolerance(diameter, pitch, grade), printed=False, source=FORMULA_SOURCE
    )


@lru_cache(maxsize=KEPT)
def minor_tolerance(pitch: float, grade: int) -> TableValue:
    """TD1 for a pitch [mm] and a grade 4 to 8.

    Source: ISO 965-1:2013 table 2, else ISO 965-1:1998 clause 13.
    """
    row = _rows_by_pitch("td1").get(pitch)
    return _printed(row, grade, "table 2, TD1") or TableValue(
        computed_minor_tolerance(pitch, grade), printed=False, source=FORMULA_SOURCE
    )


@lru_cache(maxsize=KEPT)
def fundamental_deviation(pitch: float, position: Position) -> TableValue:
    """EI for a pitch [mm] and position G or H; H is 0 at any pitch.

    Source: ISO 965-1:2013 table 1, else ISO 965-1:1998 clause 13.
    """
    row = _rows_by_pitch("fundamental_deviation").get(pitch)
    if row is not None:
        source = cell_source(DOCUMENT, f"table 1, EI position {position}", row["read"])
        return TableValue(int(row[position]), printed=True, source=source)
    if position == "H":
        source = cell_source(DOCUMENT, "table 1, EI position H", "FreeCAD")
        return TableValue(0, printed=True, source=source)
    return TableValue(computed_deviation(pitch), printed=False, source=FORMULA_SOURCE)
