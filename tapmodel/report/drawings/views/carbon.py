"""Carbon in a tooth after carburising, as lines of equal carbon."""

from collections.abc import Sequence

import numpy as np

from tapmodel.export.dxf.document import CENTRE, THIN, VISIBLE
from tapmodel.prediction.heat.record import CASE, Carburised, Tooth
from tapmodel.report.drawings.canvas import LINE
from tapmodel.report.drawings.charts.carbon_lines import carbon_lines, surface_of
from tapmodel.report.drawings.charts.stress_lines import StressLine
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import fitting_scale, scale_text, spread
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import Temperature, Units, as_text

_VIEW = 110.0  # of the section on paper, at most [mm]
_BELOW = 0.15  # of the pitch, drawn below the lowest line


def draw(found: Carburised, tooth: Tooth, name: str, units: Units = Units.MM) -> Drawing:
    """Half a root, a tooth and half a root, the crest on top, with lines of equal carbon.

    Args:
        found: that `tooth` belongs to.
        tooth: of the thread.
        name: of the thread, as its standard writes it.
        units: of lengths.
    """
    lines, surface = carbon_lines(tooth), surface_of(tooth)
    lowest = min([0.0, *(float(line.points[:, 1].min()) for line in lines)])
    floor = max(lowest - _BELOW * tooth.pitch, float(tooth.found.grid.nodes[:, 1].min()))
    high = float(surface[:, 1].max()) - floor
    scale = fitting_scale(max(tooth.pitch, high), _VIEW)
    sheet = Sheet("carbon", f"{name}: carbon in a tooth", scale, units)
    sheet.curve(surface.tolist(), VISIBLE)
    half, top = tooth.pitch / 2, float(surface[:, 1].max()) + sheet.paper(3)
    for x in (-half, 0.0, half):
        sheet.line((x, top if x == 0 else float(surface[0, 1])), (x, floor), CENTRE)
    for line in lines:
        sheet.curve(line.points.tolist(), THIN, closed=line.closed)
    _numbers(sheet, lines, half)
    _captions(sheet, found, tooth, (-half, floor - sheet.paper(1.5 * LINE)), name)
    return sheet.finished()


def _numbers(sheet: Sheet, lines: Sequence[StressLine], half: float) -> None:
    """The carbon of each line: right of the section where it ends there, else on its lowest."""
    p, close = sheet.paper, 1e-6 * half
    ends = dict[float, float]()
    for line in lines:
        x, y = line.points[int(np.argmax(line.points[:, 0]))].tolist()
        if half - x < close:
            ends[line.share] = y
    heights = spread(list(ends.values()), p(LINE))
    for (level, y), height in zip(ends.items(), heights, strict=True):
        sheet.path([(half, y), (half + p(4), height), (half + p(6), height)], THIN)
        sheet.text((half + p(7), height), f"{level:.1f}")
    for line in lines:
        if line.share not in ends:
            x, y = line.points[int(np.argmin(line.points[:, 1]))].tolist()
            sheet.text((x, y - p(2.5)), f"{line.share:.1f}", "centre")


def _captions(
    sheet: Sheet, found: Carburised, tooth: Tooth, at: tuple[float, float], name: str
) -> None:
    asked, case = found.asked, tooth.under_root.case
    carbon = f"steel {asked.steel:g} %, surface {asked.surface:g} %"
    heat = as_text(Temperature((asked.celsius,)), sheet.wanted)
    under = "none" if case is None else sheet.mm(case, 2)
    sheet.lines_of_text(
        at,
        [
            f"{name}, {asked.hours:.3g} h at {heat}: lines of equal carbon, %",
            f"{carbon}; in the middle {tooth.middle.carbon:.2f} %",
            f"to {CASE:g} % under the root: {under}; scale {scale_text(sheet.scale)}",
            "axial section in the middle of a land; a model, not a measurement",
        ],
    )
