"""What an error of the lead takes of the room that a tap's pitch diameter has."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from tapmodel.shop.gears.trains import GearTrain, diameter_taken

if TYPE_CHECKING:
    # A lead alone is answered without what a tap takes to load.
    from tapmodel.designing.record import TapDesign


@dataclass(frozen=True, slots=True)
class LeadRoom:
    """The thread that a train is to cut, as far as its error matters.

    Attributes:
        length: of the tap's thread, chamfer and all [mm].
        flank_angle: between flank and the plane square to the axis [deg].
        zone: from least to greatest pitch diameter of the tap [mm].
    """

    length: float
    flank_angle: float
    zone: float

    def share(self, train: GearTrain) -> float:
        """What the error over the whole thread is worth in pitch diameter, of the zone."""
        return diameter_taken(train.along(self.length), self.flank_angle) / self.zone

    @property
    def error_of_zone(self) -> float:
        """Error of the lead, as a share of it, that takes all of the zone."""
        return self.zone / diameter_taken(self.length, self.flank_angle)


def lead_room(design: "TapDesign") -> LeadRoom:
    """Of the tap that was designed."""
    return LeadRoom(
        length=design.tap.blank.thread_length,
        flank_angle=design.tap.thread.flank_angle,
        zone=design.limits.pitch_max - design.limits.pitch_min,
    )
