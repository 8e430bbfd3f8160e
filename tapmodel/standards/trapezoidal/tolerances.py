"""Clearance and tolerances of ISO trapezoidal nuts: printed value first, else formula."""

import math
from collections.abc import Mapping
from functools import cache

from tapmodel.sources import Source
from tapmodel.standards.metric.formulas import computed_minor_tolerance, diameter_range
from tapmodel.standards.metric.r40 import whole_micrometres
from tapmodel.standards.metric.tolerances import TableValue
from tapmodel.standards.tables import cell_source, read_table
from tapmodel.words import Certainty

DOCUMENT = "ISO 2903:1977"
FACTORS = {7: 1.7, 8: 2.12, 9: 2.65}
"""TD2 of each grade in the bolt's tolerance of grade 6."""

FORMULA = Source(
    DOCUMENT,
    "formula TD2 = k x 90 P^0.4 d^0.1 with k 1.7, 2.12, 2.65; TD1 = 0.63 x 230 P^0.7; to R40",
    Certainty.MEMORY,
)
START_FACTORS = (1.0, 1.12, 1.25, 1.4, 1.6)
"""TD2 of 1, 2, 3, 4, and 5 or more starts in that of one start."""

STARTS = Source(
    DOCUMENT,
    "several starts: pitch-diameter tolerance x 1.12 (2), 1.25 (3), 1.4 (4), 1.6 (5 and more)",
    Certainty.MEMORY,
)


@cache
def _printed_pitch() -> Mapping[tuple[float, float, float], Mapping[str, str]]:
    return {
        (float(row["over"]), float(row["to"]), float(row["pitch"])): row
        for row in read_table("trapezoidal_td2")
    }


@cache
def _printed_minor() -> Mapping[float, Mapping[str, str]]:
    return {float(row["pitch"]): row for row in read_table("trapezoidal_td1")}


def clearance(pitch: float) -> float:
    """Crest clearance a_c [mm] of a pitch [mm].

    Source: ISO 2904:1977 (from memory): 0.15 at P 1.5, 0.25 at 2 to 5, 0.5 at 6 to 12, 1 above;
    a pitch between two of these takes the value of the coarser, derived here.
    """
    steps = ((1.5, 0.15), (5.0, 0.25), (12.0, 0.5))
    return next((value for coarsest, value in steps if pitch <= coarsest), 1.0)


def pitch_tolerance(diameter: float, pitch: float, grade: int) -> TableValue:
    """TD2 of one start for a diameter and pitch [mm] and a grade 7 to 9.

    Source: ISO 2903:1977 (grade 7 read in a transcription, 8 and 9 from memory), else its formula.
    """
    row = _printed_pitch().get((*diameter_range(diameter), pitch))
    if row is not None:
        source = cell_source(
            DOCUMENT, f"TD2 grade {grade}", "threadlib TR" if grade == 7 else "memory"
        )
        return TableValue(int(row[str(grade)]), printed=True, source=source)
    mean = math.sqrt(math.prod(diameter_range(diameter)))
    computed = whole_micrometres(FACTORS[grade] * 90 * pitch**0.4 * mean**0.1)
    return TableValue(computed, printed=False, source=FORMULA)


def minor_tolerance(pitch: float) -> TableValue:
    """TD1 for a pitch [mm], the same in every class.

    Source: ISO 2903:1977 (read in a transcription but for P 6), else its formula.
    """
    row = _printed_minor().get(pitch)
    if row is not None:
        source = cell_source(DOCUMENT, "TD1", row["read"])
        return TableValue(int(row["td1"]), printed=True, source=source)
    return TableValue(computed_minor_tolerance(pitch, 4), printed=False, source=FORMULA)


def start_factor(starts: int) -> float:
    """By how much TD2 grows with the number of starts.

    Source: ISO 2903:1977 (from memory).
    """
    return START_FACTORS[min(starts, len(START_FACTORS)) - 1]
