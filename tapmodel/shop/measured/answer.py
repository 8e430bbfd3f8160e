"""What was measured of a tap, set beside its design: verdicts, and the tap as it is."""

from dataclasses import dataclass, replace

from tapmodel.designing.record import NotMade, TapDesign
from tapmodel.errors import InputError
from tapmodel.findings import Finding
from tapmodel.shop.measured.made import made_by
from tapmodel.shop.measured.questions import refuse_other_units
from tapmodel.shop.measured.verdicts import Judgement, judgements
from tapmodel.shop.measured.zones import wanted
from tapmodel.shop.wires.answer import Wires, WiresAnswer, answer_wires
from tapmodel.shop.wires.asked import MeasuredThread, Overrides, thread_of_design
from tapmodel.shop.wires.other_unit import refuse_slip
from tapmodel.shop.wires.reading import Reading, read_pitch_diameter
from tapmodel.spec.job import Job
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


@dataclass(frozen=True, slots=True)
class MeasuredAnswer:
    """What was measured of a tap, and what that means.

    Attributes:
        design: with what was measured, and the tap as it is.
        judgements: of each size, in the order of the work.
        over_wires: None where no value over wires was measured.
        made: the tap as it is; None where it cannot be told.
        lacking: why it cannot; None where it can, or nothing was measured.
        risen: what the rules find of the tap as it is, and did not of its design.
    """

    design: TapDesign
    judgements: tuple[Judgement, ...]
    over_wires: OverWires | None
    made: TapDesign | None
    lacking: NotMade | None
    risen: tuple[Finding, ...]


def with_measured(design: TapDesign, job: Job, measured: Measured) -> TapDesign:
    """The design with what was measured of its tap, and the tap as it is.

    Args:
        design: of the tap.
        job: that it was designed for.
        measured: of the tap.

    Raises:
        InputError: a size that the tap does not have, or one that cannot have been measured.
        NoWireError: a value over wires, where no wire suits.

    Source: as the functions called here.
    """
    refuse_other_units(design, measured)
    of_tap = wanted(design)
    for size, found in measured.pairs:
        if size not in of_tap and size is not Size.OVER_WIRES:
            allowed = f"nothing, as this tap has no {size}"
            raise InputError(found.field, found.typed, allowed)
    found, _ = _read(design, measured, 0.0, Units.MM)
    made = made_by(design, job, _sizes(measured, found)) if measured.pairs else None
    return replace(design, measured=measured, made=made)


def answer_measured(
    design: TapDesign, compound: float = 0.0, units: Units = Units.MM
) -> MeasuredAnswer:
    """What was measured of a tap, and what that means.

    Args:
        design: as `with_measured` gives it.
        compound: angle of the compound slide, from square to the axis [deg].
        units: of the reader, in which a refusal tells first what is allowed.

    Raises:
        InputError, NoWireError: as `with_measured`.

    Source: as the functions called here.
    """
    measured = design.measured or Measured()
    reading, over = _read(design, measured, compound, units)
    made = design.made if isinstance(design.made, TapDesign) else None
    known = {(finding.code, finding.field) for finding in design.findings}
    risen = made.findings if made else ()
    return MeasuredAnswer(
        design=design,
        judgements=tuple(judgements(design, made, _sizes(measured, reading), reading)),
        over_wires=over,
        made=made,
        lacking=design.made if isinstance(design.made, NotMade) else None,
        risen=tuple(f for f in risen if (f.code, f.field) not in known),
    )


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


def _sizes(measured: Measured, reading: Reading | None) -> dict[Size, float]:
    """The numbers, with the pitch diameter in place of a value over wires."""
    sizes = {size: found.number for size, found in measured.pairs if size is not Size.OVER_WIRES}
    if reading is not None:
        sizes[Size.PITCH_DIAMETER] = reading.pitch_diameter
    return sizes


def _thread(design: TapDesign) -> MeasuredThread:
    return thread_of_design(design, design.basic_pitch_diameter, Overrides())


def _read(
    design: TapDesign, measured: Measured, compound: float, units: Units
) -> tuple[Reading | None, OverWires | None]:
    """The pitch diameter, measured itself or over wires."""
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
