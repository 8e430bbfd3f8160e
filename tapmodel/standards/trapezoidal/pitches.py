"""Which diameters and pitches ISO 2902 lists, and the range this program accepts."""

from functools import cache

from tapmodel.errors import InputError
from tapmodel.spec.designations.trapezoidal import COARSEST
from tapmodel.standards.tables import read_table

MIN_DIAMETER, MAX_DIAMETER = 8.0, 300.0
MIN_PITCH, MAX_PITCH = 1.5, 44.0
"""Greatest pitch in diameters; ISO 2902 stops at 0.364 (Tr22x8)."""


@cache
def listed_pairs() -> frozenset[tuple[float, float]]:
    """All (diameter, pitch) pairs [mm] of the general plan up to 300 mm.

    Source: ISO 2902:1977 (from memory; every pair also read in a transcription of limits).
    """
    return frozenset(
        (float(row["diameter"]), float(pitch))
        for row in read_table("trapezoidal_pitches")
        for pitch in row["pitches"].split("/")
    )


def check_size(text: str, diameter: float, pitch: float) -> None:
    """Refuse a diameter or pitch [mm] outside the range of the program.

    Raises:
        InputError: naming the range.
    """
    if not MIN_DIAMETER <= diameter <= MAX_DIAMETER:
        allowed = (
            f"trapezoidal threads of {MIN_DIAMETER:g} to {MAX_DIAMETER:g} mm diameter, the range "
            "of this program"
        )
        raise InputError("designation", text, allowed)
    coarsest = min(MAX_PITCH, COARSEST * diameter)
    if not MIN_PITCH <= pitch <= coarsest:
        allowed = (
            f"a pitch of {MIN_PITCH:g} to {coarsest:g} mm at this diameter (at most "
            f"{COARSEST:g} of it), the range of this program"
        )
        raise InputError("designation", text, allowed)
