"""The chamfer: the cutting edges of every land one under the other, teeth numbered as they cut."""

import math
from dataclasses import dataclass
from itertools import pairwise

from tapmodel.design.flute_record import crest_edge_angle
from tapmodel.design.outline import Point
from tapmodel.design.profile import segments
from tapmodel.design.tap_design import TapDesign
from tapmodel.export.dxf_document import CENTRE, PHANTOM, VISIBLE
from tapmodel.report.drawings.lettering import degrees, fitting_scale, mm, scale_text
from tapmodel.report.drawings.sheet import Drawing, Sheet

_WIDTH = 130.0  # of chamfer and two pitches on paper, at most [mm]
_HEIGHT = 150.0  # of all lands on paper, at most [mm]


@dataclass(frozen=True, slots=True)
class Tooth:
    """A tooth that cuts in the chamfer: number from the front, land from 0, z of its crest."""

    number: int
    land: int
    z: float


def teeth(design: TapDesign) -> tuple[Tooth, ...]:
    """Teeth whose crest middle lies in the chamfer, in order from the front."""
    found: list[tuple[float, int]] = []
    for land in range(design.flutes.count):
        first = _crest(design, land)
        rows = math.ceil((design.chamfer.length - first) / design.thread.pitch)
        found += [(first + n * design.thread.pitch, land) for n in range(max(0, rows))]
    return tuple(Tooth(n, land, z) for n, (z, land) in enumerate(sorted(found), 1))


def draw(design: TapDesign) -> Drawing:
    """Axial profile at the cutting edge of each land, front to the left."""
    thread, chamfer = design.thread, design.chamfer
    depth = (thread.major - min(thread.minor, chamfer.point_diameter)) / 2
    reach = _reach(design)
    limit = (_HEIGHT / design.flutes.count - 11) / depth
    scale = fitting_scale(1.0, min(_WIDTH / reach, limit))
    sheet = Sheet("chamfer", "The chamfer and its teeth", scale)
    step = depth + sheet.paper(10)
    for land in range(design.flutes.count):
        _row(sheet, design, land, -land * step - thread.major / 2)
    _dimensions(sheet, design, -(design.flutes.count - 1) * step - depth)
    return sheet.finished()


def _reach(design: TapDesign) -> float:
    return min(design.chamfer.length + 1.5 * design.thread.pitch, design.blank.thread_length)


def _crest(design: TapDesign, land: int) -> float:
    """Z of the first crest middle at the cutting edge of a land [mm]."""
    thread = design.thread
    edge = design.flutes.angles[land] + crest_edge_angle(design.flutes, thread.major)
    return (thread.first_z + thread.lead * edge / 360) % thread.pitch


def _edge(design: TapDesign, land: int) -> list[Point]:
    """The land's cutting edge as (z, radius), thread profile under the chamfer cone [mm]."""
    thread, chamfer = design.thread, design.chamfer
    rise, reach = math.tan(math.radians(chamfer.angle)), _reach(design)
    corners: list[Point] = []
    start = _crest(design, land) - thread.pitch
    while start < reach + thread.pitch:
        corners += [(start + s.start, s.start_radius) for s in segments(thread)]
        start += thread.pitch
    marks = {0.0, reach}
    for (z0, r0), (z1, r1) in pairwise(corners):
        marks.add(z0)
        slope = (r1 - r0) / (z1 - z0)
        if slope != rise:
            z = (chamfer.point_diameter / 2 - r0 + slope * z0) / (slope - rise)
            marks.update({z} if z0 < z < z1 else ())
    return [
        (z, min(_between(corners, z), chamfer.point_diameter / 2 + z * rise))
        for z in sorted(marks)
        if 0.0 <= z <= reach
    ]


def _between(corners: list[Point], z: float) -> float:
    (z0, r0), (z1, r1) = next((a, b) for a, b in pairwise(corners) if a[0] <= z <= b[0])
    return r0 + (r1 - r0) * (z - z0) / (z1 - z0)


def _row(sheet: Sheet, design: TapDesign, land: int, shift: float) -> None:
    thread, chamfer = design.thread, design.chamfer
    edge = [(z, r + shift) for z, r in _edge(design, land)]
    crest = thread.major / 2 + shift
    depth = (thread.major - min(thread.minor, chamfer.point_diameter)) / 2
    bottom = crest - depth - sheet.paper(3)
    sheet.hatch([*edge, (edge[-1][0], bottom), (0.0, bottom)])
    sheet.path([(0.0, bottom), *edge], VISIBLE)
    sheet.path(
        [(0.0, chamfer.point_diameter / 2 + shift), (chamfer.length, crest), (edge[-1][0], crest)],
        PHANTOM,
    )
    half = crest - (thread.major - thread.pitch_diameter) / 2
    sheet.line((-sheet.paper(2), half), (edge[-1][0] + sheet.paper(2), half), CENTRE)
    sheet.text((-sheet.paper(4), crest - depth / 2), f"land {land + 1}", "right")
    for tooth in teeth(design):
        if tooth.land == land:
            sheet.text((tooth.z, crest + sheet.paper(2.6)), str(tooth.number), "centre")


def _dimensions(sheet: Sheet, design: TapDesign, low: float) -> None:
    chamfer, count = design.chamfer, len(teeth(design))
    y = low - sheet.paper(9)
    words = f"{mm(chamfer.length)} mm = {mm(chamfer.pitches, 2)} pitches"
    at = (chamfer.length / 2, y + sheet.paper(2.5)), "centre"
    if sheet.width(words) > chamfer.length * sheet.scale - 3:
        at = (chamfer.length + sheet.paper(1.5), y + sheet.paper(2.5)), "left"
    ends = ((0.0, low - sheet.paper(3)), (chamfer.length, low - sheet.paper(3)))
    sheet.linear(ends, (0.0, y), words, at)
    lines = [
        f"{count} teeth cut, numbered as they meet the work",
        f"chip of each {chamfer.chip_thickness:.4f} thick, square to the cone",
        f"cone {degrees(chamfer.angle)} to the axis, ⌀{mm(chamfer.point_diameter)} at the point",
        f"scale {scale_text(sheet.scale)}; chain line: pitch line; double chain: cone and crest",
    ]
    sheet.lines_of_text((-sheet.paper(14), y - sheet.paper(6)), lines)
