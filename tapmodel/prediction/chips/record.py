"""What each tooth of a tap cuts."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Tooth:
    """A tooth that takes a chip.

    Attributes:
        land: number of its land, from 0.
        turn: number of its thread on that land, from 0 for the first whose crest has its middle
            behind the front; -1 for one of which only the rear flank is left there.
        height: z of the middle of its crest at the cutting edge [mm].
        area: of the chip, across the helix in the axial plane [mm²].
        thickness: the greatest, square to the line that the cone's edge draws in that plane; to
            the cone itself where the face is radial [mm].
        width: of the chip along the cone, from end to end [mm].
        radius: at which the middle of the chip's area lies [mm].
    """

    land: int
    turn: int
    height: float
    area: float
    thickness: float
    width: float
    radius: float

    @property
    def mean_thickness(self) -> float:
        """Area over width [mm]."""
        return self.area / self.width


@dataclass(frozen=True, slots=True)
class Chips:
    """The chips of one tap in one hole.

    Attributes:
        teeth: all that cut, in the order in which they meet the work.
        area_sum: of all chips [mm²].
        area_expected: cross-section of the finished threads above the drilled hole, all starts
            together, worked out apart from the teeth [mm²].
        thickness_min, thickness_max: of all chips [mm]; 0 where the tap cuts none.
    """

    teeth: tuple[Tooth, ...]
    area_sum: float
    area_expected: float
    thickness_min: float
    thickness_max: float
