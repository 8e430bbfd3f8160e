"""A figure of the tap against a value of its job, ready to be drawn."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from tapmodel.comparing.figures import UNITS, figures_by_name
from tapmodel.comparing.variant import Cell, Variant
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Length, Quantity, Words
from tapmodel.report.units import Units, as_text
from tapmodel.report.view.charts.axes import Axis, axis_of
from tapmodel.report.view.charts.fields import FIELDS, Held
from tapmodel.report.view.charts.jumps import Jump, jumps_of
from tapmodel.report.view.controls.fields import unit_beside
from tapmodel.report.view.figures import LABELS, figure_number, figure_text, per_unit, unit_told
from tapmodel.spec.job import unit_of
from tapmodel.spec.units import Unit

_MARGIN = 0.06
"""Room above and below a line, of its height."""


@dataclass(frozen=True, slots=True)
class Named:
    """What can be chosen: its key, and its name."""

    key: str
    label: str


@dataclass(frozen=True, slots=True)
class Row:
    """One value that was tried.

    Attributes:
        x: the value, on its scale.
        value: the same as a job takes it.
        text: the same in words.
        y: the figures, each on its own scale; None where the value breaks a rule.
        texts: the figures in words.
        broken: whether it breaks a rule.
    """

    x: float
    value: float | int | str
    text: str
    y: tuple[float | None, ...]
    texts: tuple[str, ...]
    broken: bool


@dataclass(frozen=True, slots=True)
class Zone:
    """Neighbouring values that break the same rules: first and last row, and what is wrong."""

    first: int
    last: int
    text: str


@dataclass(frozen=True, slots=True)
class ChartView:
    """Figures against one value.

    Attributes:
        field: that is varied, by its dotted name.
        label: its name.
        start, end: from where to where, as they can be typed.
        unit: beside both, which a bare number that is typed there has.
        across: its scale.
        figures: what is drawn, with a scale for each in `up`.
        rows: rising.
        zones: where rules are broken.
        jumps: where something is chosen anew, so that no line runs across.
        present: what the tap has now.
        held: values that each row has beside its own; None for fields that it gives no more.
        note: what is held, in words; empty where nothing is.
        fields, choices: all that can be drawn.
    """

    field: str
    label: str
    start: str
    end: str
    unit: str
    across: Axis
    figures: tuple[Named, ...]
    up: tuple[Axis, ...]
    rows: tuple[Row, ...]
    zones: tuple[Zone, ...]
    jumps: tuple[Jump, ...]
    present: Row
    held: Mapping[str, float | str | None]
    note: str
    fields: tuple[Named, ...]
    choices: tuple[Named, ...]


@dataclass(frozen=True, slots=True)
class Charted:
    """What was tried.

    Attributes:
        field: that was varied.
        values: of it [mm, deg ...].
        figures: names of what is drawn.
        variants: what came of each value.
        broken: what is wrong with a variant, in words, by its number.
        held: beside the values.
    """

    field: str
    values: tuple[float, ...]
    figures: tuple[str, ...]
    variants: tuple[Variant, ...]
    broken: Mapping[int, str]
    held: Held


def chart_view(design: TapDesign, charted: Charted, units: Units) -> ChartView:
    """The chart of what was tried.

    Args:
        design: of the job as it is.
        charted: values and what came of them.
        units: of texts and scales.
    """
    field, figures = charted.field, charted.figures
    rows = tuple(
        _row(field, value, figures, (variant.figures, bool(variant.errors)), units)
        for value, variant in zip(charted.values, charted.variants, strict=True)
    )
    now = figures_by_name(design), bool(design.errors)
    present = _row(field, FIELDS[field].present(design), figures, now, units)
    label, unit = FIELDS[field].label, _unit(field, units)
    ends = rows[0].x, rows[-1].x
    return ChartView(
        field=field,
        label=label,
        start=_typed(field, charted.values[0], units),
        end=_typed(field, charted.values[-1], units),
        unit=unit_beside(field, units),
        across=axis_of(f"{label} [{unit}]" if unit else label, *ends, 7),
        figures=tuple(Named(key, LABELS[key]) for key in figures),
        up=tuple(_up(key, number, (*rows, present), units) for number, key in enumerate(figures)),
        rows=rows,
        zones=tuple(_zones(charted)),
        jumps=jumps_of(
            charted.variants, [row.text for row in rows], units, whole=FIELDS[field].whole
        ),
        present=present,
        held=charted.held.values,
        note=charted.held.note,
        fields=tuple(Named(key, one.label) for key, one in FIELDS.items()),
        choices=tuple(Named(key, name) for key, name in LABELS.items()),
    )


def job_value(field: str, value: float, units: Units) -> float | int | str:
    """A value as a job takes it; a length with the reader's unit, so that it is not asked back."""
    if FIELDS[field].whole:
        return round(value)
    short = f"{float(f'{value * per_field(field, units):.7g}'):.12g}"
    return f"{short}{_unit(field, units)}" if unit_of(field) is Unit.MM else float(short)


Found = tuple[Mapping[str, Cell], bool]
"""Figures of a tap, and whether it breaks a rule."""


def _row(
    field: str,
    value: float,
    figures: Sequence[str],
    found: Found,
    units: Units,
) -> Row:
    cells, broken = found
    numbers = [None if broken else figure_number(cells.get(key)) for key in figures]
    return Row(
        x=round(value * per_field(field, units), 6),
        value=job_value(field, value, units),
        text=as_text(_quantity(field, value), units),
        y=tuple(
            None if number is None else number * per_unit(UNITS[key], units)
            for key, number in zip(figures, numbers, strict=True)
        ),
        texts=tuple(
            figure_text(key, number, units) for key, number in zip(figures, numbers, strict=True)
        ),
        broken=broken,
    )


def _quantity(field: str, value: float) -> Quantity:
    match unit_of(field):
        case Unit.MM:
            return Length(value, 3)
        case Unit.DEGREES:
            return Angle(value)
        case unit:
            return Words(f"{value:.4g} {unit}".rstrip())


def _unit(field: str, units: Units) -> str:
    unit = unit_of(field)
    return unit_told("mm", units) if unit is Unit.MM else unit.value


def per_field(field: str, units: Units) -> float:
    """How many of the units of its scale one of a field is [mm, deg ...]."""
    return per_unit("mm", units) if unit_of(field) is Unit.MM else 1.0


def _typed(field: str, value: float, units: Units) -> str:
    """A value as a box shows it, in the unit of the scale."""
    return f"{value * per_field(field, units):.5g}"


def _up(key: str, number: int, rows: Sequence[Row], units: Units) -> Axis:
    values = [y for row in rows if (y := row.y[number]) is not None]
    low, high = (min(values), max(values)) if values else (0.0, 1.0)
    # what hardly changes is no hill
    least = max(abs(high) * 0.02, 1e-9)
    room = max(_MARGIN * (high - low), (least - (high - low)) / 2)
    unit = unit_told(UNITS[key], units)
    return axis_of(f"{LABELS[key]} [{unit}]" if unit else LABELS[key], low - room, high + room, 5)


def _zones(charted: Charted) -> list[Zone]:
    """Runs of values that break the same rules."""
    found: list[Zone] = []
    numbered = enumerate(charted.variants)
    for codes, run in groupby(numbered, key=lambda one: one[1].errors):
        places = [place for place, _ in run]
        if codes:
            number = charted.variants[places[0]].number
            found.append(Zone(places[0], places[-1], charted.broken.get(number, ", ".join(codes))))
    return found
