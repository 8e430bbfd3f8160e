"""How fast the annealed steel of a tap is cut with tools of high-speed steel."""

from enum import StrEnum

from tapmodel.shop.tapping_speed import revolutions
from tapmodel.standards.tables import read_table


class Cut(StrEnum):
    """A kind of cut."""

    TURNING = "turning"
    THREADING = "threading"
    CENTRING = "centring"
    MILLING = "milling"
    SAWING = "sawing"


SHARES = {
    Cut.TURNING: 1.0,
    Cut.THREADING: 1 / 3,
    Cut.CENTRING: 0.75,
    Cut.MILLING: 0.8,
    Cut.SAWING: 1.0,
}
"""Speed of each cut, of that of turning. A thread is cut so slowly that the tool is withdrawn in
time; a centre drill and a cutter in a slot get little oil. Common practice."""

TEETH = 2
"""Of a ball-nose cutter; common practice."""

_TURNED, _TURNED_LEAST, _TURNED_MOST = 1 / 80, 0.02, 0.2
_MILLED, _MILLED_LEAST, _MILLED_MOST = 1 / 200, 0.005, 0.06

STEP_SHARE = 0.1
"""Depth that an end mill takes at a time, of its diameter; common practice."""

FINISHING = 0.5
"""Feed of the last cut, of that of the cuts before it; common practice."""

DRILLING = 4.0
"""Speed of a drill of high-speed steel, of the slow one of a tap of carbon steel in the same
material, which runs at half the speed of one of high-speed steel; common practice."""


def speed(steel: str, cut: Cut) -> float:
    """Surface speed [m/min] in a steel of taps as bought, annealed.

    Args:
        steel: its name in the table of tool steels.
        cut: its kind.

    Raises:
        KeyError: the table has no such steel.

    Source: common practice.
    """
    speeds = {row["steel"]: float(row["turning"]) for row in read_table("annealed_speeds")}
    return SHARES[cut] * speeds[steel]


def turning_feed(diameter: float) -> float:
    """Feed of a roughing cut [mm in a turn]: an 80th of the diameter [mm], 0.02 to 0.2.

    Source: rule of this program; a thin blank gives way before a coarse cut.
    """
    return min(max(_TURNED * diameter, _TURNED_LEAST), _TURNED_MOST)


def tooth_feed(cutter: float) -> float:
    """Feed for each tooth of an end mill [mm]: a 200th of its diameter [mm], 0.005 to 0.06.

    Source: rule of this program, after common practice.
    """
    return min(max(_MILLED * cutter, _MILLED_LEAST), _MILLED_MOST)


def table_feed(steel: str, cutter: float) -> float:
    """Feed of the mill's table [mm/min] for a cutter of `TEETH` teeth.

    Source: definition, from `speed` and `tooth_feed`.
    """
    return TEETH * tooth_feed(cutter) * revolutions(speed(steel, Cut.MILLING), cutter)
