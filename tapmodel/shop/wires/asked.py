"""What thread is measured over wires: the tap of a design, or a free form."""

import math
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.shop.wires.groove import Groove
from tapmodel.shop.wires.limits import FLANK_ANGLE, LEAD_ANGLE, LENGTH, STARTS, demand
from tapmodel.shop.wires.other_unit import refuse_slip
from tapmodel.shop.wires.place import Place, place_of
from tapmodel.standards.limits import HoleLimits
from tapmodel.tap.tap import TapThread


@dataclass(frozen=True, slots=True)
class Overrides:
    """What the user sets aside; None keeps what the thread has.

    Attributes:
        pitch_diameter: at which wires are reckoned instead of the basic one [mm].
        starts: number of threads side by side.
        lead_angle: at that pitch diameter, instead of the one from the starts [deg].
    """

    pitch_diameter: float | None = None
    starts: int | None = None
    lead_angle: float | None = None

    def __post_init__(self) -> None:
        """Refuse what no thread has."""
        demand("--pitch-diameter", self.pitch_diameter, LENGTH)
        demand("--starts", self.starts, STARTS)
        demand("--lead-angle", self.lead_angle, LEAD_ANGLE)


@dataclass(frozen=True, slots=True)
class MeasuredThread:
    """A thread to be measured.

    Attributes:
        name: for people.
        groove: at the basic pitch diameter, or the one that overrides it.
        starts: number of threads side by side.
        pitch_min, pitch_max: limits of the pitch diameter, None for a free form [mm].
        target: pitch diameter to be reached [mm].
        thread: gives crest, root and hand, None for a free form.
        flutes: number of flutes, 0 for none.
        hole: that the tap is to cut to size, None for a free form and for a tap that roughs.
        goes_before: which tap of how many it is, if another tap of its set follows it.
        on_hand: wires that the job lists, none for a free form [mm].
        place: where the wires lie on a thread with a back taper, None without. Pitch diameters are
            those of the thread as stated all the same, before what it has lost there.
    """

    name: str
    groove: Groove
    starts: int
    pitch_min: float | None
    pitch_max: float | None
    target: float
    thread: TapThread | None
    flutes: int
    hole: HoleLimits | None = None
    goes_before: tuple[int, int] | None = None
    on_hand: tuple[float, ...] = ()
    place: Place | None = None

    @property
    def lost(self) -> float:
        """By how much diameters are less where the wires lie than as stated [mm]."""
        return self.place.lost if self.place else 0.0


def thread_of_design(
    design: TapDesign, basic_pitch_diameter: float, overrides: Overrides
) -> MeasuredThread:
    """The tap of a design, to be measured in its zone and brought to its aimed pitch diameter.

    Args:
        design: of the tap.
        basic_pitch_diameter: of the thread's nominal size [mm].
        overrides: what the user sets aside.

    Raises:
        InputError: an override is out of range.

    Source: the design; lead = starts * pitch, or pi*d2*tan(lead angle) (definitions).
    """
    thread = design.tap.thread
    part = design.part if design.roughs else None
    starts = thread.starts if overrides.starts is None else overrides.starts
    diameter = overrides.pitch_diameter
    reckoned = basic_pitch_diameter if diameter is None else diameter
    if diameter is not None:
        refuse_slip(
            "--pitch-diameter",
            (diameter,),
            f"{thread.minor:.4f} to {thread.major:.4f} mm or thereabouts",
            lambda value: thread.minor < value < thread.major,
        )
    lead = _lead(thread.pitch, starts, reckoned, overrides.lead_angle)
    return MeasuredThread(
        name=design.designation,
        groove=Groove(thread.flank_angle, thread.pitch, lead, reckoned),
        starts=starts,
        pitch_min=design.limits.pitch_min,
        pitch_max=design.limits.pitch_max,
        target=thread.pitch_diameter,
        thread=thread,
        flutes=design.tap.flutes.count,
        # A tap that roughs neither wears the hole's size away nor is scrap for it.
        hole=None if part else design.hole,
        goes_before=(part.number, part.taps) if part else None,
        on_hand=design.wires,
        place=place_of(design.tap),
    )


def free_thread(flank_angle: float, pitch: float, overrides: Overrides) -> MeasuredThread:
    """A thread of any form, without limits: to check a table, or another's thread.

    With a lead angle and no pitch diameter, the pitch diameter is the one at which the starts give
    that lead angle; with both, the lead follows from both.

    Args:
        flank_angle: between a flank and the plane square to the axis [deg].
        pitch: axial distance of neighbouring grooves [mm].
        overrides: pitch diameter or lead angle, or both; starts, 1 if not given.

    Raises:
        InputError: neither is given, or a value is out of range.

    Source: definition of the lead angle.
    """
    demand("--flank-angle", flank_angle, FLANK_ANGLE)
    demand("--pitch", pitch, LENGTH)
    starts = 1 if overrides.starts is None else overrides.starts
    diameter, angle = overrides.pitch_diameter, overrides.lead_angle
    if diameter is None:
        if not angle:
            raise InputError("--pitch-diameter", None, "a value, or a lead angle above 0 deg")
        lead = _lead(pitch, starts, 1.0, None)
        diameter = lead / (math.pi * _tangent(angle))
    else:
        lead = _lead(pitch, starts, diameter, angle)
    groove = Groove(flank_angle, pitch, lead, diameter)
    return MeasuredThread("free form", groove, starts, None, None, diameter, None, 0)


def _lead(pitch: float, starts: int, diameter: float, lead_angle: float | None) -> float:
    if lead_angle is None:
        return starts * pitch
    return math.pi * diameter * _tangent(lead_angle)


def _tangent(lead_angle: float) -> float:
    return math.tan(math.radians(lead_angle))
