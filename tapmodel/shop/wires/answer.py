"""Everything to know for measuring a tap over wires, and what a measured value means."""

from dataclasses import dataclass

from tapmodel.errors import InputError
from tapmodel.shape.profile import segments
from tapmodel.shop.wires import over_wires
from tapmodel.shop.wires.asked import MeasuredThread
from tapmodel.shop.wires.choice import WireRange, check_wire, choose_wire, wire_range
from tapmodel.shop.wires.crest_clearance import fouls_crest
from tapmodel.shop.wires.groove import Groove
from tapmodel.shop.wires.limits import COMPOUND, LENGTH, demand
from tapmodel.shop.wires.notes import wire_notes
from tapmodel.shop.wires.over_wires import at_pitch_diameter
from tapmodel.shop.wires.reading import Reading, read_wires


@dataclass(frozen=True, slots=True)
class Wires:
    """What the user has at hand.

    Attributes:
        wire: diameter to be used, None to choose one [mm].
        on_hand: diameters to choose from; if empty, the best wire itself [mm].
        measured: over the wires, None before measuring [mm].
        compound: angle of the compound slide, from square to the axis [deg].
    """

    wire: float | None = None
    on_hand: tuple[float, ...] = ()
    measured: float | None = None
    compound: float = 0.0

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
        wire: diameter [mm].
        best_wire: touches at the pitch diameter [mm].
        allowed: wires that suit, None for a free form.
        measurement_min, measurement_max: over the wires at the limits, None without limits [mm].
        measurement_target: at the aimed pitch diameter [mm].
        at_basic: at the basic pitch diameter, or the one that overrides it.
        reading: None before measuring.
        notes: sentences for the machinist.
    """

    asked: MeasuredThread
    wire: float
    best_wire: float
    allowed: WireRange | None
    measurement_min: float | None
    measurement_max: float | None
    measurement_target: float
    at_basic: Measurements
    reading: Reading | None
    notes: tuple[str, ...]


def answer_wires(asked: MeasuredThread, wires: Wires) -> WiresAnswer:
    """Choose or check the wire, give limits of the measurement, judge a measured value.

    Raises:
        InputError: the wire does not suit the thread, or the value cannot have been measured.

    Source: as the functions of `over_wires`, `wire_choice` and `compound`.
    """
    groove = asked.groove
    best = over_wires.best_wire(groove)
    allowed = _allowed(asked)
    wire = _wire(asked, wires, allowed, best)
    return WiresAnswer(
        asked=asked,
        wire=wire,
        best_wire=best,
        allowed=allowed,
        measurement_min=_measurement_at(groove, wire, asked.pitch_min),
        measurement_max=_measurement_at(groove, wire, asked.pitch_max),
        measurement_target=_at(groove, wire, asked.target),
        at_basic=Measurements(
            over_wires.measurement(groove, wire),
            over_wires.simple_measurement(groove, wire),
            over_wires.lead_corrected_measurement(groove, wire),
        ),
        reading=_reading(asked, wire, wires),
        notes=wire_notes(asked, wires.compound),
    )


def _allowed(asked: MeasuredThread) -> WireRange | None:
    if asked.thread is None:
        return None
    return wire_range(at_pitch_diameter(asked.groove, asked.thread.pitch_diameter), asked.thread)


def _wire(asked: MeasuredThread, wires: Wires, allowed: WireRange | None, best: float) -> float:
    if allowed is None or asked.thread is None:
        nearest = min(wires.on_hand, key=lambda wire: abs(wire - best), default=best)
        return nearest if wires.wire is None else wires.wire
    wire = wires.wire
    if wire is None:
        wire = choose_wire(wires.on_hand, allowed) if wires.on_hand else allowed.nearest_to_best
    check_wire(wire, allowed)
    groove = at_pitch_diameter(asked.groove, asked.thread.pitch_diameter)
    if fouls_crest(groove, wire, segments(asked.thread)[1].start_radius):
        steep = f"a thicker one; straight wires foul the crests at {groove.lead_angle:.1f} deg"
        raise InputError("wire", wire, f"{steep} of lead; {allowed}")
    return wire


def _measurement_at(groove: Groove, wire: float, pitch_diameter: float | None) -> float | None:
    return None if pitch_diameter is None else _at(groove, wire, pitch_diameter)


def _at(groove: Groove, wire: float, pitch_diameter: float) -> float:
    return over_wires.measurement(at_pitch_diameter(groove, pitch_diameter), wire)


def _reading(asked: MeasuredThread, wire: float, wires: Wires) -> Reading | None:
    if wires.measured is None:
        return None
    return read_wires(asked, wire, wires.measured, wires.compound)
