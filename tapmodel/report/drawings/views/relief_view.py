"""Lands with the drop behind their edge enlarged, beside the section that is true to scale."""

import math

import numpy as np

from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.document import CENTRE, PHANTOM, THIN, VISIBLE
from tapmodel.report.drawings.canvas import LINE, Align, Caption, Key
from tapmodel.report.drawings.lettering import degrees, fitting_scale
from tapmodel.report.drawings.sheet import Sheet
from tapmodel.report.units import Units
from tapmodel.shape.figures import ReliefFigures
from tapmodel.shape.outlines.outline import Point
from tapmodel.shape.relief import drop
from tapmodel.tap.tap import Relief
from tapmodel.words import Hand, ReliefKind

_SHOWN_DROP = 5.0  # to which the drop is enlarged, at most [mm on paper]
_LAND = 34.0  # of the land on paper, at most [mm]
_BODY = 5.0  # of the land that is shown below its top [mm on paper]
_STEPS = 60

ReliefPair = tuple[Relief, ReliefFigures]


def enlarged_land(sheet: Sheet, design: TapDesign, which: ReliefPair, at: Point) -> float:
    """One land and what its relief is, `at` its upper left; returns the lowest y [mm]."""
    p = sheet.paper
    relief, figures = which
    lines = _words(sheet, relief, figures)
    sheet.lines_of_text(at, lines)
    half = math.radians(design.figures.land_angle / 2)
    radius = _radius(sheet, design)
    wide, sagitta = radius * math.sin(half), radius * (1 - math.cos(half))
    hand = 1.0 if design.tap.thread.hand is Hand.RIGHT else -1.0
    top = at[1] - p(LINE * len(lines) + 2.0)
    middle = at[0] + wide + p(11), top
    _land(sheet, design, which, middle)
    for sign, name in ((-hand, "edge"), (hand, "heel")):
        align: Align = "left" if sign > 0 else "right"
        sheet.text((middle[0] + sign * (wide + p(1.5)), top - sagitta - p(1)), name, align)
    return top - sagitta - p(_BODY + _SHOWN_DROP)


def _radius(sheet: Sheet, design: TapDesign) -> float:
    """To which the land's top is drawn: the tap's, or less where the land is very wide [mm]."""
    chord = 2 * math.sin(math.radians(design.figures.land_angle / 2))
    return min(design.tap.thread.major / 2, sheet.paper(_LAND) / chord)


def _factor(sheet: Sheet, figures: ReliefFigures) -> float:
    """Round number by which the drop is enlarged."""
    if figures.heel_drop <= 0:
        return 1.0
    return max(1.0, fitting_scale(figures.heel_drop * sheet.scale, _SHOWN_DROP))


def _words(sheet: Sheet, relief: Relief, figures: ReliefFigures) -> list[Caption]:
    factor = _factor(sheet, figures)
    head = f"relief of the {relief.applies_to.value}:"
    if relief.kind is ReliefKind.CONCENTRIC:
        return [head, "concentric, no drop:", "the land rubs on its back"]
    kind, drops = relief.kind.value, f"drop {sheet.mm(figures.heel_drop, 4)} at the heel"
    first: list[Caption] = [f"{kind}, {degrees(figures.edge_angle)} at the edge", drops]
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        margin = f"chain: none over {degrees(relief.margin_angle)}"
        # numbers in both units leave no room for the kind beside its drop
        told = (kind, drops) if sheet.wanted is Units.BOTH else (f"{kind}, {drops}",)
        first = [*told, (Key(CENTRE, margin),)]
    return [
        head,
        *first,
        f"(drop drawn {factor:g} times as large)" if factor > 1 else "(drop true to scale)",
        (Key(PHANTOM, "double chain: without relief"),),
    ]


def _land(sheet: Sheet, design: TapDesign, which: ReliefPair, origin: Point) -> None:
    """Top of a land about `origin`, its edge to the left for a right-hand tap."""
    relief, figures = which
    radius, angle = _radius(sheet, design), design.figures.land_angle
    factor = _factor(sheet, figures)
    phi = np.linspace(0.0, angle, _STEPS + 1)
    radii = radius - factor * drop(relief, design.tap.thread.major, phi)
    depth = sheet.paper(_BODY) + factor * max(figures.heel_drop, 0.0)
    side = 1.0 if design.tap.thread.hand is Hand.RIGHT else -1.0

    def at(r: float, turn: float) -> Point:
        lean = math.radians(turn - angle / 2)
        return origin[0] + side * r * math.sin(lean), origin[1] + r * math.cos(lean) - radius

    top = [at(float(r), float(a)) for r, a in zip(radii, phi, strict=True)]
    inner = [at(radius - depth, float(a)) for a in phi[::-1]]
    sheet.hatch([*top, *inner])
    sheet.path([at(radius - depth, 0.0), *top, at(radius - depth, angle)], VISIBLE)
    sheet.path(inner, THIN)
    sheet.path([at(radius, float(a)) for a in phi], PHANTOM)
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        for turn in (0.0, relief.margin_angle):
            sheet.line(at(radius, turn), at(radius + sheet.paper(3), turn), CENTRE)
