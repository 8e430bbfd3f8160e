"""Limit zones of hole and tap side by side, one chart for each diameter."""

from dataclasses import dataclass

from tapmodel.designing.limits.crests import major_zone
from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import THIN, VISIBLE
from tapmodel.report.blocks import Length
from tapmodel.report.drawings.canvas import LETTER_HEIGHT, Align
from tapmodel.report.drawings.lettering import bare, lettered, spread
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import shown_high, shown_low
from tapmodel.shape.outlines.outline import Point

WIDTH = 60.0
"""Of one chart with its labels on paper [mm]."""

_ZONE = 24.0  # height of a zone chart on paper [mm]
_BAR = 6.0  # width of a bar on paper [mm]
_PAST = 3.8  # from the top of the zones to the tip of the arrow of an open one, at most [mm]
_LEADER = 5.0  # across which a label may stand off its limit on paper [mm]
_LINE = 1.6 * LETTER_HEIGHT  # between the middles of two labels, at least, on paper [mm]


@dataclass(frozen=True, slots=True)
class _Zone:
    """One diameter of hole and tap [mm]: title, limits of both, aimed size of the tap."""

    title: str
    hole: tuple[float, float | None]
    tap: tuple[float, float] | None
    aim: float


def charts(sheet: Sheet, design: TapDesign, at: Point) -> None:
    """Three charts in a row; `at` is the middle of the first one's title."""
    for number, zone in enumerate(_zones(design)):
        _chart(sheet, zone, (at[0] + sheet.paper(WIDTH * number), at[1]))


def _zones(design: TapDesign) -> tuple[_Zone, ...]:
    hole, thread = design.hole, design.tap.thread
    return (
        _Zone("major ⌀", (hole.major_min, None), major_zone(design), thread.major),
        _Zone(
            "pitch ⌀",
            (hole.pitch_min, hole.pitch_max),
            (design.limits.pitch_min, design.limits.pitch_max),
            thread.pitch_diameter,
        ),
        _Zone("minor ⌀", (hole.minor_min, hole.minor_max), None, thread.minor),
    )


def _chart(sheet: Sheet, zone: _Zone, at: Point) -> None:
    """Bars of hole and tap, on a scale of their own, every limit written out."""
    p, middle = sheet.paper, at[0]
    base = at[1] - p(_ZONE + 11)
    given = [*zone.hole, *(zone.tap or ()), zone.aim]
    values = [value for value in given if value is not None]
    least, span = min(values), max(values) - min(values)

    def y(value: float) -> float:
        return base + p(_ZONE * (value - least) / span if span else 0.0)

    sheet.text(at, zone.title, "centre")
    for side, name, limits in ((-1, "hole", zone.hole), (1, "tap", zone.tap)):
        bar = middle + side * p(_BAR / 2 + 0.5)
        sheet.text((middle + side * p(_BAR / 2 + 1.5), at[1] - p(4.2)), name, "centre")
        if limits is not None:
            high = None if limits[1] is None else y(limits[1])
            _bar(sheet, bar, (y(limits[0]), high), base + p(_ZONE + _PAST))
    reach = p(_BAR + 0.5)
    _labels(sheet, middle - reach, [(y(v), words) for v, words in _lettered(sheet, zone.hole)], -1)
    labels = [(y(v), words) for v, words in _lettered(sheet, zone.tap) if v != zone.aim]
    aim = lettered(zone.aim, 3, sheet.units, whole=True)
    _labels(sheet, middle + reach, [*labels, (y(zone.aim), aim)], 1)
    sheet.line((middle + p(0.5), y(zone.aim)), (middle + reach, y(zone.aim)), VISIBLE)


def _lettered(sheet: Sheet, limits: tuple[float, float | None] | None) -> list[tuple[float, str]]:
    """Each limit and how it is written."""
    if limits is None:
        return []
    low, high = limits
    units = sheet.units
    least = bare(shown_low(Length(low), units))
    if high is None:
        return [(low, least)]
    return [(low, least), (high, bare(shown_high(Length(high), units)))]


def _bar(sheet: Sheet, middle: float, limits: tuple[float, float | None], top: float) -> None:
    """A zone; open above where there is no upper limit, by an arrow.

    The arrow ends at `top`, below the names: the hole that the last tap of a set finishes begins
    where the zones of the first end.
    """
    half, (low, high) = sheet.paper(_BAR / 2), limits
    if high is None:
        sheet.line((middle - half, low), (middle + half, low), THIN)
        sheet.arrow((middle, low), (middle, min(low + sheet.paper(6), top)))
        return
    corners = [
        (middle - half, low),
        (middle + half, low),
        (middle + half, high),
        (middle - half, high),
    ]
    sheet.hatch(corners, 45.0)
    sheet.path(corners, THIN, closed=True)


def _labels(sheet: Sheet, x: float, labels: list[tuple[float, str]], side: int) -> None:
    """Labels at their heights, spread where they would crowd, joined by thin leader lines."""
    ordered, p = sorted(labels), sheet.paper
    places = spread([height for height, _ in ordered], p(_LINE))
    align: Align = "left" if side > 0 else "right"
    for (height, text), place in zip(ordered, places, strict=True):
        out = x + side * p(_LEADER)
        sheet.line((x, height), (out, place), THIN)
        sheet.text((out + side * p(0.8), place), text, align)
