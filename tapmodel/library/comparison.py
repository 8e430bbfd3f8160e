"""The same tap with other values, side by side."""

from collections.abc import Iterable, Mapping
from typing import cast

from tapmodel.comparing.figures import UNITS
from tapmodel.comparing.variant import Cell
from tapmodel.comparing.variants import Asked, Compared, compare_taps
from tapmodel.library.request import Request, flat, table_of, where_of
from tapmodel.report.screen.columns import columns
from tapmodel.report.words.comparison import why
from tapmodel.spec.job import unit_of

# The figures that tell variants apart, in the order in which they are shown.
_SHOWN = (
    *("cutter_diameter", "core_diameter", "rake_crest", "rake_root", "land_angle", "land_width"),
    *("flute_area", "chamfer_teeth", "chip_thickness", "depth_from_top", "runout_end"),
    *("torque_likely", "bears", "margin", "chamfer_clearance_um"),
)


class Comparison(list[dict[str, Cell]]):
    """Rows, one for each variant, to print, plot or hand to a table library.

    A row holds the values that were varied by field (a length in mm), every figure by name (the
    torque that the tap is foreseen to take, its clearance and its chips among them), and `errors`
    and `warnings`, the codes of what the rules found. Where values leave no tap the figures are
    None; where they make no job at all, `errors` is "unusable".
    """

    def __init__(self, compared: Compared) -> None:
        """Take the rows of taps side by side."""
        super().__init__(variant.row for variant in compared.variants)
        self.compared = compared
        self.varied = compared.varied
        """The fields that differ among the rows."""

    @property
    def best(self) -> dict[str, Cell] | None:
        """The best row, None where each breaks a rule.

        By a rule of this program: no broken rule, a chamfer that does not bind, the fewest
        warnings, the greatest safety factor of torque (`margin`), the least rubbing.
        """
        found = self.compared.verdict.best
        return self[found.number - 1] if found else None

    @property
    def why(self) -> str:
        """Which is the best and by what, and what the next one would cost."""
        return why(self.compared)

    def __str__(self) -> str:
        """A table of the varied fields and the figures that tell variants apart, with units."""
        names = (*self.varied, *_SHOWN, "errors", "warnings")
        rows = ([_text(row[name]) for name in names] for row in self)
        texts = [names, tuple(map(_unit, names)), *rows]
        return "\n".join(columns(texts, right=True))


def compare(
    what: Request, varied: Mapping[str, object], sets: Mapping[str, object] | None = None
) -> Comparison:
    """Settle every combination of the values given; no cures are sought.

    Args:
        what: as for `design`.
        varied: for each dotted field the values to try, or a single one.
        sets: further values, the same for all.

    Returns:
        A row for each combination, the last field changing fastest, and which is the best.

    Raises:
        InputError: no combination can be used, as where a field is unknown, or there are too many.

    >>> rows = compare("M18x0.75", {"flutes.count": [3, 4, 5]})
    >>> [row["flutes.count"] for row in rows]
    [3, 4, 5]
    >>> rows.best["flutes.count"]
    5
    """
    several = {name: _several(values) for name, values in varied.items()}
    asked = Asked(table_of(what), several, flat(sets or {}), where_of(what))
    return Comparison(compare_taps(asked))


def _several(values: object) -> tuple[object, ...]:
    """The values to try; a word or a number is a single one."""
    if isinstance(values, str) or not isinstance(values, Iterable):
        return (values,)
    return tuple(cast("Iterable[object]", values))


def _unit(name: str) -> str:
    """Unit of a column, for the head of the table."""
    if name in ("errors", "warnings"):
        return ""
    return UNITS[name] if name in UNITS else unit_of(name).value


def _text(value: Cell) -> str:
    if isinstance(value, float):
        return f"{value:.4g}"
    return "-" if value in (None, "") else str(value)
