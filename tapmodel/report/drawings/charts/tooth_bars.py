"""Bars of the teeth that cut one groove: the area of each chip, and its thickness."""

from collections.abc import Sequence
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import HIDDEN, THIN
from tapmodel.prediction.chips.record import Tooth
from tapmodel.report.blocks import Area
from tapmodel.report.drawings.charts.axis import Axis, marked, marks
from tapmodel.report.drawings.lettering import bare, lettered, spread
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import MM_PER_INCH, Units, shown
from tapmodel.shape.outlines.outline import Point

_HEIGHT = 21.0  # of the highest bar on paper [mm]
_BESIDE, _BEHIND = 3.0, 5.5  # beside the numbers of the axis and of limits on paper [mm]
_BETWEEN = 11.0  # from the foot of one chart to the next one's top, its title between [mm]
_READABLE = 3.0  # a limit higher than so many of the highest bar is told, not drawn
_NUMBERS = 5.5  # that the number of a tooth takes on paper [mm]
_MILLION = 1e6
_GAP = 3.6  # between two limits as they are lettered on paper [mm]


@dataclass(frozen=True, slots=True)
class _Bars:
    """One chart: what its title calls it, in which unit, a value a tooth, and limits."""

    name: str
    unit: str
    values: tuple[float, ...]
    told: tuple[str, ...]
    limits: tuple[tuple[float, str], ...] = ()


def tooth_bars(
    sheet: Sheet, design: TapDesign, teeth: Sequence[Tooth], at: Point, right: float
) -> None:
    """Both charts one under the other.

    Args:
        sheet: drawn on.
        design: whose material has limits of the chip.
        teeth: a bar for each.
        at: left end of the upper title [mm].
        right: as far as anything reaches [mm].
    """
    both, top = (_areas(sheet, teeth), _thicknesses(sheet, design, teeth)), at[1]
    axis = (marked(mark) for bars in both for mark in marks(_top(bars), 4))
    left = at[0] + sheet.paper(_BESIDE + max(map(sheet.width, axis)))
    limits = (words for bars in both for _, words in bars.limits)
    width = right - sheet.paper(_BEHIND + max(map(sheet.width, limits))) - left
    for bars in both:
        foot = top - sheet.paper(_HEIGHT + 4)
        sheet.text((at[0], top), _title(bars))
        _chart(sheet, bars, (left, foot), width)
        top = foot - sheet.paper(_BETWEEN)


def every(count: int, room: float, needed: float) -> int:
    """Of so many labels in a row every which is lettered: all, every second, fifth or tenth."""
    steps = (1, 2, 5, 10, 20, 50)
    return next((step for step in steps if count / step * needed <= room), 100)


def lettered_teeth(count: int, step: int) -> list[int]:
    """Numbers from 1 of the teeth that are lettered: first and last, every second or round ones.

    Of those between none stands nearer to the last than two of them may stand to each other.
    """
    between = range(1, count, step) if step <= 2 else range(step, count, step)
    clear = step if step <= 2 else step - 1
    return sorted({1, *(number for number in between if count - number >= clear), count})


def _areas(sheet: Sheet, teeth: Sequence[Tooth]) -> _Bars:
    values = tuple(tooth.area for tooth in teeth)
    inch = sheet.units is Units.INCH
    # a chip is some millionths of a square inch
    unit, size, times = ("", MM_PER_INCH**2 / _MILLION, _MILLION) if inch else ("mm²", 1.0, 1.0)
    told = tuple(bare(shown(Area(times * value, 3), sheet.units)) for value in values)
    name = "area in 10⁻⁶ in²" if inch else "area"
    return _Bars(name, unit, tuple(value / size for value in values), told)


def _thicknesses(sheet: Sheet, design: TapDesign, teeth: Sequence[Tooth]) -> _Bars:
    inch = sheet.units is Units.INCH
    unit, size = ("in", MM_PER_INCH) if inch else ("mm", 1.0)
    low, high = design.work.material.group.chip
    return _Bars(
        "thickness",
        unit,
        tuple(tooth.thickness / size for tooth in teeth),
        tuple(lettered(tooth.thickness, 4, sheet.units, whole=True) for tooth in teeth),
        tuple(
            (value / size, f"{which} {sheet.plotted(value, 4)}")
            for which, value in (("least", low), ("most", high))
        ),
    )


def _top(bars: _Bars) -> float:
    """End of the axis."""
    highest = max(bars.values)
    return 1.03 * max(highest, *(v for v, _ in bars.limits if v <= _READABLE * highest), 0.0)


def beyond_chart(design: TapDesign, teeth: Sequence[Tooth]) -> bool:
    """Whether a limit of the usual chip is too high for the chart, and so told by an arrow."""
    thickest = max(tooth.thickness for tooth in teeth)
    return any(limit > _READABLE * thickest for limit in design.work.material.group.chip)


def _title(bars: _Bars) -> str:
    order = sorted(range(len(bars.values)), key=bars.values.__getitem__)
    least, most = order[0], order[-1]
    highest = f"{bars.told[most]} {bars.unit}".rstrip()
    return f"{bars.name}: {bars.told[least]} (tooth {least + 1}) to {highest} ({most + 1})"


def _chart(sheet: Sheet, bars: _Bars, corner: Point, width: float) -> None:
    (left, foot), p = corner, sheet.paper
    top = _top(bars)
    axis = Axis(foot, p(_HEIGHT) / top)
    right, step = left + width, width / len(bars.values)
    for number, value in enumerate(bars.values):
        ends = left + (number + 0.15) * step, left + (number + 0.85) * step
        corners = [(x, y) for x, y in zip((*ends, *ends[::-1]), _levels(axis, value), strict=True)]
        sheet.hatch(corners, 45.0, 1.0)
        sheet.curve(corners, THIN, closed=True)
    count = len(bars.values)
    for number in lettered_teeth(count, every(count, width * sheet.scale, _NUMBERS)):
        sheet.text((left + (number - 0.5) * step, foot - p(2.6)), str(number), "centre")
    sheet.line((left, foot), (right, foot), THIN)
    sheet.line((left, foot), (left, axis.at(top)), THIN)
    for mark in marks(top, 4):
        sheet.line((left - p(1), axis.at(mark)), (left, axis.at(mark)), THIN)
        sheet.text((left - p(1.6), axis.at(mark)), marked(mark), "right")
    for value, _ in bars.limits:
        if value <= top:
            sheet.line((left, axis.at(value)), (right, axis.at(value)), HIDDEN)
    _limits(sheet, bars, (right, axis, top))


def _levels(axis: Axis, value: float) -> tuple[float, float, float, float]:
    return axis.zero, axis.zero, axis.at(value), axis.at(value)


def _limits(sheet: Sheet, bars: _Bars, place: tuple[float, Axis, float]) -> None:
    """Numbers at the right end of each limit; one above the chart has an arrow upwards."""
    (right, axis, top), p = place, sheet.paper
    heights = [axis.at(min(value, top)) for value, _ in bars.limits]
    places = spread(heights, p(_GAP))
    for (value, words), height, place_y in zip(bars.limits, heights, places, strict=True):
        out = right + p(4)
        if value > top:
            sheet.arrow((out, place_y - p(1.5)), (out, place_y + p(1.5)))
        else:
            sheet.line((right, height), (out, place_y), THIN)
        sheet.text((out + p(0.8), place_y), words)
