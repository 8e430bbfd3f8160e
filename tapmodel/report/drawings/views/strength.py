"""Where the tap is weakest: the shear in that section, and in all others along the tap."""

from collections.abc import Iterable
from statistics import fmean

import numpy as np

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import THIN, VISIBLE
from tapmodel.prediction.prediction import Prediction
from tapmodel.prediction.strength.record import Spot
from tapmodel.report.drawings.canvas import LINE, Caption, Key
from tapmodel.report.drawings.charts.along_tap import HEIGHT, along_tap, governs, notch_shear
from tapmodel.report.drawings.charts.axis import figure
from tapmodel.report.drawings.charts.line_labels import draw_labelled, placed_labels
from tapmodel.report.drawings.charts.measures import measures_of
from tapmodel.report.drawings.charts.stress_lines import Seen
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import fitting_scale, scale_text, spread
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.drawings.views.end_view import SEEN
from tapmodel.report.units import Units
from tapmodel.shape.outlines.outline import Point

_POINTS = 200  # of a leader that numbers keep clear of
_VIEW = 60.0  # of the section on paper, at most [mm]


def draw(design: TapDesign, foreseen: Prediction, units: Units = Units.MM) -> Drawing:
    """Lines of equal shear in the weakest section, its peak marked; beside it the whole tap."""
    section = next(s for s in foreseen.strength.sections if governs(foreseen, s))
    seen = Seen(foreseen.tap, section)
    scale = fitting_scale(2 * seen.radius, _VIEW)
    sheet = Sheet("strength", "Shear where the tap is weakest", scale, units)
    _section(sheet, foreseen, seen)
    foot = seen.radius - sheet.paper(HEIGHT)
    along_tap(sheet, foreseen, (seen.radius + sheet.paper(8), foot))
    low = min(-seen.radius, foot - sheet.paper(8))
    captions = -seen.radius - sheet.paper(8), low - sheet.paper(4)
    _captions(sheet, design, foreseen, captions)
    return sheet.finished()


def _section(sheet: Sheet, foreseen: Prediction, seen: Seen) -> None:
    p, shear = sheet.paper, seen.section.shear
    sheet.pieces(seen.pieces(), VISIBLE)
    (x, y), top = seen.peak(), seen.radius + p(4.5)
    apart = notch_shear(foreseen) is not None
    if apart:
        sheet.text((x + p(2.8), top), "of the section alone, without the notch of its thread")
        top += p(LINE)
    rest = [seen.rim(), np.linspace((x, y), (x, top), _POINTS)]
    beside = dict[float, tuple[Point, Point]]()
    labels = placed_labels(sheet, seen.lines, rest)
    while set(labels.tight) - set(beside):
        beside = _leaders(sheet, seen, {*labels.tight, *beside})
        drawn = [np.linspace(*ends, _POINTS) for ends in beside.values()]
        labels = placed_labels(sheet, seen.lines, [*rest, *drawn])
    draw_labelled(sheet, seen.lines, labels, THIN)
    for share, (end, out) in beside.items():
        sheet.dot(end, 0.3)
        sheet.line(end, out, THIN)
        sheet.text((out[0] - p(0.8), out[1]), f"{share:g}", "right")
    sheet.dot((x, y), 0.9)
    stop, measures = foreseen.stop_at, measures_of(sheet.units)
    peak = f"peak {figure(stop * shear * measures.per_mpa)} {measures.stress}"
    told = f"{peak} at the torque to stop at, {measures.told(stop)} {measures.torque}"
    sheet.path([(x, y), (x, top), (x + p(2), top)], THIN)
    sheet.text(
        (x + p(2.8), top), f"{told} ({figure(measures.shear(shear))} in 1 {measures.torque})"
    )


def _leaders(sheet: Sheet, seen: Seen, shares: Iterable[float]) -> dict[float, tuple[Point, Point]]:
    """From lines that have no room for their number to where it stands left of the section."""
    out = -seen.radius - sheet.paper(5)
    ends = sorted(((seen.end(share), share) for share in shares), key=lambda end: end[0][1])
    shift = seen.opening(out) - fmean(end[1] for end, _ in ends)
    heights = spread([end[1] + shift for end, _ in ends], sheet.paper(LINE))
    return {share: (end, (out, height)) for (end, share), height in zip(ends, heights, strict=True)}


def _captions(sheet: Sheet, design: TapDesign, foreseen: Prediction, start: Point) -> None:
    strength = foreseen.strength
    where, breaks = strength.governs, strength.breaks
    height, scale = sheet.mm(where.z, 1), scale_text(sheet.scale)
    shown = "thin: lines of equal shear, as shares of the peak; a model, not a measurement"
    place = f"section at the {where.place.value}, {height} from the front, {SEEN}"
    measures = measures_of(sheet.units)
    torques = f"{measures.told(breaks.low)} to {measures.told(breaks.high)} {measures.torque}"
    lines: list[Caption] = [
        f"{place}; scale {scale}; the tap of {design.work.steel.told}",
        (Key(THIN, shown),),
        f"breaks first here, {_how(sheet, foreseen)}, at {torques}",
    ]
    sheet.lines_of_text(start, lines)


def _how(sheet: Sheet, foreseen: Prediction) -> str:
    """In what way the tap breaks."""
    strength = foreseen.strength
    match strength.governs.spot:
        case Spot.WHOLE:
            return "as the whole section yields"
        case Spot.THREAD_ROOT:
            land = figure(measures_of(sheet.units).shear(strength.land_shear))
            notch = f"{land} by its notch factor {figure(strength.notch.factor)}"
            return f"at the root of the thread ({notch})"
        case spot:
            return f"at the {spot.value}"
