"""What was measured as numbers: the pitch diameter itself or over wires, and every other size."""

from dataclasses import dataclass, replace

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.shop.wires.answer import Wires, WiresAnswer, answer_wires
from tapmodel.shop.wires.asked import MeasuredThread, Overrides, thread_of_design
from tapmodel.shop.wires.other_unit import refuse_slip
from tapmodel.shop.wires.reading import Reading, read_pitch_diameter
from tapmodel.spec.measured.record import Found, Measured
from tapmodel.spec.measured.sizes import Size
from tapmodel.words import Units


@dataclass(frozen=True, slots=True)
class OverWires:
    """A value over wires, and what it was to be.

    Attributes:
        wire: over which it was measured [mm].
        aim, low, high: over them, limits None where there are none [mm].
        reading: what it means.
    """

    wire: float
    aim: float
    low: float | None
    high: float | None
    reading: Reading


def with_wire(design: TapDesign, over: Found) -> Found:
    """A value over wires with its wire: the one told, else the one to use.

    Raises:
        InputError: the value cannot have been measured on this thread, over any wire of the job.
        NoWireError: no wire suits.

    Source: as `answer_wires`.
    """
    if over.wire is not None:
        return over
    wire = _named(_thread(design), Wires(measured=over.number), over).wire
    return replace(over, wire=wire, wire_typed=wire)


def sizes_of(measured: Measured, reading: Reading | None) -> dict[Size, float]:
    """The numbers, with the pitch diameter in place of a value over wires.

    Args:
        measured: of the tap.
        reading: of its pitch diameter, None where none was measured.

    Returns:
        Lengths [mm], angles [deg], hardness [HRC].
    """
    sizes = {size: found.number for size, found in measured.pairs if size is not Size.OVER_WIRES}
    if reading is not None:
        sizes[Size.PITCH_DIAMETER] = reading.pitch_diameter
    return sizes


def pitch_diameter_of(
    design: TapDesign, measured: Measured, compound: float, units: Units
) -> tuple[Reading | None, OverWires | None]:
    """The pitch diameter, measured itself or over wires.

    Args:
        design: of the tap.
        measured: of it.
        compound: angle of the compound slide, from square to the axis [deg].
        units: of the reader, in which a refusal tells first what is allowed.

    Returns:
        What it means, and the value over wires where there is one; None where it was not measured.

    Raises:
        InputError: a value that cannot have been measured on this thread.
        NoWireError: a value over wires, where no wire suits.
    """
    over = measured.get(Size.OVER_WIRES)
    if over is not None:
        found = _over_wires(design, over, Wires(over.wire, (), over.number, compound, units))
        return found.reading, found
    itself = measured.get(Size.PITCH_DIAMETER)
    if itself is None:
        return None, None
    _refuse_outside(design, itself)
    return read_pitch_diameter(_thread(design), itself.number, compound), None


def _refuse_outside(design: TapDesign, found: Found) -> None:
    """A pitch diameter lies between root and crest."""
    thread = design.tap.thread
    low, high = thread.minor, thread.major
    told = f"between root and crest, {low:.4f} and {high:.4f} mm"

    def fits(value: float) -> bool:
        return low < value < high

    refuse_slip(found.field, (found.number,), told, fits)
    if not fits(found.number):
        raise InputError(found.field, found.typed, told)


def _over_wires(design: TapDesign, over: Found, wires: Wires) -> OverWires:
    answer = _named(_thread(design), wires, over)
    if answer.reading is None:  # a value was handed over, so it was read
        raise AssertionError
    low, high = answer.measurement_min, answer.measurement_max
    return OverWires(answer.wire, answer.measurement_target, low, high, answer.reading)


def _named(asked: MeasuredThread, wires: Wires, over: Found) -> WiresAnswer:
    """The answer of `tapmodel wires`, whose refusals name what was typed here."""
    try:
        return answer_wires(asked, wires)
    except InputError as error:
        if error.field == "--measured":
            raise InputError(over.field, over.typed, error.allowed) from None
        if error.field == "--wire":
            raise InputError(over.wire_field, over.wire_typed, error.allowed) from None
        raise


def _thread(design: TapDesign) -> MeasuredThread:
    return thread_of_design(design, design.basic_pitch_diameter, Overrides())
