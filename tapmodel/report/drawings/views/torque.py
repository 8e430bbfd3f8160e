"""Torque against depth: the band of the way in and of the way back, and where to stop."""

from collections.abc import Sequence
from dataclasses import replace
from operator import itemgetter

import numpy as np
from numpy.typing import NDArray

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, HIDDEN, THIN, VISIBLE
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.torque.record import Course
from tapmodel.report.drawings.canvas import Caption, Key
from tapmodel.report.drawings.charts.axis import Axis, marked, marks
from tapmodel.report.drawings.charts.measures import measures_of
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import fitting_scale, scale_text, spread
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import MM_PER_INCH, Units
from tapmodel.shape.outlines.outline import Point

READABLE = 3.0
"""A torque higher than so many times the greatest that the tap takes is told, not drawn."""

_WIDTH = 112.0  # of the whole way on paper, at most [mm]
_HEIGHT = 39.0  # of way in and back together on paper [mm]
_ONE = 1e-9  # places closer than this share of the way are one
_LINE = 4.0  # between two lines of lettering beside the chart on paper [mm]


def draw(design: TapDesign, foreseen: Prediction, units: Units = Units.MM) -> Drawing:
    """Depth of the front to the right, torque upwards, on the way back downwards."""
    way_in, way_back = ways(foreseen)
    stop = float(way_in.depth[-1])
    sheet = Sheet(
        "torque", "Torque on the way in and back", fitting_scale(stop, _WIDTH), units, of_part=False
    )
    top = _top(foreseen)
    axis = Axis(0.0, sheet.paper(_HEIGHT) / (top + foreseen.course.back.high))
    _band(sheet, way_in, axis, 1.0)
    _band(sheet, way_back, axis, -1.0)
    low = _frame(sheet, foreseen, stop, (axis, top))
    _levels(sheet, foreseen, stop, (axis, top))
    _captions(sheet, design, foreseen, low)
    return sheet.finished()


def ways(foreseen: Prediction) -> tuple[Course, Course]:
    """The courses in and back as drawn: each line of the way in peaks at the torque told for it.

    Along the hole they run as the teeth and the friction have it. Where friction alone is more
    than a torque that printed formulas lower, the line is drawn as much lower, on the way back
    too: it is the same friction.
    """
    course, band = foreseen.course, foreseen.torque.band
    way_in, way_back = course.course_in, course.course_back
    assert way_in is not None  # noqa: S101 - `torque_along` makes both
    assert way_back is not None  # noqa: S101
    share = _share(way_in.likely, band.likely)
    likely, back = share * way_in.likely, min(share, 1.0) * way_back.likely
    low, high = (
        _share(line, told) * line
        for line, told in ((way_in.low, band.low), (way_in.high, band.high))
    )
    return (
        # the least may run otherwise than the likely one, which is lowered alone
        replace(way_in, low=np.minimum(low, likely), likely=likely, high=np.maximum(high, likely)),
        replace(way_back, low=np.minimum(way_back.low, back), likely=back),
    )


def _share(line: NDArray[np.float64], told: float) -> float:
    """The torque told of a line in the greatest that it has."""
    most = float(np.max(line))
    return told / most if most > 0 else 1.0


def _top(foreseen: Prediction) -> float:
    """The highest torque of the chart [N·m]."""
    strength, most = foreseen.strength, foreseen.torque.band.high
    told = (foreseen.stop_at, strength.breaks.low, strength.breaks.high)
    return 1.05 * max(most, *(torque for torque in told if torque <= READABLE * most), 0.0)


def _band(sheet: Sheet, course: Course, axis: Axis, side: float) -> None:
    """Hatched from the least to the greatest torque, the likely one thick."""
    low, likely, high = (
        [(float(x), axis.at(side * float(y))) for x, y in zip(course.depth, torque, strict=True)]
        for torque in (course.low, course.likely, course.high)
    )
    sheet.hatch([*_plain(low), *reversed(_plain(high))], 45.0 * side, 1.6)
    for line, layer in ((low, THIN), (high, THIN), (likely, VISIBLE)):
        sheet.curve(_plain(line), layer)


def _plain(line: Sequence[Point]) -> list[Point]:
    """Of places of one depth the first and the last, between which the torque steps."""
    size = max(abs(x) for x, _ in line)
    kept: list[Point] = []
    group = [line[0]]
    for point in [*line[1:], None]:
        if point is not None and abs(point[0] - group[-1][0]) <= _ONE * size:
            group.append(point)
            continue
        before, after = group[0], group[-1]
        kept += [before] if abs(after[1] - before[1]) <= _ONE * size else [before, after]
        group = [point] if point is not None else []
    return kept


def _frame(sheet: Sheet, foreseen: Prediction, stop: float, upwards: tuple[Axis, float]) -> float:
    """Both axes with their numbers; returns the height of the lowest lettering [mm]."""
    (axis, top), p = upwards, sheet.paper
    back = axis.at(-foreseen.torque.back.high)
    sheet.line((0.0, axis.at(top)), (0.0, back), THIN)
    sheet.line((0.0, 0.0), (stop, 0.0), THIN)
    measures = measures_of(sheet.units)
    for mark in marks(top * measures.per_nm, 6):
        torque = mark / measures.per_nm
        sheet.line((-p(1), axis.at(torque)), (0.0, axis.at(torque)), THIN)
        sheet.text((-p(1.6), axis.at(torque)), marked(mark), "right")
    sheet.text((-p(14), axis.at(top) + p(4)), f"way in, torque [{measures.torque}]")
    sheet.text((-p(2.4), min(back / 2, -p(4))), "way back", "right")
    inch = sheet.units is Units.INCH
    unit, size = ("in", MM_PER_INCH) if inch else ("mm", 1.0)
    foot = min(back, -p(3)) - p(1.5)
    for depth in marks(stop / size, 8):
        sheet.line((depth * size, foot), (depth * size, foot + p(1.2)), THIN)
        sheet.text((depth * size, foot - p(2.4)), marked(depth), "centre")
    sheet.line((0.0, foot), (stop, foot), THIN)
    words = f"depth of the tap's front in the work [{unit}]"
    sheet.text((stop / 2, foot - p(6.4)), words, "centre")
    hole = foreseen.task.hole
    depth = hole.depth
    if hole.blind:
        _stop(sheet, stop, (foot, axis.at(top)))
    sheet.line((depth, foot), (depth, axis.at(top) + p(1.5)), CENTRE)
    return foot - p(6.4)


def _stop(sheet: Sheet, stop: float, ends: tuple[float, float]) -> None:
    """A line where the tap stands when the thread is finished, named above the chart."""
    foot, top = ends
    sheet.line((stop, foot), (stop, top + sheet.paper(1.5)), THIN)
    at = stop + sheet.paper(1), top + sheet.paper(4)
    sheet.text(at, f"stops at {sheet.plotted(stop, 2)}", "right")


def _levels(sheet: Sheet, foreseen: Prediction, stop: float, upwards: tuple[Axis, float]) -> None:
    """The torques that decide, as lines or places of the band, and in words led to from there."""
    (axis, top), p = upwards, sheet.paper
    strength, band = foreseen.strength, foreseen.torque.band
    breaks = strength.breaks
    if foreseen.stop_at <= top:
        sheet.line((0.0, axis.at(foreseen.stop_at)), (stop, axis.at(foreseen.stop_at)), HIDDEN)
    if breaks.low <= top:
        high = axis.at(min(breaks.high, top))
        corners = [
            (0.0, axis.at(breaks.low)),
            (stop, axis.at(breaks.low)),
            (stop, high),
            (0.0, high),
        ]
        sheet.hatch(corners, -45.0, 2.4)
        sheet.path(corners, THIN, closed=True)
    told, (way_in, back) = measures_of(sheet.units).told, ways(foreseen)
    lines = [
        (band.low, summit(way_in, way_in.low), f"peak at least {told(band.low)}"),
        (band.likely, summit(way_in, way_in.likely), f"peak likely {told(band.likely)}"),
        (band.high, summit(way_in, way_in.high), f"peak up to {told(band.high)}"),
        (foreseen.stop_at, None, f"stop at {told(foreseen.stop_at)}"),
        (breaks.low, None, f"may break from {told(breaks.low)}"),
        (breaks.high, None, f"breaks by {told(breaks.high)}"),
    ]
    low = foreseen.torque.back.high
    lines = [
        (-low, summit(back, back.high), f"way back up to {told(low)}"),
        *sorted(lines, key=itemgetter(0)),
    ]
    heights = [axis.at(min(torque, top)) for torque, _, _ in lines]
    for (torque, depth, words), height, place in zip(
        lines, heights, spread(heights, p(_LINE)), strict=True
    ):
        out = stop + p(7)
        if torque > top:
            sheet.arrow((out - p(2), place - p(1.5)), (out - p(2), place + p(1.5)))
        elif depth is None:
            sheet.line((stop + p(0.5), height), (out, place), THIN)
        else:
            sheet.dot((depth, height))
            sheet.line((depth, height), (out, place), THIN)
        sheet.text((out + p(0.8), place), words)


def summit(course: Course, line: NDArray[np.float64]) -> float:
    """Depth of the last place at which a line of a way is highest [mm]."""
    return float(np.max(course.depth[line >= (1 - _ONE) * np.max(line)]))


def _captions(sheet: Sheet, design: TapDesign, foreseen: Prediction, low: float) -> None:
    work = design.work
    end = "thread" if work.blind else "work"
    depth = sheet.mm(foreseen.task.hole.depth, 2)
    drawn = foreseen.stop_at <= _top(foreseen)
    stop = (Key(HIDDEN, "dashed: torque to stop at"),) if drawn else ()
    hole = f"{work.kind} hole in {work.material.told}; depth at scale {scale_text(sheet.scale)}"
    lines: list[Caption] = [
        "a model with its band, not a measurement: a new, sharp, well oiled tap, turned straight",
        (Key(CENTRE, f"chain: the {end} ends, at {depth}; {hole}"),),
        (Key(VISIBLE, "thick: likely; hatched: least to greatest"), *stop),
    ]
    sheet.lines_of_text((-sheet.paper(14), low - sheet.paper(5)), lines)
