"""Readings of a slide's dial in words."""

from tapmodel.shop.dials import DialReading, reading
from tapmodel.spec.designations.reading.inches import MM
from tapmodel.spec.shop.dials import Dial

ONE_WAY = (
    "Come to every reading in the direction of the feed: where it is passed, go back by half a "
    "turn more than the play of the screw and come again (common practice)."
)
"""Why a reading that was overshot is not turned back to."""


def reading_text(found: DialReading) -> str:
    """Turns and divisions: "1 turn + 23", "23"."""
    turns = f"{found.turns} turn" if found.turns == 1 else f"{found.turns} turns"
    if not found.turns:
        return str(found.divisions)
    return f"{turns} + {found.divisions}" if found.divisions else turns


def read_text(dial: Dial, way: float) -> str:
    """What a dial reads after a way of its slide [mm]."""
    return reading_text(reading(dial, way))


def division_text(dial: Dial) -> str:
    """What a division is: "0.02 mm on diameter"."""
    unit, name = (MM, "in") if dial.inch else (1, "mm")
    size = f"{float(dial.division / unit):.6g} {name}"
    return f"{size} on diameter" if dial.on_diameter else size


def dial_text(dial: Dial) -> str:
    """What a division and a turn are: "divisions of 0.02 mm on diameter, 200 a turn"."""
    return f"divisions of {division_text(dial)}, {float(dial.turn / dial.division):g} a turn"
