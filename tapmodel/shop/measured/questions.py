"""Whether a bare number that was measured makes sense only in another unit."""

from tapmodel.designing.questioned import is_near, questioned, usual_lengths
from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.spec.designations.reading.inches import MM
from tapmodel.spec.lengths import bare_number
from tapmodel.spec.measured.record import Found, Measured, Typed
from tapmodel.spec.measured.sizes import Size

_LIKE = {
    Size.OVERALL_LENGTH: "blank.overall_length",
    Size.SHANK: "blank.shank_diameter",
    Size.MAJOR: "thread.major",
    Size.THREAD_LENGTH: "blank.thread_length",
    Size.NECK: "blank.neck_diameter",
    Size.OVER_WIRES: "thread.major",
    Size.PITCH_DIAMETER: "thread.pitch_diameter",
    Size.MINOR: "thread.pitch_diameter",
    Size.CHAMFER_LENGTH: "chamfer.length",
    Size.POINT_DIAMETER: "chamfer.point_diameter",
    Size.SQUARE: "blank.square_across_flats",
    Size.SQUARE_LENGTH: "blank.square_length",
    Size.CORE: "flutes.core_diameter",
    Size.HEEL_DROP: "relief.chamfer.heel_drop",
    Size.THREAD_HEEL_DROP: "relief.thread.heel_drop",
}
"""The field of the job that is about as large."""

_WIRE = "shop.wires"


def refuse_other_units(design: TapDesign, measured: Measured) -> None:
    """Refuse the first bare number that is near the designed size only in another unit.

    Raises:
        InputError: saying how it is written.

    Source: `tapmodel.designing.questioned.questioned`, beside this very design.
    """
    for size, found in measured.pairs:
        if size in _LIKE:
            _refuse(design, _LIKE[size], found.field, found.typed)
            _refuse_millimetres(design, _LIKE[size], found)
        if found.wire_typed is not None:
            _refuse(design, _WIRE, found.wire_field, found.wire_typed)


def _refuse(design: TapDesign, like: str, field: str, typed: Typed) -> None:
    if isinstance(typed, str) or typed == 0:
        return
    value = [typed] if like == _WIRE else typed
    asked = next(questioned({like: value}, design), None)
    if asked is None:
        return
    inches = f"{asked.values.number('inches'):.10g}in"
    usual, unit = asked.values.number("usual"), asked.values.word("unit")
    allowed = (
        f"a length with its unit: this looks like {unit}, so write {inches}, or {typed:.10g}mm "
        f"where that is meant; it is {usual:.4g} mm by design"
    )
    raise InputError(field, typed, allowed)


def _refuse_millimetres(design: TapDesign, like: str, found: Found) -> None:
    """Millimetres with the mark of inches behind them."""
    inches, usual = float(MM), usual_lengths(design)[like]
    if bare_number(found.typed) is not None or not isinstance(found.typed, str) or usual <= 0:
        return
    marked = not found.typed.lower().rstrip(". ").endswith("mm")
    if marked and is_near(found.number / inches, usual) and not is_near(found.number, usual):
        meant = f"{found.number / inches:.10g}mm"
        allowed = f"a length; this looks like mm: write {meant}; it is {usual:.4g} mm by design"
        raise InputError(found.field, found.typed, allowed)
