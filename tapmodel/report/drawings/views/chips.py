"""The chips of one groove as they lie on each other, numbered, and how large each is."""

from collections.abc import Sequence

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import HIDDEN, PHANTOM, THIN, VISIBLE
from tapmodel.prediction.chips.outlines import ChipOutline, chip_outlines, gap_before
from tapmodel.prediction.chips.record import Tooth
from tapmodel.prediction.prediction import Prediction
from tapmodel.report.drawings.canvas import Caption, Key
from tapmodel.report.drawings.charts.tooth_bars import (
    beyond_chart,
    every,
    lettered_teeth,
    tooth_bars,
)
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import fitting_scale, scale_text, spread
from tapmodel.report.drawings.profile_line import between, profile_line
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import Units
from tapmodel.shape.outlines.outline import Point
from tapmodel.tap.tap import TapThread

_PITCH = 75.0  # one pitch on paper, at most [mm]
_DEPTH = 42.0  # from the drilled wall to the crest on paper, at most [mm]
_ACROSS = 178.0  # of the whole drawing on paper [mm]
_NUMBER = 3.5  # between two numbers on paper [mm]
_GONE = 3.0  # between the lines over what is already cut on paper [mm]
_EARLIER = "wide hatching: what earlier taps have cut"
_DIGITS = 6  # by which heights of one tooth are known to be one


def draw(design: TapDesign, foreseen: Prediction, units: Units = Units.MM) -> Drawing:
    """Chips of the first groove in an axial plane, the front to the left, and bars of the teeth."""
    tap, drill = foreseen.tap, foreseen.task.hole.drill
    depth = (tap.thread.major - drill) / 2
    scale = fitting_scale(1.0, min(_PITCH / tap.thread.pitch, _DEPTH / depth))
    sheet = Sheet("chips", "Chips of one groove, numbered as they meet the work", scale, units)
    outlines = _chips(sheet, foreseen)
    teeth = teeth_of(foreseen, outlines)
    # captions stand beside the lower title and must not read on into it
    words = _captions(sheet, design, foreseen, teeth) + sheet.paper(4)
    right = max(_numbers(sheet, outlines, foreseen), words)
    at = right + sheet.paper(3), depth + sheet.paper(2)
    end = sheet.paper(_ACROSS) - tap.thread.pitch / 2
    tooth_bars(sheet, design, teeth, at, end)
    return sheet.finished()


def groove_alone(foreseen: Prediction, units: Units, room: tuple[float, float]) -> Drawing:
    """The chips at most as wide and high as `room` on paper [mm], numbered, without words."""
    tap, drill = foreseen.tap, foreseen.task.hole.drill
    depth = (tap.thread.major - drill) / 2
    scale = fitting_scale(1.0, min(room[0] / tap.thread.pitch, room[1] / depth))
    sheet = Sheet("groove", "Chips of one groove", scale, units)
    _numbers(sheet, _chips(sheet, foreseen), foreseen)
    return sheet.finished()


def _chips(sheet: Sheet, foreseen: Prediction) -> tuple[ChipOutline, ...]:
    """Groove and chips, every other one hatched; returns their outlines."""
    drill = foreseen.task.hole.drill
    outlines = chip_outlines(foreseen.tap, drill, before_of(foreseen))
    _groove(sheet, foreseen)
    for number, outline in enumerate(outlines):
        for points in placed(outline, drill):
            if number % 2:
                sheet.hatch(points, 45.0, 1.2)
            sheet.curve(points, THIN, closed=True)
    return outlines


def placed(outline: ChipOutline, drill: float) -> list[list[Point]]:
    """Its parts in the picture, whose zero is the middle of the drilled wall [mm]."""
    return [_placed(part.tolist(), drill) for part in outline.parts]


def _placed(points: list[Point], drill: float) -> list[Point]:
    return [(w, r - drill / 2) for w, r in points]


def before_of(foreseen: Prediction) -> TapThread | None:
    """The thread that the tap before in a set leaves; None for one that goes first or alone."""
    return foreseen.task.part.before if foreseen.task.part else None


def teeth_of(foreseen: Prediction, outlines: tuple[ChipOutline, ...]) -> list[Tooth]:
    """The tooth that cuts each of these chips."""
    teeth = {(tooth.land, round(tooth.height, _DIGITS)): tooth for tooth in foreseen.chips.teeth}
    return [teeth[chip.land, round(chip.height, _DIGITS)] for chip in outlines]


def _groove(sheet: Sheet, foreseen: Prediction) -> None:
    """The profile of the tap above the drilled wall, and that wall."""
    thread, p = foreseen.tap.thread, sheet.paper
    wall = foreseen.task.hole.drill / 2
    line = [(z, r - wall) for z, r in profile_line(thread, -thread.pitch, thread.pitch)]
    sheet.path(between(line, -thread.pitch / 2, thread.pitch / 2), VISIBLE)
    gap = gap_before(foreseen.tap, 2 * wall, before_of(foreseen))
    if gap is not None:
        points = _placed(gap.outline().tolist(), 2 * wall)
        sheet.hatch(points, -45.0, _GONE)
        sheet.curve(points, HIDDEN)
    over = thread.pitch / 2 + p(3)
    sheet.line((-over, 0.0), (over, 0.0), PHANTOM)


def _earlier(foreseen: Prediction) -> list[str]:
    """What the lines over the thread cut before mean; nothing where there is none."""
    part = foreseen.task.part
    if part is None or part.before is None:
        return []
    return [_EARLIER]


def _numbers(sheet: Sheet, outlines: tuple[ChipOutline, ...], foreseen: Prediction) -> float:
    """A number at the rear end of each chip; returns the right end of the lettering [mm]."""
    p, drill = sheet.paper, foreseen.task.hole.drill
    depth = (foreseen.tap.thread.major - drill) / 2
    column = foreseen.tap.thread.pitch / 2 + p(6)
    room = depth * sheet.scale + _NUMBER
    numbers = lettered_teeth(len(outlines), every(len(outlines), room, _NUMBER))
    rears = [(max(map(max, placed(outlines[n - 1], drill))), n) for n in numbers]
    ends = sorted(rears, key=lambda end: end[0][1])
    heights = spread([point[1] for point, _ in ends], p(_NUMBER))
    for (point, number), height in zip(ends, heights, strict=True):
        sheet.dot(point, 0.3)
        sheet.line(point, (column, height), THIN)
        sheet.text((column + p(0.8), height), str(number))
    return column + p(5)


def _captions(
    sheet: Sheet, design: TapDesign, foreseen: Prediction, teeth: Sequence[Tooth]
) -> float:
    """What is seen; returns the right end of the lettering [mm]."""
    p, thread = sheet.paper, foreseen.tap.thread
    drill = sheet.size(foreseen.task.hole.drill)
    beyond = "arrow: above the chart; " if beyond_chart(design, teeth) else ""
    lines: list[Caption] = [
        *([f"the first of {thread.starts} grooves"] if thread.starts > 1 else []),
        (Key(VISIBLE, "thick: tap, front to the left"),),
        (Key(PHANTOM, f"double chain: drill {drill}"),),
        (Key(HIDDEN, f"dashed: usual chip in {foreseen.task.material.told}"),),
        f"{beyond}scale {scale_text(sheet.scale)}",
        *_earlier(foreseen),
    ]
    left = -thread.pitch / 2 - p(3)
    below = min((thread.minor - foreseen.task.hole.drill) / 2, 0.0) - p(5.5)
    sheet.lines_of_text((left, below), lines)
    return left + p(max(map(sheet.width, lines)))
