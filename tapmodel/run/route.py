"""The route in the shop as a record, and its paper delivered among the others of the tap."""

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import write_whole
from tapmodel.report.blocks import Block, Chapter, Length, Paragraphs, Quantity, Row, Rows, Tool
from tapmodel.report.route.operation import Operation
from tapmodel.report.units import Look, aimed, shown, told
from tapmodel.report.words.symptoms import why_text
from tapmodel.run.delivery.place import deliver
from tapmodel.run.delivery.staging import staging
from tapmodel.run.record.compose import design_record
from tapmodel.shop.gcode.flutes import flutes_program
from tapmodel.shop.gcode.square import square_program
from tapmodel.shop.symptoms.record import Symptom
from tapmodel.shop.symptoms.symptoms import symptoms_of
from tapmodel.version import __version__
from tapmodel.words import Index, Units

SCHEMA = "tapmodel.route/1"

PROGRAMS = {"flutes": flutes_program, "square": square_program}
"""Programs of a mill by the part that they make."""


def deliver_route(
    design: TapDesign,
    chapters: tuple[Sequence[Chapter], Sequence[Chapter]],
    out: Path,
    look: Look,
    programs: Index | None = None,
) -> dict[str, Any]:
    """Deliver the paper, and programs of a mill, to the folder of the tap, `out/<name>`.

    Args:
        design: every number of the tap.
        chapters: one an operation; and those behind them.
        out: folder for results; made if missing.
        look: size of the paper, and units.
        programs: how the mill turns the work in the programs of flutes and square; None for no
            programs.

    Returns:
        The record of the tap, with `delivery`.

    Raises:
        InputError: when `out` cannot be written.
    """
    with staging(out, design.name) as staged:
        write_route_files(design, chapters, staged, look, programs)
        return deliver(staged, out / design.name, design_record(design))


def write_route_files(
    design: TapDesign,
    chapters: tuple[Sequence[Chapter], Sequence[Chapter]],
    folder: Path,
    look: Look,
    programs: Index | None = None,
) -> None:
    """Write the paper, and programs of a mill, to a folder that exists; see `deliver_route`.

    Raises:
        InputError: when nothing can be written there.
    """
    # The typesetter is loaded only for it.
    from tapmodel.report.route.write import write_route  # noqa: PLC0415

    write_route(folder / f"{design.name}-route.pdf", design, chapters[0], look, chapters[1])
    for part, written in (PROGRAMS if programs else {}).items():
        text = written(design, look.units, by_hand=programs is Index.BY_HAND)
        write_whole(folder / f"{design.name}-{part}.ngc", text.encode("ascii"))


def route_record(
    design: TapDesign, operations: Sequence[Operation], units: Units = Units.MM
) -> dict[str, Any]:
    """The operations as JSON has them: numbers of lengths in mm, texts in the reader's units."""
    return {
        "schema": SCHEMA,
        "version": __version__,
        "name": design.name,
        "designation": design.designation,
        "operations": [
            _operation(number, one, units) for number, one in enumerate(operations, start=1)
        ],
        "symptoms": [_symptom(one, units) for one in symptoms_of(design)],
    }


def _symptom(symptom: Symptom, units: Units) -> dict[str, Any]:
    return {
        "symptom": symptom.sign.value,
        "causes": [
            {
                "cause": cause.why.value,
                "weight": cause.weight,
                "text": why_text(cause, units),
                "set": [
                    {"field": one.field, "bound": one.bound.value, "value": one.value}
                    for one in (cause.cures[0].settings if cause.cures else ())
                ],
                "tried": cause.tried,
            }
            for cause in symptom.causes
        ],
    }


def _operation(number: int, one: Operation, units: Units) -> dict[str, Any]:
    return {
        "number": number,
        "step": one.step.value,
        "title": one.title,
        "machine": one.machine,
        "holding": told(one.holding, units),
        "tool": told(one.tool, units),
        "settings": [_block(block, units) for block in one.settings],
        "speeds": [_row(row, units) for row in one.speeds],
        "measure": [_row(row, units) for row in one.measure],
        "cautions": list(one.cautions),
        "why": told(one.why, units),
        "instead": one.instead,
    }


def _block(block: Block, units: Units) -> dict[str, Any]:
    match block:
        case Rows():
            rows = [_row(row, units) for row in block.rows]
            return {"caption": block.caption, "rows": rows}
        case Paragraphs():
            return {"sentences": [told(text, units) for text in block.texts]}
        case _:
            lines = [[_text(shown(cell, units)) for cell in line] for line in block.lines]
            return {"caption": block.caption, "head": list(block.head), "lines": lines}


def _row(row: Row, units: Units) -> dict[str, Any]:
    return {
        "label": told(row.label, units),
        "text": _text(aimed(row, units)),
        "mm": _mm(row.value),
        "low": _mm(row.low),
        "high": _mm(row.high),
    }


def _mm(value: Quantity | None) -> float | None:
    return value.mm if isinstance(value, Length | Tool) else None


def _text(texts: Sequence[str]) -> str:
    return " = ".join(texts)
