"""Rules on the relief arcs: they cross the whole land, fall all the way, and leave a heel."""

from tapmodel.design.judging import (
    ERROR,
    WARNING,
    Findings,
    at_least,
    exactly,
    finding,
    more,
    under,
)
from tapmodel.design.provenance import OWN_RULE
from tapmodel.design.record import TapDesign
from tapmodel.design.rules.reliefs.reach import lowest_angle, meets_cleanly, walls
from tapmodel.design.rules.reliefs.surface import (
    Surface,
    depth_number,
    less_relief,
    lowest_wall,
    spanned,
    stays_above,
)
from tapmodel.shape.relief import heel_drop
from tapmodel.words import ReliefKind

LEAST_MARGIN = 0.1
"""Least margin of con-eccentric relief [deg]; a narrower one can be neither seen nor ground."""

LEAST_HEEL_SHARE = 0.9
"""Least share of its largest drop that a relief keeps at the heel."""


def judge(design: TapDesign, surface: Surface) -> Findings:
    """Every finding on the arc of one surface.

    Source: each names its own.
    """
    yield from _margin(surface)
    if not spanned(design, surface.relief):
        yield from _span(design, surface)
        return
    if surface.nominal > surface.floor and stays_above(design, surface, surface.relief):
        yield from _heel(design, surface)
    yield from _rise(design, surface)


def _margin(surface: Surface) -> Findings:
    relief = surface.relief
    if relief.kind is ReliefKind.CON_ECCENTRIC and under(relief.margin_angle, LEAST_MARGIN):
        what = "Con-eccentric relief needs a margin."
        numbers = at_least(LEAST_MARGIN, relief.margin_angle, "deg")
        levers = (
            more(f"{surface.key}.margin_angle", relief.margin_angle, LEAST_MARGIN),
            exactly(f"{surface.key}.kind", "eccentric"),
        )
        yield finding("relief-margin", ERROR, what, numbers, OWN_RULE, levers=levers)


def _span(design: TapDesign, surface: Surface) -> Findings:
    what = "The relief's arc ends before it has crossed the land, which is wider towards the web."
    numbers = depth_number(surface)
    yield finding("relief-arc", ERROR, what, numbers, levers=less_relief(design, surface))


def _heel(design: TapDesign, surface: Surface) -> Findings:
    land = walls(design, lowest_wall(design), design.tap.thread.major / 2)
    if not meets_cleanly(surface.relief, design.tap.thread.major, land, surface.nominal):
        what = "The relief falls nearly as steeply as the wall of the flute and leaves no heel."
        numbers, levers = depth_number(surface), less_relief(design, surface)
        yield finding("relief-steep", ERROR, what, numbers, OWN_RULE, levers=levers)


def _rise(design: TapDesign, surface: Surface) -> Findings:
    relief, major, figures = surface.relief, design.tap.thread.major, surface.figures
    lowest = lowest_angle(relief, major)
    if lowest >= design.figures.land_angle:
        return
    least = LEAST_HEEL_SHARE * heel_drop(relief, major, lowest)
    if figures.heel_drop < least:
        what = (
            f"The relief is deepest at {lowest:.1f} deg behind the edge and rises again towards "
            "the heel."
        )
        levers = (
            more(f"{surface.key}.heel_drop", figures.heel_drop, least),
            more(f"{surface.key}.edge_angle", figures.edge_angle),
            exactly(f"{surface.key}.kind", "con-eccentric"),
            more("flutes.cutter_diameter", design.tap.flutes.cutter_diameter),
            more("flutes.count", design.tap.flutes.count),
        )
        numbers = at_least(least, figures.heel_drop)
        yield finding("relief-rises", WARNING, what, numbers, OWN_RULE, levers=levers)
