"""Which diameters and pitches ISO 261 lists, and the range this program accepts."""

from functools import cache

from tapmodel.errors import InputError
from tapmodel.standards.tables import read_table

MIN_DIAMETER, MAX_DIAMETER = 0.3, 300.0
MIN_PITCH, MAX_PITCH = 0.05, 8.0

LEAST_LISTED_DIAMETER, LEAST_LISTED_PITCH = 1.0, 0.2
"""Where ISO 261 and the tolerances of ISO 965-1 begin [mm]."""


@cache
def coarse_pitches() -> dict[float, float]:
    """Coarse pitch [mm] by diameter [mm], ascending.

    Source: ISO 261:1998 (from memory; M1 to M68 also read in a transcription of ISO 262).
    """
    rows = read_table("metric_pitches")
    return {float(row["diameter"]): float(row["coarse"]) for row in rows if row["coarse"]}


@cache
def miniature_pitches() -> dict[float, float]:
    """The only pitch [mm] of each miniature size [mm] below 1 mm, ascending.

    Source: ISO/R 1501:1970, as read in JIS B 0201:1973, which agrees with it; the same pairs as
    read for ASME B1.10M in Machinery's Handbook 31st ed.
    """
    pairs = ((float(row["size"]), float(row["pitch"])) for row in read_table("miniature"))
    return {size: pitch for size, pitch in pairs if size < LEAST_LISTED_DIAMETER}


def within_scope(diameter: float, pitch: float) -> bool:
    """Whether the tolerances of ISO 965-1 are meant for sizes like these [mm].

    Source: its tables begin at pitch 0.2 and diameter 1 mm.
    """
    return diameter >= LEAST_LISTED_DIAMETER and pitch >= LEAST_LISTED_PITCH


@cache
def listed_pairs() -> frozenset[tuple[float, float]]:
    """All (diameter, pitch) pairs [mm] of the general plan.

    Source: ISO 261:1998 (from memory).
    """
    fine = {
        (float(row["diameter"]), float(pitch))
        for row in read_table("metric_pitches")
        for pitch in row["fine"].split("/")
    }
    return frozenset(fine | set(coarse_pitches().items()))


def is_listed(diameter: float, pitch: float) -> bool:
    """Whether ISO 261 lists this diameter with this pitch [mm].

    Source: ISO 261:1998 (from memory).
    """
    return (diameter, pitch) in listed_pairs()


def coarse_pitch(diameter: float, suffixes: str = "") -> float:
    """Coarse pitch [mm] of a diameter [mm]; below 1 mm the pitch of the miniature thread.

    Args:
        diameter: of the thread.
        suffixes: class and hand as typed, which what the message offers keeps.

    Source: ISO 261:1998 (from memory; M1 to M68 also read in a transcription of ISO 262); below
    1 mm `miniature_pitches`.

    Raises:
        InputError: no coarse pitch is listed; the message names the nearest sizes that have one.
    """
    coarse = miniature_pitches() | coarse_pitches()
    if diameter in coarse:
        return coarse[diameter]
    nearest = sorted(coarse, key=lambda size: abs(size - diameter))[:2]
    sizes = " and ".join(
        f"M{size:g}{suffixes} (pitch {coarse[size]:g})" for size in sorted(nearest)
    )
    raise InputError(
        "designation",
        f"M{diameter:g}{suffixes}",
        f"the diameter with a pitch, as in M{diameter:g}x{coarse[nearest[0]]:g}{suffixes}, "
        f"because no coarse pitch is listed for it; nearest sizes with one: {sizes}",
    )


def check_size(diameter: float, pitch: float) -> None:
    """Refuse a diameter or pitch [mm] outside the range of the program.

    Past a pitch of half the diameter the core of the thread is under 46 % of the diameter;
    ISO 261 stops at a quarter.

    Raises:
        InputError: naming the field, the value and the range.
    """
    if not MIN_DIAMETER <= diameter <= MAX_DIAMETER:
        raise InputError("diameter", diameter, f"{MIN_DIAMETER:g} to {MAX_DIAMETER:g} mm")
    coarsest = min(MAX_PITCH, diameter / 2)
    if not MIN_PITCH <= pitch <= coarsest:
        raise InputError(
            "pitch",
            pitch,
            f"{MIN_PITCH:g} to {coarsest:g} mm for M{diameter:g} (at most half the diameter)",
        )
