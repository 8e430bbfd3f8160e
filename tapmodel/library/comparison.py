"""The same tap with other values, side by side."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict
from itertools import product
from typing import cast

from tapmodel.errors import NoTapError
from tapmodel.library.designed import DesignedTap, design
from tapmodel.library.request import Request
from tapmodel.report.screen.columns import columns
from tapmodel.spec.job import field_names, unit_of
from tapmodel.words import Severity

Cell = float | int | str | None

# The figures that tell variants apart, in the order in which they are shown.
_SHOWN = (
    *("cutter_diameter", "core_diameter", "rake_crest", "rake_root", "land_angle", "land_width"),
    *("flute_area", "chamfer_teeth", "chip_thickness", "depth_from_top", "runout_end"),
)

_UNITS = {
    **dict.fromkeys(("cutter_diameter", "core_diameter", "land_width"), "mm"),
    **dict.fromkeys(("chip_thickness", "depth_from_top", "runout_end"), "mm"),
    **dict.fromkeys(("rake_crest", "rake_root", "land_angle"), "deg"),
    "flute_area": "mm²",
}


class Comparison(list[dict[str, Cell]]):
    """Rows, one for each variant, to print, plot or hand to a table library.

    A row holds the values that were varied by field, every figure by name, and `errors` and
    `warnings`, the codes of what the rules found. Where values leave no tap the figures are None.
    """

    def __init__(self, rows: Sequence[dict[str, Cell]], varied: Sequence[str]) -> None:
        """Keep `rows`; `varied` are the fields that differ among them."""
        super().__init__(rows)
        self.varied = tuple(varied)

    def __str__(self) -> str:
        """A table of the varied fields and the figures that tell variants apart, with units."""
        names = (*self.varied, *_SHOWN, "errors", "warnings")
        rows = ([_text(row[name]) for name in names] for row in self)
        texts = [names, tuple(map(_unit, names)), *rows]
        return "\n".join(columns(texts, right=True))


def compare(
    what: Request, varied: Mapping[str, object], sets: Mapping[str, object] | None = None
) -> Comparison:
    """Design every combination of the values given.

    Args:
        what: as for `design`.
        varied: for each dotted field the values to try, or a single one.
        sets: further values, the same for all.

    Returns:
        A row for each combination, the last field changing fastest.

    Raises:
        InputError: a value that cannot be used at all, or an unknown field.

    >>> rows = compare("M18x0.75", {"flutes.count": [3, 4, 5]})
    >>> [row["flutes.count"] for row in rows]
    [3, 4, 5]
    """
    rows = [
        _row(what, dict(zip(varied, values, strict=True)), sets or {})
        for values in product(*map(_several, varied.values()))
    ]
    return Comparison(rows, tuple(varied))


def _several(values: object) -> Iterable[object]:
    """The values to try; a word or a number is a single one."""
    if isinstance(values, str) or not isinstance(values, Iterable):
        return (values,)
    return cast("Iterable[object]", values)


def _unit(name: str) -> str:
    """Unit of a column, for the head of the table."""
    if name in _UNITS:
        return _UNITS[name]
    return unit_of(name).value if name in field_names() else ""


def _row(
    what: Request, values: Mapping[str, object], sets: Mapping[str, object]
) -> dict[str, Cell]:
    head: dict[str, Cell] = {field: _cell(value) for field, value in values.items()}
    try:
        made = design(what, {**sets, **values})
    except NoTapError as error:
        return head | dict.fromkeys(_SHOWN) | {"errors": error.finding.code, "warnings": ""}
    return (
        head
        | _figures(made)
        | {
            "errors": _codes(made, Severity.ERROR),
            "warnings": _codes(made, Severity.WARNING),
        }
    )


def _figures(made: DesignedTap) -> dict[str, Cell]:
    found: dict[str, Cell] = {"cutter_diameter": made.tap.flutes.cutter_diameter}
    for name, value in asdict(made.figures).items():
        if isinstance(value, dict):
            found |= {f"{name}.{part}": number for part, number in value.items()}  # pyright: ignore[reportUnknownVariableType]
        else:
            found[name] = value
    return found


def _codes(made: DesignedTap, severity: Severity) -> str:
    return " ".join(finding.code for finding in made.findings if finding.severity is severity)


def _cell(value: object) -> Cell:
    return value if isinstance(value, float | int | str) else str(value)


def _text(value: Cell) -> str:
    if isinstance(value, float):
        return f"{value:.4g}"
    return "-" if value in (None, "") else str(value)
