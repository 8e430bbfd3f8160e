"""What change gears are asked for: a lead, a leadscrew, the wheels, and perhaps the tap."""

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from tapmodel.shop.gears.lead_room import LeadRoom, lead_room
from tapmodel.spec.shop.pitches import exact_of
from tapmodel.tap.tap import TapThread

if TYPE_CHECKING:
    # A lead alone is answered without what a tap takes to load.
    from tapmodel.designing.record import TapDesign


@dataclass(frozen=True, slots=True)
class GearsFor:
    """The tap that they cut.

    Attributes:
        thread: of the tap.
        room: that it has for an error of the lead.
    """

    thread: TapThread
    room: LeadRoom


@dataclass(frozen=True, slots=True)
class GearsAsked:
    """What is to be cut, and with what.

    Attributes:
        lead: of the thread, its pitch where it has one start [mm].
        leadscrew: its lead [mm].
        wheels: teeth of each wheel at hand.
        tap: that is cut; None where only a lead was named.
    """

    lead: Fraction
    leadscrew: Fraction
    wheels: tuple[int, ...]
    tap: GearsFor | None = None


def asked_by(
    design: "TapDesign", leadscrew: Fraction | None = None, wheels: tuple[int, ...] = ()
) -> GearsAsked | None:
    """What a design asks for; None where leadscrew or wheels are named nowhere.

    Args:
        design: of the tap.
        leadscrew: instead of that of the job [mm].
        wheels: instead of those of the job.
    """
    thread = design.tap.thread
    screw = design.number("shop.leadscrew")
    leadscrew = leadscrew or (None if screw is None else exact_of(screw))
    wheels = wheels or tuple(map(int, design.numbers("shop.gears")))
    if leadscrew is None or not wheels:
        return None
    # The starts are whole, so that the lead is as exact as the pitch.
    lead = exact_of(thread.pitch) * thread.starts
    return GearsAsked(lead, leadscrew, wheels, GearsFor(thread, lead_room(design)))
