"""The relief behind the edge: one land true to shape, and the same with its drop enlarged."""

import math

import numpy as np

from tapmodel.design.outline import Point
from tapmodel.design.relief import drop
from tapmodel.design.tap_design import Relief, TapDesign
from tapmodel.export.dxf_document import CENTRE, PHANTOM, THIN, VISIBLE
from tapmodel.report.drawings.lettering import degrees, fitting_scale, mm, scale_text
from tapmodel.report.drawings.sheet import Drawing, Sheet
from tapmodel.words import Hand, ReliefKind

_LAND = 55.0  # of the land's arc on paper, at most [mm]
_SHOWN_DROP = 7.0  # to which the drop is enlarged, at most [mm]
_STEPS = 60


def draw(design: TapDesign) -> Drawing:
    """Thread relief above, chamfer relief below; left true to scale, right enlarged in radius."""
    sheet = Sheet(
        "relief", "Relief of thread and chamfer", fitting_scale(design.flutes.land_width, _LAND)
    )
    rows = (
        (design.relief.thread, f"relief of the {design.relief.thread.applies_to.value}"),
        (design.relief.chamfer, "relief of the chamfer"),
    )
    for row, (relief, title) in enumerate(rows):
        origin = (0.0, -row * sheet.paper(46))
        _land(sheet, design, relief, origin, 1.0)
        factor = _factor(sheet, relief)
        right = (sheet.paper(88), origin[1])
        _land(sheet, design, relief, right, factor)
        _words(sheet, design, relief, (origin, right), (title, factor))
    return sheet.finished()


def _factor(sheet: Sheet, relief: Relief) -> float:
    """Round number by which the drop is enlarged."""
    if relief.heel_drop <= 0:
        return 1.0
    return max(1.0, fitting_scale(relief.heel_drop * sheet.scale, _SHOWN_DROP))


def _land(sheet: Sheet, design: TapDesign, relief: Relief, origin: Point, factor: float) -> None:
    """Top of a land, its edge to the left for a right-hand tap, drop times `factor`."""
    radius, angle = design.thread.major / 2, design.flutes.land_angle
    phi = np.linspace(0.0, angle, _STEPS + 1)
    radii = radius - factor * drop(relief, phi)
    depth = sheet.paper(9) + factor * max(relief.heel_drop, 0.0)

    def at(r: float, turn: float) -> Point:
        lean = math.radians(turn - angle / 2)
        side = 1.0 if design.thread.hand is Hand.RIGHT else -1.0
        return origin[0] + side * r * math.sin(lean), origin[1] + r * math.cos(lean) - radius

    top = [at(float(r), float(a)) for r, a in zip(radii, phi, strict=True)]
    inner = [at(radius - depth, float(a)) for a in phi[::-1]]
    sheet.hatch([*top, *inner])
    sheet.path([at(radius - depth, 0.0), *top, at(radius - depth, angle)], VISIBLE)
    sheet.path(inner, THIN)
    sheet.path([at(radius, float(a)) for a in phi], PHANTOM)
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        margin = relief.margin_angle
        sheet.line(at(radius, margin), at(radius + sheet.paper(4), margin), CENTRE)
        sheet.line(at(radius, 0.0), at(radius + sheet.paper(4), 0.0), CENTRE)


def _words(
    sheet: Sheet,
    design: TapDesign,
    relief: Relief,
    places: tuple[Point, Point],
    head: tuple[str, float],
) -> None:
    (true, enlarged), (title, factor) = places, head
    up, down = sheet.paper(10), sheet.paper(25)
    sheet.text((true[0], true[1] + up), f"{title}: {relief.kind.value}", "centre")
    sheet.text((true[0], true[1] - down), f"scale {scale_text(sheet.scale)}", "centre")
    if relief.kind is ReliefKind.CONCENTRIC:
        sheet.text((enlarged[0], enlarged[1] + up), "no drop: the land rubs on its back", "centre")
        return
    words = f"drop {mm(relief.heel_drop, 4)} at the heel"
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        words += f", none over the margin of {degrees(relief.margin_angle)}"
    else:
        words += f", {degrees(relief.edge_angle)} at the edge"
    sheet.text((enlarged[0], enlarged[1] + up), words, "centre")
    below = f"drop drawn {factor:g} times as large"
    sheet.text((enlarged[0], enlarged[1] - down), below, "centre")
    hand = 1.0 if design.thread.hand is Hand.RIGHT else -1.0
    reach = sheet.paper(26)
    for sign, name in ((-hand, "edge"), (hand, "heel")):
        sheet.text((true[0] + sign * reach, true[1] + sheet.paper(4.5)), name, "centre")
