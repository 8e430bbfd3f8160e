"""The chamfer: the cutting edges of every land one under the other, teeth numbered as they cut."""

import math
from dataclasses import dataclass
from itertools import pairwise

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, PHANTOM, VISIBLE
from tapmodel.report.drawings.canvas import Caption, Key
from tapmodel.report.drawings.charts.tooth_bars import every, lettered_teeth
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.drawings.lettering import degrees, fitting_scale, plain
from tapmodel.report.drawings.profile_line import height_at, profile_line
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import Units
from tapmodel.shape.flute_section import crest_edge_angle
from tapmodel.shape.outlines.outline import Point

_WIDTH = 68.0  # of chamfer and two pitches on paper, at most [mm]
_HEIGHT = 66.0  # of all lands on paper, at most [mm]
_BETWEEN = 8.5  # from the deepest point of one land to the crest of the next on paper [mm]
_ROOM = 5.6  # for the number of a tooth on paper [mm]


@dataclass(frozen=True, slots=True)
class Tooth:
    """A tooth that cuts in the chamfer: number from the front, land from 0, z of its crest."""

    number: int
    land: int
    z: float


def teeth(design: TapDesign) -> tuple[Tooth, ...]:
    """Teeth whose crest middle lies in the chamfer, in order from the front, then of the lands.

    With several starts some lands cut at one height, which their angles give but for the noise
    of the last digits.
    """
    found: list[tuple[float, int]] = []
    for land in range(design.tap.flutes.count):
        first = _crest(design, land)
        rows = math.ceil((design.tap.chamfer_length - first) / design.tap.thread.pitch)
        found += [(first + n * design.tap.thread.pitch, land) for n in range(max(0, rows))]
    return tuple(Tooth(n, land, z) for n, (z, land) in enumerate(sorted(found, key=_order), 1))


def _order(tooth: tuple[float, int]) -> tuple[float, int]:
    return round(tooth[0], 6), tooth[1]


def draw(design: TapDesign, units: Units = Units.MM) -> Drawing:
    """Axial profile at the cutting edge of each land, front to the left."""
    scale = _scale(design)
    sheet = Sheet("chamfer", "The chamfer and its teeth", scale, units)
    step = _depth(design) + sheet.paper(_BETWEEN)
    for land in range(design.tap.flutes.count):
        _row(sheet, design, land, -land * step - design.tap.thread.major / 2)
    _numbers(sheet, design, step)
    _dimensions(sheet, design, -(design.tap.flutes.count - 1) * step - _depth(design))
    return sheet.finished()


def _scale(design: TapDesign) -> float:
    """As high as all lands allow, yet with room for every other tooth's number."""
    low = max(_HEIGHT / design.tap.flutes.count - _BETWEEN, 0.0) / _depth(design)
    readable = 2.5 * (_ROOM / 2) / design.tap.thread.pitch  # the next scale below has the room
    return fitting_scale(1.0, min(_WIDTH / _reach(design), max(low, readable)))


def _depth(design: TapDesign) -> float:
    thread, chamfer = design.tap.thread, design.tap.chamfer
    return (thread.major - min(thread.minor, chamfer.point_diameter)) / 2


def _reach(design: TapDesign) -> float:
    return min(
        design.tap.chamfer_length + 1.5 * design.tap.thread.pitch, design.tap.blank.thread_length
    )


def _crest(design: TapDesign, land: int) -> float:
    """Z of the first crest middle at the cutting edge of a land [mm]."""
    thread = design.tap.thread
    edge = design.tap.flutes.angles[land] + crest_edge_angle(design.tap.flutes, thread.major)
    return (thread.first_z + thread.lead * edge / 360) % thread.pitch


def _edge(design: TapDesign, land: int) -> list[Point]:
    """The land's cutting edge as (z, radius), thread profile under the chamfer cone [mm]."""
    thread, chamfer = design.tap.thread, design.tap.chamfer
    reach, first = _reach(design), _crest(design, land)
    corners = profile_line(thread, first - thread.pitch, reach + thread.pitch)
    rise, base = math.tan(math.radians(chamfer.angle)), chamfer.point_diameter / 2
    marks = {0.0, reach}
    for (z0, r0), (z1, r1) in pairwise(corners):
        marks.add(z0)
        slope = (r1 - r0) / (z1 - z0)
        if slope != rise:
            z = (base - r0 + slope * z0) / (slope - rise)
            marks.update({z} if z0 < z < z1 else ())
    return [
        (z, min(height_at(corners, z), base + z * rise)) for z in sorted(marks) if 0.0 <= z <= reach
    ]


def _row(sheet: Sheet, design: TapDesign, land: int, shift: float) -> None:
    thread, chamfer = design.tap.thread, design.tap.chamfer
    edge = [(z, r + shift) for z, r in _edge(design, land)]
    crest = thread.major / 2 + shift
    depth = _depth(design)
    bottom = crest - depth - sheet.paper(3)
    sheet.hatch([*edge, (edge[-1][0], bottom), (0.0, bottom)])
    sheet.path([(0.0, bottom), *edge], VISIBLE)
    sheet.path(
        [
            (0.0, chamfer.point_diameter / 2 + shift),
            (design.tap.chamfer_length, crest),
            (edge[-1][0], crest),
        ],
        PHANTOM,
    )
    half = crest - (thread.major - thread.pitch_diameter) / 2
    sheet.line((-sheet.paper(2), half), (edge[-1][0] + sheet.paper(2), half), CENTRE)
    sheet.text((-sheet.paper(4), crest - depth / 2), f"land {land + 1}", "right")


def _numbers(sheet: Sheet, design: TapDesign, step: float) -> None:
    """Over the first and the last tooth of each land, and as many between as have room."""
    for land in range(design.tap.flutes.count):
        mine = [tooth for tooth in teeth(design) if tooth.land == land]
        for number in lettered_teeth(len(mine), _nth(design, sheet)):
            tooth = mine[number - 1]
            at = tooth.z, sheet.paper(2.4) - land * step
            sheet.text(at, str(tooth.number), "centre")


def _nth(design: TapDesign, sheet: Sheet) -> int:
    """Of the teeth of a land every which has room for its number."""
    pitch = design.tap.thread.pitch * sheet.scale
    return every(1, pitch, _ROOM)


def _numbered(design: TapDesign, sheet: Sheet) -> tuple[str, ...]:
    """How many teeth there are, and which of them are numbered where not all are."""
    found, nth = teeth(design), _nth(design, sheet)
    told = f"{len(found)} teeth, numbered as they meet the work"
    first = sum(tooth.land == 0 for tooth in found)
    if len(lettered_teeth(first, nth)) == first:
        return (told,)
    return f"{told}:", f"   of a land the first, the last, and every {_ORDINAL[nth]}"


_ORDINAL = {2: "second", 5: "fifth", 10: "tenth", 20: "20th", 50: "50th", 100: "100th"}


def _dimensions(sheet: Sheet, design: TapDesign, low: float) -> None:
    chamfer = design.tap.chamfer
    y = low - sheet.paper(9)
    pitches = plain(f"{design.figures.chamfer_pitches:.2f}")
    counted = f"{pitches} pitches"
    if design.tap.thread.starts > 1:
        counted += f", {plain(f'{design.figures.chamfer_leads:.2f}')} leads"
    words = f"{sheet.mm(design.tap.chamfer_length)} ({counted})"
    at = (design.tap.chamfer_length / 2, y + sheet.paper(2.4)), "centre"
    if sheet.width(words) > design.tap.chamfer_length * sheet.scale - 3:
        at = (design.tap.chamfer_length + sheet.paper(6.5), y), "left"
    ends = ((0.0, low - sheet.paper(3)), (design.tap.chamfer_length, low - sheet.paper(3)))
    sheet.linear(ends, (0.0, y), words, at)
    point = f"⌀{sheet.mm(chamfer.point_diameter)}"
    lines: list[Caption] = [
        *_numbered(design, sheet),
        f"chip of each {sheet.fixed(design.figures.chip_thickness, 4)}, square to the cone",
        (Key(PHANTOM, f"double chain: cone {degrees(chamfer.angle)} to the axis"),),
        f"{point} at the point; {sheet.scale_told}",
        (Key(CENTRE, "chain: pitch line"),),
    ]
    sheet.lines_of_text((-sheet.paper(14), y - sheet.paper(6)), lines)
