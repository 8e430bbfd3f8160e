"""The tap upright, and the shear in its sections at their heights beside it."""

from tapmodel.export.dxf.document import CENTRE, THIN, VISIBLE
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.strength.record import Section, Spot
from tapmodel.report.drawings.charts.axis import Axis, figure, marked, spaced
from tapmodel.report.drawings.charts.measures import measures_of
from tapmodel.report.drawings.lettering import spread
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.shape.outlines.blank_profile import blank_profile
from tapmodel.shape.outlines.outline import Point

HEIGHT = 43.0
"""Of the tap on paper [mm]."""

_CHART = 30.0  # width of the chart on paper [mm]
_LINE = 4.0  # between two lines of lettering on paper [mm]


def along_tap(sheet: Sheet, foreseen: Prediction, corner: Point) -> None:
    """Tap and chart, the front at the foot; `corner` is their lower left one [mm]."""
    (left, foot), p = corner, sheet.paper
    tap, sections = foreseen.tap, foreseen.strength.sections
    unit = p(HEIGHT) / tap.blank.overall_length
    up = Axis(foot, unit)
    widest = max(radius for radius, _ in blank_profile(tap).corners) * unit
    _silhouette(sheet, foreseen, (left + widest, up))
    edge = left + 2 * widest + p(4)
    notched = notch_shear(foreseen)
    top = 1.05 * max(notched or 0.0, *(section.shear for section in sections))
    across = Axis(edge, p(_CHART) / top)
    ends = foot, up.at(tap.blank.overall_length)
    sheet.line((edge, ends[0]), (edge, ends[1]), THIN)
    sheet.line((edge, foot), (edge + p(_CHART), foot), THIN)
    measures = measures_of(sheet.units)
    for mark in spaced(sheet, measures.shear(top), _CHART, 4):
        x = across.at(mark / measures.shear(1.0))
        sheet.line((x, foot - p(1)), (x, foot), THIN)
        sheet.text((x, foot - p(3)), marked(mark), "centre")
    words = f"peak shear in 1 {measures.torque} [{measures.stress}]"
    sheet.text((edge + p(_CHART / 2), foot - p(7)), words, "centre")
    sheet.path(_stepped(foreseen, up, across), VISIBLE)
    _labels(sheet, foreseen, (up, across), edge + p(_CHART + 6))


def _silhouette(sheet: Sheet, foreseen: Prediction, place: tuple[float, Axis]) -> None:
    axis, up = place
    corners = [(radius * up.unit, up.at(z)) for radius, z in blank_profile(foreseen.tap).corners]
    for side in (-1.0, 1.0):
        outside = [(0.0, up.at(0)), *(c for c in corners if c[0] > 0), (0.0, corners[-2][1])]
        sheet.path([(axis + side * x, y) for x, y in outside], THIN)
    over = sheet.paper(2)
    sheet.line((axis, up.at(0) - over), (axis, corners[-1][1] + over), CENTRE)


def _stepped(foreseen: Prediction, up: Axis, across: Axis) -> list[Point]:
    """From section to section; where the tap stays as it is until the next, straight up to it."""
    sections, blank = foreseen.strength.sections, foreseen.tap.blank
    points: list[Point] = []
    for section, after in zip(sections, [*sections[1:], None], strict=True):
        x = across.at(section.shear)
        points.append((x, up.at(section.z)))
        if after is None:
            points.append((x, up.at(blank.overall_length)))
        elif after.place is not section.place:
            points.append((x, up.at(after.z)))
    return points


def _labels(sheet: Sheet, foreseen: Prediction, axes: tuple[Axis, Axis], column: float) -> None:
    (up, across), p = axes, sheet.paper
    told = sorted(_told(sheet, foreseen), key=lambda spot: spot[0])
    heights = [up.at(z) for z, *_ in told]
    # a second label at one height stands over the first, which else would go under the axis
    seen = [
        h + p(_LINE) * (h == before) for h, before in zip(heights, [None, *heights], strict=False)
    ]
    places = spread(seen, p(_LINE))
    for (_, shear, name, weakest), height, place in zip(told, heights, places, strict=True):
        x = across.at(shear)
        sheet.dot((x, height), 1.1 if weakest else 0.6)
        sheet.line((x, height), (column - p(3), place), THIN)
        sheet.line((column - p(3), place), (column, place), THIN)
        number = figure(measures_of(sheet.units).shear(shear))
        words = f"{name}: {number}"
        sheet.text((column + p(0.8), place), f"{words}, weakest" if weakest else words)


def _told(sheet: Sheet, foreseen: Prediction) -> list[tuple[float, float, str, bool]]:
    """Height, shear in 1 N·m, name, and whether the tap breaks there first, of all that is told."""
    notched = notch_shear(foreseen)
    told: list[tuple[float, float, str, bool]] = []
    for section in foreseen.strength.sections:
        words = f"{section.place.value} at {sheet.plotted(section.z, 1)}"
        weakest = governs(foreseen, section)
        told.append((section.z, section.shear, words, weakest and notched is None))
        if weakest and notched is not None:
            told.append((section.z, notched, "notch of its thread", True))
    return told


def notch_shear(foreseen: Prediction) -> float | None:
    """Shear at the thread's root in 1 N·m, its notch with it [MPa]; None if it breaks elsewhere."""
    strength = foreseen.strength
    if strength.governs.spot is not Spot.THREAD_ROOT:
        return None
    return strength.notch.factor * strength.land_shear


def governs(foreseen: Prediction, section: Section) -> bool:
    """Whether the tap breaks in that section first."""
    where = foreseen.strength.governs
    return section.place is where.place and section.z == where.z
