"""Rules on the relief arcs: they cross the whole land, fall all the way, and leave a heel."""

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
    ERROR,
    WARNING,
    Findings,
    at_least,
    exactly,
    finding,
    more,
    under,
)
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.reliefs.reach import lowest_angle, meets_cleanly, walls
from tapmodel.designing.rules.reliefs.surface import Surface, less_relief, lowest_wall
from tapmodel.findings import Held, Limit
from tapmodel.shape.relief import heel_drop
from tapmodel.values import Values
from tapmodel.words import ReliefKind

LEAST_MARGIN = 0.1
"""Least margin of con-eccentric relief [deg]; a narrower one can be neither seen nor ground."""

LEAST_HEEL_SHARE = 0.9
"""Least share of its largest drop that a relief keeps at the heel."""

AS_THE_LAND_ALLOWS = Limit(unit="mm", held=Held.LAND)
"""No formula tells how much a surface may drop."""


def judge(design: TapDesign, surface: Surface) -> Findings:
    """Every finding on the arc of one surface.

    Source: each names its own.
    """
    yield from _margin(surface)
    if not surface.spans:
        yield from _span(design, surface)
        return
    if surface.nominal > surface.floor and surface.stays_above:
        yield from _heel(design, surface)
    yield from _rise(design, surface)


def _margin(surface: Surface) -> Findings:
    relief = surface.relief
    if relief.kind is ReliefKind.CON_ECCENTRIC and under(relief.margin_angle, LEAST_MARGIN):
        field, margin = f"{surface.key}.margin_angle", relief.margin_angle
        levers = (
            more(field, margin, LEAST_MARGIN),
            exactly(f"{surface.key}.kind", "eccentric"),
        )
        limit = at_least(LEAST_MARGIN, "deg")
        yield finding(Code.RELIEF_MARGIN, ERROR, field, margin, limit, OWN_RULE, levers=levers)


def _span(design: TapDesign, surface: Surface) -> Findings:
    field, fall, levers = _drop(surface), surface.figures.heel_drop, less_relief(design, surface)
    yield finding(Code.RELIEF_ARC, ERROR, field, fall, AS_THE_LAND_ALLOWS, levers=levers)


def _heel(design: TapDesign, surface: Surface) -> Findings:
    land = walls(design, lowest_wall(design), design.tap.thread.major / 2)
    if not meets_cleanly(surface.relief, design.tap.thread.major, land, surface.nominal):
        field, fall, limit = _drop(surface), surface.figures.heel_drop, AS_THE_LAND_ALLOWS
        levers = less_relief(design, surface)
        yield finding(Code.RELIEF_STEEP, ERROR, field, fall, limit, OWN_RULE, levers=levers)


def _rise(design: TapDesign, surface: Surface) -> Findings:
    relief, major, figures = surface.relief, design.tap.thread.major, surface.figures
    lowest = lowest_angle(relief, major)
    if lowest >= design.figures.land_angle:
        return
    least = LEAST_HEEL_SHARE * heel_drop(relief, major, lowest)
    if figures.heel_drop < least:
        field, values = _drop(surface), Values(deepest_at=lowest)
        levers = (
            more(field, figures.heel_drop, least),
            more(f"{surface.key}.edge_angle", figures.edge_angle),
            exactly(f"{surface.key}.kind", "con-eccentric"),
            more("flutes.cutter_diameter", design.tap.flutes.cutter_diameter),
            more("flutes.count", design.tap.flutes.count),
        )
        judged = (field, figures.heel_drop, at_least(least), OWN_RULE)
        yield finding(Code.RELIEF_RISES, WARNING, *judged, values=values, levers=levers)


def _drop(surface: Surface) -> str:
    return f"{surface.key}.heel_drop"
