"""How thick the chip of a tooth in the chamfer may be."""

from dataclasses import dataclass

from tapmodel.standards.materials.groups import WorkGroup

FINE = 1 / 30
"""Least chip in pitches: so fine a thread has no depth for thicker ones."""

KEEN = 0.005
"""Below this chip [mm] the rounding of the edge decides whether the tap cuts at all."""

EDGE_TO_CHIP = 0.3
"""Thinnest chip that an edge cuts, in radii of its rounding (0.2 to 0.4 for steels)."""

BOTTOMING = 2.0
"""Turns up to which a chamfer is a bottoming one, whose tap follows another."""


@dataclass(frozen=True, slots=True)
class ChipRange:
    """What a tooth may cut.

    Attributes:
        least: thinner chips [mm] are rubbed off rather than cut by an edge that a shop can hone.
        most: thicker ones [mm] tear the thread and overload the teeth of a tap made in the shop.
    """

    least: float
    most: float


def chip_range(group: WorkGroup, pitch: float) -> ChipRange:
    """Chips that are no fault of the chamfer in a material of that group, at that `pitch` [mm].

    Source: the group's; below a thirtieth of the pitch nothing is too thin, a rule of this program.
    """
    least, most = group.chip
    return ChipRange(min(least, FINE * pitch), most)
