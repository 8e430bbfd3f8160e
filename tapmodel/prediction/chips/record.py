"""What each tooth of a tap cuts."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Tooth:
    """A tooth that takes a chip.

    Attributes:
        land: number of its land, from 0.
        turn: number of its thread on that land, from 0 at the front.
        height: z of the middle of its crest at the cutting edge [mm].
        area: of the chip, across the helix in the axial plane [mm²].
        thickness: the greatest, square to the chamfer's cone [mm].
        width: of the chip along the cone, `area` divided by the mean thickness [mm].
        radius: at which the middle of the chip's area lies [mm].
    """

    land: int
    turn: int
    height: float
    area: float
    thickness: float
    width: float
    radius: float


@dataclass(frozen=True, slots=True)
class Chips:
    """The chips of one tap in one hole.

    Attributes:
        teeth: all that cut, in the order in which they meet the work.
        area_sum: of all chips [mm²].
        area_expected: cross-section of the finished threads above the drilled hole, all starts
            together, worked out apart from the teeth [mm²].
        thickness_min, thickness_max: of all chips [mm].
    """

    teeth: tuple[Tooth, ...]
    area_sum: float
    area_expected: float
    thickness_min: float
    thickness_max: float
