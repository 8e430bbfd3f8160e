"""Taps side by side, on the screen."""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from tapmodel.comparing.variant import UNUSABLE, Cell, Variant
from tapmodel.comparing.variants import Compared
from tapmodel.errors import shortened
from tapmodel.report.screen.chapter import wrapped
from tapmodel.report.screen.columns import GAP, Mark, Pen, padded, plain
from tapmodel.report.units import LBF_IN_PER_NM, MM_PER_INCH, Units
from tapmodel.report.words.comparison import why
from tapmodel.spec.job import unit_of
from tapmodel.spec.shop.pitches import in_inches
from tapmodel.spec.units import Unit

MOST_SHOWN = 20
"""Lines of a table that a reader still takes in."""


@dataclass(frozen=True, slots=True)
class _Column:
    """A column of numbers: its words, its unit, and the decimals in mm, inches having one more.

    One that is `in_inches` is told so beside others in mm.
    """

    words: str
    unit: str
    read: Callable[[Variant], Cell]
    digits: int = 2
    in_inches: bool = False

    def units(self, wanted: Units) -> Units:
        """In which it is told to whoever wants the table in others."""
        return Units.INCH if self.in_inches else wanted


def _of(figure: str) -> Callable[[Variant], Cell]:
    return lambda variant: variant.figures[figure]


def _chosen(field: str) -> Callable[[Variant], Cell]:
    return lambda variant: variant.chosen.get(field)


_COLUMNS = (
    _Column("rake", "deg", _of("rake_at_wall")),
    _Column("land", "mm", _of("land_width")),
    _Column("core", "mm", _of("core_diameter")),
    _Column("torque", "N·m", _of("torque_likely")),
    _Column("least", "N·m", _of("torque_low")),
    _Column("most", "N·m", _of("torque_high")),
    _Column("safe", "N·m", _of("bears"), 1),
    _Column("safety", "", _of("margin")),
    _Column("chamfer", "µm", _of("chamfer_clearance_um"), 1),
    _Column("flank rubs", "mm", _of("flank_rubbing")),
    _Column("chip room", "mm", _of("chip_room"), 1),
    _Column("thinnest", "mm", _of("chip_min"), 4),
    _Column("thickest", "mm", _of("chip_max"), 4),
)

_CHOSEN = {
    "hole.kind": _Column("hole", "", _chosen("hole.kind")),
    "hole.drill": _Column("drill", "mm", _chosen("hole.drill")),
    "flutes.count": _Column("flutes", "", _chosen("flutes.count"), 0),
    "flutes.cutter_diameter": _Column("cutter", "mm", _chosen("flutes.cutter_diameter")),
    "chamfer.pitches": _Column("pitches", "", _chosen("chamfer.pitches")),
}
"""Columns of what rules choose anew; the core has its own in any case."""

LEGEND = (
    "rake: at the drilled wall. torque: likely, with the least and the most it may be. safe: the "
    "torque that the tap is safe to take; `tapmodel design` says where to stop before. safety: the "
    "factor of that over the most. chamfer: its clearance; negative, it binds. flank rubs: how far "
    "along the land, at the pitch line, it slides on what it cut. chip room: length of thread "
    "whose chips the flutes hold, at most what the tap can cut; the ranking does not count it. "
    "thinnest, thickest: of the chips."
)


def comparison_page(
    compared: Compared, units: Units = Units.MM, pen: Pen = plain, most: int = MOST_SHOWN
) -> str:
    """The table, which is the best, and why.

    Args:
        compared: taps side by side.
        units: of lengths; a table has no room for both, so in both they are in mm, but for those
            that were typed in inches.
        pen: writes for a screen that can show what a text is.
        most: lines; of a longer table the best of all are shown.
    """
    total = len(compared.variants)
    shown = compared.variants if total <= most else compared.verdict.ranked[:most]
    anew = tuple(_CHOSEN[field] for field in compared.anew if field in _CHOSEN)
    lines = [*_table(compared, shown, anew, units, pen), ""]
    if len(shown) < total:
        lines += [
            *wrapped(f"The best {most} of {total}, the best first; all stand in the CSV."),
            "",
        ]
    lines += [*wrapped(why(compared, units)), ""]
    lines += _refusals(compared)
    return "\n".join([*lines, *(pen(line, Mark.ASIDE) for line in wrapped(_legend(anew)))])


def _legend(anew: tuple[_Column, ...]) -> str:
    """What the columns are; those that are there because rules chose anew come first."""
    named = ", ".join(column.words for column in anew)
    return f"{named}: chosen anew by the rules. {LEGEND}" if anew else LEGEND


def _refusals(compared: Compared) -> Iterator[str]:
    """Why values make no job, told once."""
    refused = [variant for variant in compared.variants if variant.refusal]
    if refused:
        first = refused[0]
        yield from wrapped(
            f"{UNUSABLE} ({len(refused)}), first no. {first.number}: {first.refusal}"
        )
        yield ""


def _table(
    compared: Compared,
    shown: tuple[Variant, ...],
    anew: tuple[_Column, ...],
    units: Units,
    pen: Pen,
) -> Iterator[str]:
    typed = compared.job.typed() if units is Units.BOTH else {}
    varied = (_varied(field, typed.get(field)) for field in compared.varied)
    columns = (*varied, *anew, *_COLUMNS)
    best = compared.verdict.best
    head = ["no.", *(column.words for column in columns), "errors", "warnings"]
    under = ["", *(_unit(column.unit, column.units(units)) for column in columns), "", ""]
    body = [_line(variant, columns, units, best=variant is best) for variant in shown]
    first, second, *lines = (
        GAP.join([*numbers, *codes]).rstrip()
        for numbers, codes in zip(
            padded([line[:-2] for line in (head, under, *body)], right=True),
            padded([line[-2:] for line in (head, under, *body)]),
            strict=True,
        )
    )
    yield pen(first, Mark.HEADING)
    yield pen(second, Mark.ASIDE)
    for variant, line in zip(shown, lines, strict=True):
        yield pen(line, Mark.VALUE) if variant is best else line


def _line(variant: Variant, columns: tuple[_Column, ...], units: Units, *, best: bool) -> list[str]:
    number = f"{'*' * best}{variant.number}"
    numbers = [_told(column.read(variant), column, units) for column in columns]
    return [number, *numbers, " ".join(variant.errors) or "-", " ".join(variant.warnings) or "-"]


_LONGEST = 40
"""Letters of a value that is a word."""

_EXACT = -1
"""Decimals of what was varied: those it has."""


def _varied(field: str, typed: object) -> _Column:
    """Lengths that were typed in inches are told in them to a reader of both."""
    inches = isinstance(typed, str) and unit_of(field) is Unit.MM and in_inches(typed)
    read = _value_of(field)
    return _Column(field, unit_of(field).value, read, _EXACT, inches)


def _value_of(field: str) -> Callable[[Variant], Cell]:
    return lambda variant: variant.values[field]


def _unit(unit: str, units: Units) -> str:
    return _IN_INCHES[unit][0] if units is Units.INCH and unit in _IN_INCHES else unit


_IN_INCHES = {
    Unit.MM.value: ("in", 1 / MM_PER_INCH, 1),
    "µm": ("in", 1e-3 / MM_PER_INCH, 4),
    "N·m": ("lbf·in", LBF_IN_PER_NM, -1),
}
"""What each unit becomes in a table in inches, how many of it, and how many decimals more."""


def _told(value: Cell, column: _Column, units: Units) -> str:
    if value is None:
        return "-"
    if isinstance(value, str | bool):
        word = str(value).lower() if isinstance(value, bool) else value
        return shortened(word, _LONGEST)
    digits = column.digits
    if _unit(column.unit, column.units(units)) != column.unit:
        _, scale, more = _IN_INCHES[column.unit]
        value, digits = value * scale, digits + more if digits >= 0 else digits
    if not math.isfinite(value):
        return "-"
    # Adding 0 turns the minus zero of a rounded value into plain zero.
    return f"{value:.6g}" if digits < 0 else f"{round(value, digits) + 0.0:.{digits}f}"
