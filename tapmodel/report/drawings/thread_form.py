"""Thread form of the tap in the thread of the hole, and the limit zones of both."""

import math
from dataclasses import dataclass
from itertools import pairwise

from tapmodel.design.outline import Point
from tapmodel.design.profile import segments
from tapmodel.design.tap_design import TapDesign
from tapmodel.export.dxf_document import CENTRE, HIDDEN, THIN, VISIBLE
from tapmodel.report.drawings.lettering import fitting_scale, mm, scale_text
from tapmodel.report.drawings.sheet import Drawing, Sheet

_PITCH = 80.0  # one pitch on paper, at most [mm]
_ZONE = 34.0  # height of a zone chart on paper [mm]
_BAR = 6.0  # width of a bar on paper [mm]


@dataclass(frozen=True, slots=True)
class _Zone:
    """One diameter of hole and tap [mm]: title, limits of both, aimed size of the tap."""

    title: str
    hole: tuple[float, float | None]
    tap: tuple[float, float | None] | None
    aim: float


def draw(design: TapDesign) -> Drawing:
    """Axial section at the cutting edge, work above, and one chart for each diameter."""
    sheet = Sheet("thread-form", "Thread form", fitting_scale(design.thread.pitch, _PITCH))
    _tap(sheet, design)
    _hole(sheet, design)
    _dimensions(sheet, design)
    for number, zone in enumerate(_zones(design)):
        _chart(sheet, design, zone, number)
    return sheet.finished()


def _reach(design: TapDesign) -> float:
    return 0.75 * design.thread.pitch


def _height(design: TapDesign, diameter: float) -> float:
    """Height of a diameter in the picture, its zero at the pitch line of the tap [mm]."""
    return (diameter - design.thread.pitch_diameter) / 2


def _tap(sheet: Sheet, design: TapDesign) -> None:
    thread = design.thread
    corners: list[Point] = []
    for turn in (-2, -1, 0):
        for s in segments(thread):
            z = s.start + turn * thread.pitch + thread.pitch / 2
            corners.append((z, _height(design, 2 * s.start_radius)))
    reach = _reach(design)
    top = _cut(corners, -reach, reach)
    bottom = _height(design, thread.minor) - sheet.paper(5)
    sheet.hatch([*top, (reach, bottom), (-reach, bottom)], spacing=3.0)
    sheet.path(top, VISIBLE)
    sheet.line((-reach - sheet.paper(3), 0.0), (reach + sheet.paper(3), 0.0), CENTRE)


def _cut(corners: list[Point], low: float, high: float) -> list[Point]:
    """The part of a line of corners between two abscissae."""
    found: list[Point] = []
    for (x0, y0), (x1, y1) in pairwise(corners):
        start, end = max(x0, low), min(x1, high)
        if start < end:
            slope = (y1 - y0) / (x1 - x0)
            found += [(start, y0 + slope * (start - x0)), (end, y0 + slope * (end - x0))]
    return found


def _hole(sheet: Sheet, design: TapDesign) -> None:
    """Least and largest thread of the hole: flanks at both limits of the pitch diameter."""
    hole = design.hole
    for pitch, minor in (
        (hole.pitch_min, hole.minor_min),
        (hole.pitch_max, hole.minor_max),
    ):
        sheet.path(_hole_line(design, pitch, minor), THIN if pitch == hole.pitch_min else HIDDEN)


def _hole_line(design: TapDesign, pitch_diameter: float, minor: float) -> list[Point]:
    """Flanks through `pitch_diameter`, cut off at the minor diameter and at the tap's crest."""
    thread, hole = design.thread, design.hole
    slope = math.tan(math.radians(thread.flank_angle))
    major = max(hole.major_min, thread.major)
    crest = max(thread.pitch / 4 - (major - pitch_diameter) / 2 * slope, 0.0)
    root = thread.pitch / 4 + (pitch_diameter - minor) / 2 * slope
    high, low = _height(design, major), _height(design, minor)
    if crest == 0.0:  # the flanks meet before they reach the crest
        high = _height(design, pitch_diameter) + thread.pitch / 4 / slope
    half = thread.pitch / 2
    corners: list[Point] = []
    for middle in (-half, half):
        corners += [(middle - root, low), (middle - crest, high), (middle + crest, high)]
        corners.append((middle + root, low))
    return _cut(corners, -_reach(design), _reach(design))


def _dimensions(sheet: Sheet, design: TapDesign) -> None:
    thread = design.thread
    half, crest, root = thread.pitch / 2, thread.crest_flat, thread.root_flat
    top, bottom = _height(design, thread.major), _height(design, thread.minor)
    y = max(top, _height(design, design.hole.major_min)) + sheet.paper(8)
    ends = ((-half, top), (half, top))
    sheet.linear(
        ends,
        (0.0, y + sheet.paper(8)),
        f"pitch {mm(thread.pitch)}",
        ((0.0, y + sheet.paper(10.5)), "centre"),
    )
    ends = ((half - crest / 2, top), (half + crest / 2, top))
    at = (half + crest / 2 + sheet.paper(6), y), "left"
    sheet.linear(ends, (half, y), f"crest {crest:.4f}", at)
    low = bottom - sheet.paper(9)
    at = (root / 2 + sheet.paper(6), low), "left"
    sheet.linear(((-root / 2, bottom), (root / 2, bottom)), (0.0, low), f"root {root:.4f}", at)
    words = f"scale {scale_text(sheet.scale)}; thick: tap as aimed; thin: least hole; "
    sheet.text((0.0, low - sheet.paper(9)), words + "dashed: largest hole", "centre")


def _zones(design: TapDesign) -> tuple[_Zone, ...]:
    hole, thread = design.hole, design.thread
    return (
        _Zone("major ⌀", (hole.major_min, None), (thread.major_min, None), thread.major),
        _Zone(
            "pitch ⌀",
            (hole.pitch_min, hole.pitch_max),
            (thread.pitch_min, thread.pitch_max),
            thread.pitch_diameter,
        ),
        _Zone("minor ⌀", (hole.minor_min, hole.minor_max), None, thread.minor),
    )


def _chart(sheet: Sheet, design: TapDesign, zone: _Zone, number: int) -> None:
    """Bars of hole and tap side by side, on a scale of their own, every limit written out."""
    left = sheet.paper(-61 + 61 * number)
    base = _height(design, design.thread.minor) - sheet.paper(68)
    values = [v for v in (*zone.hole, *(zone.tap or ()), zone.aim) if v is not None]
    least, span = min(values), max(values) - min(values)

    def y(value: float) -> float:
        return base + sheet.paper(_ZONE * (value - least) / span if span else 0.0)

    sheet.text((left, base + sheet.paper(_ZONE + 9)), zone.title, "centre")
    for side, name, limits in ((-1, "hole", zone.hole), (1, "tap", zone.tap)):
        middle = left + side * sheet.paper(_BAR / 2 + 0.5)
        sheet.text((middle + side * sheet.paper(1.5), base - sheet.paper(5)), name, "centre")
        if limits is not None:
            _bar(sheet, middle, y(limits[0]), None if limits[1] is None else y(limits[1]))
    _labels(
        sheet, left - sheet.paper(_BAR + 2), [(y(v), f"{v:.3f}") for v in _given(zone.hole)], -1
    )
    labels = [(y(v), f"{v:.3f}") for v in _given(zone.tap or (zone.aim, None)) if v != zone.aim]
    labels.append((y(zone.aim), f"{zone.aim:.3f} aim"))
    _labels(sheet, left + sheet.paper(_BAR + 2), labels, 1)
    at = left + sheet.paper(0.5)
    sheet.line((at, y(zone.aim)), (at + sheet.paper(_BAR + 1.5), y(zone.aim)), VISIBLE)


def _given(limits: tuple[float, float | None]) -> list[float]:
    return [limit for limit in limits if limit is not None]


def _bar(sheet: Sheet, middle: float, low: float, high: float | None) -> None:
    """A zone; open above where there is no upper limit."""
    half = sheet.paper(_BAR / 2)
    if high is None:
        sheet.line((middle - half, low), (middle + half, low), VISIBLE)
        sheet.arrow((middle, low), (middle, low + sheet.paper(6)))
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
    """Labels at their heights, spread where they would overlap, joined by thin lines."""
    gap, last = sheet.paper(3.6), -math.inf
    for height, text in sorted(labels):
        last = max(height, last + gap)
        out = x + side * sheet.paper(3)
        sheet.line((x - side * sheet.paper(1.2), height), (out, last), THIN)
        sheet.text((out + side * sheet.paper(0.8), last), text, "left" if side > 0 else "right")
