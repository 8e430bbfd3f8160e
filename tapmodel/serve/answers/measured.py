"""What was measured of the tap: what it means, and the file that keeps it."""

from typing import Annotated, Any

from pydantic import Field

from tapmodel.errors import InputError
from tapmodel.report.view.bench.measured import WIRES, at_box, measured_view, sizes_of
from tapmodel.report.view.controls.on_page import on_page
from tapmodel.run.kept import kept_over
from tapmodel.serve.asked import Answered, Asked, Request, answered
from tapmodel.shop.measured.answer import MeasuredAnswer, answer_measured
from tapmodel.shop.measured.judged import with_measured
from tapmodel.shop.measured.read import with_wire
from tapmodel.shop.wires.limits import COMPOUND, demand
from tapmodel.spec.lengths import bare_number
from tapmodel.spec.measured.file import ENDING, measured_in
from tapmodel.spec.measured.record import Found, found_of, measured_of
from tapmodel.spec.measured.sizes import LENGTHS, Size, rivals
from tapmodel.spec.toml_file import table_of_text
from tapmodel.words import Units

Typed = Annotated[str, Field(max_length=40)]

FILE = "file of measured sizes"
"""What messages call one."""


class MeasuredAsked(Asked):
    """What was measured, as it is typed, by the names of sizes; over which wires, if any."""

    sizes: Annotated[dict[str, Typed], Field(max_length=len(Size))] = Field(
        default_factory=dict[str, Typed]
    )
    wire: Typed = ""
    compound: Annotated[float, Field(allow_inf_nan=False)] = 0.0


class KeptAsked(MeasuredAsked):
    """The same, and the text of the file from which the boxes were filled; empty for none."""

    file: str = ""


class DroppedSizes(Request):
    """The text of a file of measured sizes, and in what the page is told."""

    text: str
    units: Units = Units.MM


def measured_answer(asked: MeasuredAsked) -> dict[str, Any]:
    """What measured sizes mean; the sizes of the tap alone where none was measured.

    One that this tap does not have is passed over: the page keeps it for another that has it. One
    that cannot be used is told at its own box, and the others are answered.

    Raises:
        InputError: a size of no tap, or a setting that no slide has.
        NoWireError: a value over wires, where no wire suits.
    """
    told = answered(asked, cured=False)
    demand("compound", asked.compound, COMPOUND)
    found, wrong = _readings(asked, told)
    answer = _answer(asked, told, found, wrong)
    return {"measured": on_page(measured_view(told.design, answer, told.units, wrong))}


def measured_file(asked: KeptAsked) -> dict[str, object]:
    """The file that keeps what was measured, as `tapmodel measured` writes it, with a name for it.

    Readings of `asked.file` that are the same stay as they stand there, with their day; others go
    among the earlier ones.

    Raises:
        InputError: naming what was typed and what is allowed, or a file that cannot be used.
        NoWireError: a value over wires, where no wire suits.
    """
    told = answered(asked, cured=False)
    found, wrong = _readings(asked, told)
    if _answer(asked, told, found, wrong) is None and not wrong and not asked.file:
        raise InputError("measured", "nothing", "at least one value in the boxes above")
    for error in wrong.values():
        raise at_box(error)
    if Size.OVER_WIRES in found:
        found[Size.OVER_WIRES] = with_wire(told.design, found[Size.OVER_WIRES])
    before = measured_in(table_of_text(asked.file, FILE), FILE)
    given = {size: one for size, one in found.items() if not _same(one, before.get(size))}
    # What this tap has no box for was not taken back.
    shown = sizes_of(told.design)
    settled = {other for size in given for other in rivals(size)}
    gone = [size for size in before if size in shown and size not in {*found, *settled}]
    text = kept_over(asked.file, told.design.name, given, gone)
    return {"name": f"{told.design.name}{ENDING}", "text": text}


def measured_read(dropped: DroppedSizes) -> dict[str, object]:
    """The sizes that such a file keeps, as boxes have them; which of all sizes are no lengths.

    Raises:
        InputError: naming line or size, value and what is allowed.
    """
    known = measured_in(table_of_text(dropped.text, FILE), FILE)
    over = known.get(Size.OVER_WIRES)
    return {
        "sizes": {size: _as_typed(size, found.typed, dropped.units) for size, found in known.pairs},
        "wire": _as_typed(Size.OVER_WIRES, over.wire_typed, dropped.units)
        if over and over.wire_typed is not None
        else "",
        "others": [size.value for size in Size if size not in LENGTHS],
    }


def _as_typed(size: Size, typed: float | str, units: Units) -> str:
    """A bare length of a file is mm, which it says where a bare number of the page is not."""
    text = typed if isinstance(typed, str) else repr(typed).removesuffix(".0")
    bare = size in LENGTHS and bare_number(typed) is not None
    return f"{text}mm" if bare and units is Units.INCH else text


def _same(one: Found, other: Found | None) -> bool:
    return other is not None and (one.number, one.wire) == (other.number, other.wire)


def _readings(
    asked: MeasuredAsked, told: Answered
) -> tuple[dict[Size, Found], dict[str, InputError]]:
    """What was typed as numbers; and of what is none why not, by its box."""
    has = sizes_of(told.design)
    typed = {
        size: text
        for name, text in asked.sizes.items()
        if (size := _size(name)) in has and text.strip()
    }
    found: dict[Size, Found] = {}
    wrong: dict[str, InputError] = {}
    for size, text in typed.items():
        try:
            found[size] = found_of(size, text, size.value, _wire(asked, size))
        except InputError as error:
            wrong[_box(error, size)] = error
    return found, wrong


def _answer(
    asked: MeasuredAsked, told: Answered, found: dict[Size, Found], wrong: dict[str, InputError]
) -> MeasuredAnswer | None:
    """What those sizes mean that can have been measured on this tap; None for none.

    Those that cannot go from `found` to `wrong`, one after the other, as each may be what makes
    another impossible.
    """
    while found:
        try:
            known = dict(found)
            if Size.OVER_WIRES in known:
                known[Size.OVER_WIRES] = with_wire(told.design, known[Size.OVER_WIRES])
            design = with_measured(told.design, told.job, measured_of(known))
            return answer_measured(design, asked.compound, told.units)
        except InputError as error:
            # Of two that settle the same the second is named last.
            named = error.field.removesuffix(_OF_WIRE).rpartition(" ")[2]
            blamed = next((size for size in found if size == named), None)
            if blamed is None:
                raise
            wrong[_box(error, blamed)] = error
            del found[blamed]
    return None


_OF_WIRE = ": wire"


def _box(error: InputError, size: Size) -> str:
    """The box that is to blame: that of a size, or of the wires."""
    return WIRES if error.field.endswith(_OF_WIRE) else size.value


def _size(name: str) -> Size:
    try:
        return Size(name)
    except ValueError:
        raise InputError("sizes", name, ", ".join(Size)) from None


def _wire(asked: MeasuredAsked, size: Size) -> str | None:
    return asked.wire.strip() or None if size is Size.OVER_WIRES else None
