"""Clearance behind the cutting edge against the way along the land: what rubs, and for how long."""

from typing import NamedTuple

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, HIDDEN, THIN, VISIBLE
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.rubbing.record import Contact, Trace
from tapmodel.prediction.rubbing.rubbing import clearance_along
from tapmodel.report.drawings.canvas import Caption, Key
from tapmodel.report.drawings.charts.axis import Axis, figure, marked, marks, spaced
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import fitting_scale, scale_text, spread
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import MM_PER_INCH, Units
from tapmodel.shape.outlines.outline import Point

READABLE = 10.0
"""Clearance of more than so many times that which touches is told, not drawn."""

_POINTS = 120  # along the land
_WIDTH, _HEIGHT = 84.0, 46.0  # of the chart on paper, at most, and from least to most [mm]
_LINE = 4.0  # between two lines of lettering beside the chart on paper [mm]
_UM_PER_TENTH = 25.4e3 * 1e-4  # micrometres in the 0.0001 in that inch shops call a tenth


class _Line(NamedTuple):
    """What one surface does: its name, kind of line and points, and what they amount to."""

    name: str
    layer: str
    trace: Trace
    contact: Contact


class _Chart(NamedTuple):
    """The axis upwards [µm], where it ends at either side, and how long the chart is [mm]."""

    axis: Axis
    low: float
    high: float
    long: float

    def at(self, clear: float) -> float:
        """Where a clearance stands; one beyond the chart at its end [mm of the drawing]."""
        return self.axis.at(min(max(clear, self.low), self.high))


def draw(design: TapDesign, foreseen: Prediction, units: Units = Units.MM) -> Drawing:
    """From the edge to the right, clearance upwards; below zero the land stands proud."""
    lines = _lines(foreseen)
    long = max(float(line.trace.along[-1]) for line in lines)
    title = "Clearance along the land, behind the edge"
    sheet = Sheet("clearance", title, fitting_scale(long, _WIDTH), units, of_part=False)
    touches = 1000 * foreseen.rubbing.threshold.clearance
    low, high = _ends(lines, touches)
    chart = _Chart(Axis(0.0, sheet.paper(_HEIGHT) / (high - low)), low, high, long)
    _touching(sheet, chart, touches)
    foot = _frame(sheet, chart)
    for line in lines:
        _curve(sheet, chart, line)
    _labels(sheet, chart, lines)
    _captions(sheet, design, touches, foot)
    return sheet.finished()


def _lines(foreseen: Prediction) -> list[_Line]:
    traces = clearance_along(foreseen.tap, _POINTS, foreseen.task.hole.drill)
    rubbing = foreseen.rubbing
    return [
        _Line("crest", VISIBLE, traces.crest, rubbing.crest),
        _Line("flanks", HIDDEN, traces.flank, rubbing.flank),
        _Line("chamfer", CENTRE, traces.chamfer, rubbing.chamfer),
    ]


def _ends(lines: list[_Line], touches: float) -> tuple[float, float]:
    """Lowest and highest clearance of the chart [µm]."""
    least = min(float(line.trace.clearance_um.min()) for line in lines)
    most = max(float(line.trace.clearance_um.max()) for line in lines)
    high = min(max(1.1 * most, 2 * touches), READABLE * touches)
    return max(1.1 * min(least, 0.0), -READABLE * touches), high


def _touching(sheet: Sheet, chart: _Chart, touches: float) -> None:
    """Hatched where a surface touches the work, which springs back behind the edge."""
    low, high, long = chart.at(chart.low), chart.at(touches), chart.long
    sheet.hatch([(0.0, low), (long, low), (long, high), (0.0, high)], 45.0, 2.4)


def _curve(sheet: Sheet, chart: _Chart, line: _Line) -> None:
    """The line of a surface, as far as the chart reaches."""
    points = list[Point]()
    for along, clear in zip(line.trace.along, line.trace.clearance_um, strict=True):
        if clear > chart.high:
            break
        points.append((float(along), chart.at(float(clear))))
    if len(points) > 1:
        sheet.curve(points, line.layer)


def _frame(sheet: Sheet, chart: _Chart) -> float:
    """Both axes with their numbers; returns the height of the lowest lettering [mm]."""
    p, (axis, low, high, long) = sheet.paper, chart
    inch = sheet.units is Units.INCH
    unit, size = ("0.0001 in", _UM_PER_TENTH) if inch else ("µm", 1.0)
    foot = axis.at(low)
    sheet.line((0.0, foot), (0.0, axis.at(high)), THIN)
    sheet.line((0.0, 0.0), (long, 0.0), THIN)
    for mark in marks(high / size, 6):
        sheet.line((-p(1), axis.at(mark * size)), (0.0, axis.at(mark * size)), THIN)
        sheet.text((-p(1.6), axis.at(mark * size)), marked(mark), "right")
    sheet.text((-p(14), axis.at(high) + p(4)), f"clearance [{unit}]")
    foot -= p(1.5)
    sheet.line((0.0, foot), (long, foot), THIN)
    name, per = ("in", MM_PER_INCH) if inch else ("mm", 1.0)
    for along in spaced(sheet, long / per, long * sheet.scale, 8):
        sheet.line((along * per, foot), (along * per, foot + p(1.2)), THIN)
        sheet.text((along * per, foot - p(2.4)), marked(along), "centre")
    sheet.text((long / 2, foot - p(6.4)), f"behind the edge [{name}]", "centre")
    return foot - p(6.4)


def _labels(sheet: Sheet, chart: _Chart, lines: list[_Line]) -> None:
    """At the heel, what each surface comes to, led to from there."""
    p, out = sheet.paper, chart.long + sheet.paper(7)
    told = sorted(lines, key=lambda line: float(line.trace.clearance_um[-1]))
    heights = [chart.at(float(line.trace.clearance_um[-1])) for line in told]
    for line, height, place in zip(told, heights, spread(heights, p(2.3 * _LINE)), strict=True):
        heel = float(line.trace.along[-1])
        if float(line.trace.clearance_um[-1]) > chart.high:
            sheet.arrow((out - p(2), place - p(1.5)), (out - p(2), place + p(1.5)))
        else:
            sheet.dot((heel, height))
            sheet.line((heel, height), (out, place), THIN)
        sheet.text((out + p(0.8), place), f"{line.name}: {_heel(sheet, line)}")
        sheet.text((out + p(0.8), place - p(_LINE)), _rubs(sheet, line))


def _heel(sheet: Sheet, line: _Line) -> str:
    if line.contact.binds:
        return f"binds, {_small(sheet, -line.contact.clearance_min_um)} proud"
    clear = line.contact.heel_clearance_um
    return f"{_small(sheet, clear)} clear at the heel" if clear > 0 else "nothing clear at the heel"


def _small(sheet: Sheet, microns: float) -> str:
    """A clearance with the unit of its axis, or as inches write it."""
    if sheet.units is Units.INCH:
        return f"{microns / 1000 / MM_PER_INCH:.4f} in"
    return f"{figure(microns, 2)} µm"


def _rubs(sheet: Sheet, line: _Line) -> str:
    rubs, wide = line.contact.rubbing_length, line.contact.land_width
    return f"rubs along {sheet.plotted(rubs, 2)} of {sheet.plotted(wide, 2)}"


def _captions(sheet: Sheet, design: TapDesign, touches: float, low: float) -> None:
    hatched = f"hatched: below {_small(sheet, touches)} it touches the work, which springs back"
    lands, scale = design.tap.flutes.count, scale_text(sheet.scale)
    lines: list[Caption] = [
        (Key(VISIBLE, "crest"), Key(HIDDEN, "flanks"), Key(CENTRE, "chamfer")),
        f"{hatched} (from memory)",
        f"each of the {lands} lands, along the helix, at scale {scale}",
    ]
    sheet.lines_of_text((-sheet.paper(14), low - sheet.paper(5)), lines)
