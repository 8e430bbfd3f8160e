"""Groups of work materials: rake, speed, lubricant and chip that each asks of a hand-made tap."""

from dataclasses import dataclass
from functools import cache

from tapmodel.sources import Source
from tapmodel.standards.tables import Row, read_table
from tapmodel.words import Certainty

RAKE = Source("Machinery's Handbook", "table of tap rakes, low certainty", Certainty.MEMORY)
SPEED = Source("Machinery's Handbook", "tapping speeds, low certainty", Certainty.MEMORY)
USUAL_SPEED = Source("workshop practice", "tapping speed, low certainty", Certainty.MEMORY)
LUBRICANT = Source("workshop practice", "", Certainty.PRACTICE)
CHIP = Source("workshop practice", "chip of a tooth, low certainty", Certainty.MEMORY)
FRICTION = Source("handbooks of friction", "low certainty", Certainty.MEMORY)

FOOT = 0.3048
"""Metres in a foot."""

OF_HIGH_SPEED = 0.5
"""Speed of taps of carbon steel, of that of high-speed ones (from memory)."""


@dataclass(frozen=True, slots=True)
class WorkGroup:
    """What materials of one kind ask of a tap.

    Attributes:
        name: of the group.
        rake: usual least and largest hook [deg].
        kienzle_rake: rake for which the specific forces of the group hold [deg].
        speed: least and largest for a tap of carbon steel in a machine [m/min].
        speed_source: of the speed.
        lubricant: usual one.
        chip: least and largest thickness for a tooth [mm].
        friction: sliding coefficient with that lubricant.
        a_row, c_row: row of the factors of formula A and of the constants of C, "" for none.
        c_like: row of formula C of the nearest kind, where there is none of its own; "" for none.
    """

    name: str
    rake: tuple[float, float]
    kienzle_rake: float
    speed: tuple[float, float]
    speed_source: Source
    lubricant: str
    chip: tuple[float, float]
    friction: float
    a_row: str
    c_row: str
    c_like: str


@cache
def work_groups() -> dict[str, WorkGroup]:
    """All groups by name.

    Source: as the sources of this file say, each from memory or common practice.
    """
    return {row["group"]: _group(row) for row in read_table("work_groups")}


def _group(row: Row) -> WorkGroup:
    return WorkGroup(
        name=row["group"],
        rake=(float(row["rake_low"]), float(row["rake_high"])),
        kienzle_rake=float(row["base_rake"]),
        speed=(_speed(row["speed_low"]), _speed(row["speed_high"])),
        speed_source=SPEED if row["speed_read"] == "table" else USUAL_SPEED,
        lubricant=row["lubricant"],
        chip=(float(row["chip_least"]), float(row["chip_most"])),
        friction=float(row["friction"]),
        a_row=row["a_row"],
        c_row=row["c_row"],
        c_like=row["c_like"],
    )


def _speed(printed: str) -> float:
    """Speed of a tap of carbon steel [m/min] from that of a high-speed one [ft/min]."""
    return OF_HIGH_SPEED * FOOT * float(printed)
