"""The files of a comparison: a table of every number, and the sections over each other."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from tapmodel.comparing.figures import UNITS
from tapmodel.comparing.spread import spread
from tapmodel.comparing.variant import Cell, Variant
from tapmodel.comparing.variants import Compared
from tapmodel.export.atomic import write_whole
from tapmodel.export.table import write_table
from tapmodel.report.words.comparison import why
from tapmodel.run.delivery.place import deliver
from tapmodel.run.delivery.staging import staging
from tapmodel.run.record.numbers import finite
from tapmodel.spec.job import unit_of
from tapmodel.version import __version__
from tapmodel.words import Units

SCHEMA = "tapmodel.comparison/1"

_LONGEST = 80
"""Letters that the name of the files is longer than that of the tap, at the most."""

_PLAIN = {"N·m": "N m", "µm": "um", "mm²": "mm2"}
"""Units in letters that every program reads, whatever it takes a file's alphabet for."""


def deliver_comparison(compared: Compared, out: Path, units: Units = Units.MM) -> dict[str, Any]:
    """Deliver table and picture to a folder of their own, `out/<name>-compare-<fields>`.

    Args:
        compared: taps side by side.
        out: folder for results; made if missing.
        units: of lengths in the picture and in `why`; the table is in mm, as the job is.

    Returns:
        The record, with `delivery`.

    Raises:
        InputError: when `out` cannot be written.
    """
    name = _name(compared)
    with staging(out, name) as staged:
        head, lines = table_of(compared)
        write_table(staged / f"{name}.csv", head, lines)
        drawn = spread(compared.verdict)
        best = compared.verdict.best
        if best is not None:
            # The drawings' library takes a third of a second to load.
            from tapmodel.report.drawings.views.compared import draw  # noqa: PLC0415

            picture = draw(drawn, best, f"{compared.name}: sections through the full thread", units)
            write_whole(staged / f"{name}.svg", picture.svg().encode())
        record = comparison_record(compared, units) | {"name": name}
        record |= {"drawn": [variant.number for variant in drawn]}
        record |= {"left_out": [] if best else ["picture: no combination is free of broken rules"]}
        return deliver(staged, out / name, record)


def _name(compared: Compared) -> str:
    """Told by what is varied, so that another question about the same tap leaves it alone."""
    name = f"{compared.name}-compare"
    for field in compared.varied:
        longer = f"{name}-{field}"
        if len(longer) > len(compared.name) + _LONGEST:
            break
        name = longer
    return name


def table_of(compared: Compared) -> tuple[list[str], list[list[Cell]]]:
    """Head and lines of the table of every number, its lengths in mm."""
    places = {one.number: place for place, one in enumerate(compared.verdict.ranked, 1)}
    anew = compared.anew
    fields = {field: unit_of(field).value for field in (*compared.varied, *anew)}
    units = {**fields, **UNITS, "errors": "", "warnings": "", "refusal": ""}
    head = ["number", "rank", *(_headed(name, unit) for name, unit in units.items())]
    lines: list[list[Cell]] = []
    for one in compared.variants:
        chosen = {field: one.chosen.get(field) for field in anew}
        cells = chosen | one.row | {"refusal": one.refusal}
        lines.append([one.number, places[one.number], *(_finite(cells[name]) for name in units)])
    return head, lines


def _headed(name: str, unit: str) -> str:
    return f"{name} [{_PLAIN.get(unit, unit)}]" if unit else name


def _finite(value: Cell) -> Cell:
    """No file takes a number without end."""
    return finite(value) if isinstance(value, float) else value


def comparison_record(compared: Compared, units: Units = Units.MM) -> dict[str, Any]:
    """Everything that was compared, as JSON has it; lengths in mm but in `why`."""
    verdict = compared.verdict
    return {
        "schema": SCHEMA,
        "version": __version__,
        "name": compared.name,
        "varied": list(compared.varied),
        "units": {field: unit_of(field).value for field in compared.varied} | dict(UNITS),
        "best": verdict.best.number if verdict.best else None,
        "runner_up": verdict.runner_up.number if verdict.runner_up else None,
        "why": why(compared, units),
        "rows": [_row(variant) for variant in compared.variants],
    }


def _row(variant: Variant) -> Mapping[str, object]:
    row: dict[str, object] = {"number": variant.number}
    row |= {name: _finite(value) for name, value in variant.row.items()}
    return (
        row
        | {"errors": list(variant.errors), "warnings": list(variant.warnings)}
        | ({"refusal": variant.refusal} if variant.refusal else {})
    )
