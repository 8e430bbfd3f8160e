"""How fast the spindle may turn so that a hand still stops the carriage behind the thread."""

from dataclasses import dataclass

from tapmodel.tap.tap import Tap
from tapmodel.words import Hand

REACTION = 0.7
"""From seeing that the tool is out to the half nut's being open, or the tool withdrawn [s]; from
memory of what is reckoned with for drivers of cars and for hands at a lever."""

BY_HAND = 20.0
"""Below so many turns a minute the spindle is better turned by hand; rule of this program."""


@dataclass(frozen=True, slots=True)
class Stopping:
    """Where the tool has to stop.

    Attributes:
        room: along the axis, from where the tool is out of the thread to what it would hit [mm].
        neck: whether that is a neck; else the thread's last turn, within which it is withdrawn.
        turns: of the spindle in a minute, at which the way in `REACTION` is that room.
    """

    room: float
    neck: bool
    turns: float


def stopping(tap: Tap) -> Stopping | None:
    """Room and speed behind the thread; None where the tool runs out over what is thinner.

    A tool in a neck is half a pitch wide to either side, so that it has a pitch less than the neck
    is long. Without a neck, under a shank as thick as the root, it is withdrawn in the last turn. A
    thread of the left hand is cut away from the shank, and its tool runs out in front.

    Source: way = lead x turns x time (definition), time by `REACTION`.
    """
    thread, blank = tap.thread, tap.blank
    if thread.hand is Hand.LEFT or blank.shank_diameter < thread.minor:
        return None
    neck = blank.has_neck and blank.neck_diameter <= thread.minor
    room = max(blank.neck_length - thread.pitch, 0.0) if neck else thread.lead
    return Stopping(room, neck, 60 * room / (thread.lead * REACTION))
