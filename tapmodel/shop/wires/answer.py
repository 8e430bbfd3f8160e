"""Everything to know for measuring a tap over wires, and what a measured value means."""

from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError, NoWireError
from tapmodel.shape.profile import segments
from tapmodel.shop.wires import over_wires
from tapmodel.shop.wires.asked import MeasuredThread, Overrides, thread_of_design
from tapmodel.shop.wires.choice import WireRange, air_for, nearest_to_best, zone_range
from tapmodel.shop.wires.limits import COMPOUND, LENGTH, demand
from tapmodel.shop.wires.notes import Heed, WireNote, note, thread_notes
from tapmodel.shop.wires.other_unit import meant, refuse_slip
from tapmodel.shop.wires.over_wires import at_pitch_diameter
from tapmodel.shop.wires.reading import Reading, read_wires
from tapmodel.words import Units

SEEN = 0.001
"""What a degree of the flank angle may add to a reading without a word [mm]: a micrometer shows no
less. Rule of this program."""


@dataclass(frozen=True, slots=True)
class Wires:
    """What the user has at hand.

    Attributes:
        wire: diameter to be used, None to choose one [mm].
        on_hand: diameters to choose from; if empty, those of the job, else any [mm].
        measured: over the wires, None before measuring [mm].
        compound: angle of the compound slide, from square to the axis [deg].
        units: of the reader, in which a refusal tells first what is allowed.
    """

    wire: float | None = None
    on_hand: tuple[float, ...] = ()
    measured: float | None = None
    compound: float = 0.0
    units: Units = Units.MM

    def __post_init__(self) -> None:
        """Refuse what cannot be at hand."""
        demand("--wire", self.wire, LENGTH)
        for wire in self.on_hand:
            demand("--on-hand", wire, LENGTH)
        demand("--measured", self.measured, LENGTH)
        demand("--compound", self.compound, COMPOUND)


@dataclass(frozen=True, slots=True)
class Measurements:
    """Measurement over wires at one pitch diameter [mm]: exact, and by the two usual formulas."""

    exact: float
    simple: float
    lead_corrected: float


@dataclass(frozen=True, slots=True)
class WiresAnswer:
    """Measurement of one thread over wires of one diameter.

    Attributes:
        asked: the thread.
        wire: to use, diameter [mm].
        best_wire: touches at the aimed pitch diameter, the lead allowed for [mm].
        conventional_wire: half the pitch by the cosine of the flank angle [mm].
        allowed: wires that suit anywhere in the zone, None for a free form.
        measurement_min, measurement_max: over the wires at the limits, None without limits; of a
            thread with a back taper where they lie (`MeasuredThread.place`) [mm].
        measurement_target: at the aimed pitch diameter, likewise [mm].
        at_basic: at the basic pitch diameter, or the one that overrides it.
        wire_counts: by how much the reading grows for each mm that the wires are thicker.
        reading: None before measuring.
        notes: what to heed, by codes and numbers.
    """

    asked: MeasuredThread
    wire: float
    best_wire: float
    conventional_wire: float
    allowed: WireRange | None
    measurement_min: float | None
    measurement_max: float | None
    measurement_target: float
    at_basic: Measurements
    wire_counts: float
    reading: Reading | None
    notes: tuple[WireNote, ...]

    @property
    def is_best(self) -> bool:
        """Whether the wire to use is the best one."""
        return self.wire == self.best_wire


def answer_for(design: TapDesign) -> WiresAnswer:
    """How the tap of a design is measured: over wires on hand that suit, else over any that do.

    Raises:
        NoWireError: no wire suits it.

    Source: as `answer_wires`.
    """
    return answer_wires(thread_of_design(design, design.basic_pitch_diameter, Overrides()), Wires())


def answer_wires(asked: MeasuredThread, wires: Wires) -> WiresAnswer:
    """Choose or check the wire, give limits of the measurement, judge a measured value.

    Raises:
        InputError: the wire does not suit the thread, or the value cannot have been measured.
        NoWireError: no wire suits it.

    Source: as the functions of `over_wires`, `choice` and `reading`.
    """
    groove = asked.groove
    aimed = at_pitch_diameter(groove, asked.target)
    best = over_wires.best_wire(aimed)
    allowed = _allowed(asked)
    wire, chosen_notes = _wire(asked, wires, allowed, best)
    flank = over_wires.growth_with_flank_angle(aimed, wire)
    off_notes = (note(Heed.OFF_THE_PITCH_LINE, error=abs(flank)),) if abs(flank) > SEEN else ()
    return WiresAnswer(
        asked=asked,
        wire=wire,
        best_wire=best,
        conventional_wire=over_wires.conventional_wire(groove),
        allowed=allowed,
        measurement_min=_measurement_at(asked, wire, asked.pitch_min),
        measurement_max=_measurement_at(asked, wire, asked.pitch_max),
        measurement_target=_over(asked, wire, asked.target),
        at_basic=Measurements(
            over_wires.measurement(groove, wire),
            over_wires.simple_measurement(groove, wire),
            over_wires.lead_corrected_measurement(groove, wire),
        ),
        wire_counts=over_wires.growth_with_wire(aimed, wire),
        reading=_reading(asked, wire, wires),
        notes=(*chosen_notes, *off_notes, *thread_notes(asked, wires.compound)),
    )


def _allowed(asked: MeasuredThread) -> WireRange | None:
    thread = asked.thread
    if thread is None:
        return None
    low = asked.target if asked.pitch_min is None else asked.pitch_min
    high = asked.target if asked.pitch_max is None else asked.pitch_max
    allowed = zone_range(asked.groove, thread, low, high)
    if allowed.is_empty:
        raise NoWireError(asked.name, air_for(thread.pitch))
    return allowed


def _wire(
    asked: MeasuredThread, wires: Wires, allowed: WireRange | None, best: float
) -> tuple[float, tuple[WireNote, ...]]:
    """The wire to use, and what to heed about it."""
    if allowed is None:
        nearest = min(wires.on_hand, key=lambda wire: abs(wire - best), default=best)
        return nearest if wires.wire is None else wires.wire, ()
    if wires.wire is not None:
        refuse_slip("--wire", (wires.wire,), allowed.told(wires.units), allowed.holds)
        if not allowed.holds(wires.wire):
            raise InputError("--wire", wires.wire, allowed.told(wires.units))
        return wires.wire, ()
    return _chosen(asked, wires, allowed)


def _chosen(
    asked: MeasuredThread, wires: Wires, allowed: WireRange
) -> tuple[float, tuple[WireNote, ...]]:
    on_hand = wires.on_hand or asked.on_hand
    nearest = nearest_to_best(on_hand, allowed)
    if nearest is not None:
        return nearest, ()
    refuse_slip(
        "--on-hand", wires.on_hand, f"at least one of {allowed.told(wires.units)}", allowed.holds
    )
    if on_hand and wires.measured is not None:
        # What was measured over a wire that does not suit tells nothing.
        field = "--on-hand" if wires.on_hand else "shop.wires"
        raise InputError(field, list(on_hand), f"at least one of {allowed.told(wires.units)}")
    offered = allowed.offered(asked.groove.pitch)
    notes = [_none_on_hand(on_hand, allowed, offered)] if on_hand else []
    if offered != allowed.best:
        notes.append(_why_not_the_best(asked, allowed, offered))
    return offered, tuple(notes)


def _why_not_the_best(asked: MeasuredThread, allowed: WireRange, offered: float) -> WireNote:
    if allowed.meets_corner and asked.thread is not None:
        return note(
            Heed.CRESTS_TOO_LOW,
            wire=offered,
            best=allowed.best,
            pitch_diameter=asked.target,
            corner=2 * segments(asked.thread)[1].start_radius,
        )
    air = air_for(asked.groove.pitch)
    return note(Heed.NOT_THE_BEST, wire=offered, best=allowed.best, air=air)


def _none_on_hand(on_hand: tuple[float, ...], allowed: WireRange, offered: float) -> WireNote:
    written = meant(on_hand, allowed.holds)
    if written is None:
        return note(Heed.NONE_ON_HAND, wire=offered)
    return note(Heed.NONE_ON_HAND, wire=offered, meant=written)


def _measurement_at(
    asked: MeasuredThread, wire: float, pitch_diameter: float | None
) -> float | None:
    return None if pitch_diameter is None else _over(asked, wire, pitch_diameter)


def _over(asked: MeasuredThread, wire: float, pitch_diameter: float) -> float:
    """Over wires where they lie, of the thread that has `pitch_diameter` as stated."""
    there = at_pitch_diameter(asked.groove, pitch_diameter - asked.lost)
    return over_wires.measurement(there, wire)


def _reading(asked: MeasuredThread, wire: float, wires: Wires) -> Reading | None:
    if wires.measured is None:
        return None
    return read_wires(asked, wire, wires.measured, wires.compound, wires.units)
