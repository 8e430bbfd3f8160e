"""Rules on the flutes: core, rake, land, neighbours."""

import math
from dataclasses import replace

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import (
    ERROR,
    NOTE,
    WARNING,
    Findings,
    at_least,
    at_most,
    between,
    exactly,
    finding,
    less,
    more,
    over,
    under,
)
from tapmodel.designing.limits.flutes import (
    LARGEST_RAKE,
    LEAST_CORE_SHARE,
    LEAST_CUTTER,
    LEAST_RAKE,
    ToothRadii,
    clearance,
    land_width,
    least_allowed_land,
    least_allowed_wall,
)
from tapmodel.designing.limits.levers import deeper, shallower, smaller
from tapmodel.designing.limits.neighbours import least_wall
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules import lands as rules_lands
from tapmodel.designing.rules import runout as rules_runout
from tapmodel.designing.rules.context import Context
from tapmodel.findings import Held, Lever, Limit
from tapmodel.shape.back_taper import thread_at_end
from tapmodel.shape.flute_section import on_ball, section_of
from tapmodel.shape.turned import largest_radius_cut, turned_lengths
from tapmodel.standards.materials.groups import RAKE
from tapmodel.values import Values

SAME_SIZE = 1e-6
"""Sizes of cutters this close are one [mm]."""


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the flutes.

    Source: each names its own.
    """
    yield from _wish(design, context)
    yield from _cutter(design)
    yield from _core(design)
    yield from _rake(design)
    yield from _unusual(design, context)
    yield from _metal(design)
    yield from rules_lands.judge(design)
    yield from rules_runout.judge(design)


def _wish(design: TapDesign, context: Context) -> Findings:
    unmet = context.flutes.unmet
    if unmet is None:
        return
    wanted = context.flutes.wish.rake or 0.0
    actual = design.figures.rake_crest
    limit = Limit(wanted, wanted, "deg", Held.STRAIGHT_WALL)
    near = dict(unmet.near)
    levers = [
        replace(lever, near=near.get(lever.field))
        for lever in (
            *deeper(section_of(design.tap.flutes), design.tap.thread.major),
            more("flutes.rake", wanted),
        )
    ]
    yield finding(Code.FLUTE_WISH, ERROR, "flutes.rake", actual, limit, levers=levers)


def _cutter(design: TapDesign) -> Findings:
    cutter = design.tap.flutes.cutter_diameter
    if under(cutter, LEAST_CUTTER):
        field, limit = "flutes.cutter_diameter", at_least(LEAST_CUTTER)
        levers = (more(field, cutter, LEAST_CUTTER),)
        yield finding(Code.CUTTER_SIZE, ERROR, field, cutter, limit, OWN_RULE, levers=levers)

    yield from _at_hand(design)


def _at_hand(design: TapDesign) -> Findings:
    """A cutter that is asked for and stands in no list of those on hand."""
    field, cutter = "flutes.cutter_diameter", design.tap.flutes.cutter_diameter
    asked, sizes = design.choice(field), design.numbers("shop.cutters")
    if asked is None or not asked.given or not sizes:
        return
    if not any(math.isclose(cutter, size, abs_tol=SAME_SIZE) for size in sizes):
        nearest = min(sizes, key=lambda size: abs(size - cutter))
        levers = (exactly(field, nearest),)
        limit = Limit(nearest, nearest, "mm")
        yield finding(Code.CUTTER_AT_HAND, NOTE, field, cutter, limit, levers=levers)


def _core(design: TapDesign) -> Findings:
    least = LEAST_CORE_SHARE * design.tap.thread.major
    section = section_of(design.tap.flutes)
    field, core = "flutes.core_diameter", design.tap.flutes.core_diameter
    if under(core, least):
        levers = shallower(section, design.tap.thread.major)
        levers = (replace(levers[0], near=least), *levers[1:])
        yield finding(Code.CORE, ERROR, field, core, at_least(least), OWN_RULE, levers=levers)
    most = thread_at_end(design.tap).minor - 2 * clearance(design.tap.thread.major)
    if over(core, most):
        levers = deeper(section, design.tap.thread.major)
        levers = (replace(levers[0], near=most), *levers[1:])
        yield finding(Code.CORE_ROOT, ERROR, field, core, at_most(most), OWN_RULE, levers=levers)


def _rake(design: TapDesign) -> Findings:
    flutes, crest = design.tap.flutes, design.tap.thread.major / 2
    edge, section = design.figures.rake_crest, section_of(flutes)
    field, limit = "flutes.rake", between(LEAST_RAKE, LARGEST_RAKE, "deg")
    levers = _rake_levers(design)
    if under(edge, LEAST_RAKE) or over(edge, LARGEST_RAKE):
        yield finding(Code.RAKE, ERROR, field, edge, limit, OWN_RULE, levers=levers)
    if flutes.offset == 0:
        where = "ball" if on_ball(section, crest) else "wall"
        values = Values(edge=where, at_root=design.figures.rake_root)
        yield finding(Code.CENTRED_FLUTES, NOTE, field, edge, limit, values=values)
    if on_ball(section, crest) and edge < 0:
        yield finding(Code.EDGE_ON_BALL, WARNING, field, edge, at_least(0, "deg"), levers=levers)
    yield from _scrapes(design)
    yield from _rake_at_wall(design)


def _unusual(design: TapDesign, context: Context) -> Findings:
    """A rake that the material does not ask for; one that cannot be had is told as that alone."""
    field, rake = "flutes.rake", design.figures.rake_crest
    low, high = design.work.material.group.rake
    if context.flutes.unmet or not (under(rake, low) or over(rake, high)):
        return
    offset = "flutes.offset", design.tap.flutes.offset
    levers = (
        (less(field, rake, high), less(*offset))
        if over(rake, high)
        else (more(field, rake, low), more(*offset))
    )
    limit = between(low, high, "deg")
    values = Values(material=design.work.material.told, assumed=float(design.work.assumed))
    yield finding(
        Code.RAKE_UNUSUAL, WARNING, field, rake, limit, RAKE, values=values, levers=levers
    )


def _scrapes(design: TapDesign) -> Findings:
    """A straight wall that leans forward because of an offset, while no such rake is asked for."""
    section, crest = section_of(design.tap.flutes), design.figures.rake_crest
    asked = design.choice("flutes.rake")
    on_wall = not on_ball(section, design.tap.thread.major / 2)
    if on_wall and under(crest, 0.0) and not under(crest, LEAST_RAKE) and asked is None:
        field, offset = "flutes.rake", section.offset
        levers = (
            more("flutes.offset", offset) if offset < 0 else less("flutes.offset", offset),
            more(field, crest, 0.0),
            *deeper(section, design.tap.thread.major),
        )
        limit, values = at_least(0, "deg"), Values(offset=offset)
        yield finding(Code.EDGE_SCRAPES, WARNING, field, crest, limit, values=values, levers=levers)


def _rake_at_wall(design: TapDesign) -> Findings:
    """An edge that cuts at the crest and scrapes further in; who asks for negative rake gets it."""
    section, crest, wall = (
        section_of(design.tap.flutes),
        design.figures.rake_crest,
        design.rake_at_wall,
    )
    if under(crest, 0.0) or not under(wall, 0.0):
        return
    core, depth, cutter = deeper(section, design.tap.thread.major)
    levers = (
        cutter,
        core,
        depth,
        more("flutes.rake", crest),
        more("flutes.offset", section.offset),
    )
    field, limit = "flutes.rake_at_wall", at_least(0, "deg")
    values = Values(crest=crest)
    yield finding(Code.RAKE_AT_WALL, WARNING, field, wall, limit, values=values, levers=levers)


def _rake_levers(design: TapDesign) -> tuple[Lever, ...]:
    """More rake by a larger offset or a deeper flute, less by the reverse."""
    flutes, section = design.tap.flutes, section_of(design.tap.flutes)
    edge, major = design.figures.rake_crest, design.tap.thread.major
    if edge > LARGEST_RAKE:
        return (
            less("flutes.rake", edge, LARGEST_RAKE),
            less("flutes.offset", flutes.offset),
            *shallower(section, major),
        )
    return (
        more("flutes.rake", edge, LEAST_RAKE),
        more("flutes.offset", flutes.offset),
        *deeper(section, major),
    )


def _metal(design: TapDesign) -> Findings:
    flutes, thread = design.tap.flutes, design.tap.thread
    ended = thread_at_end(design.tap)
    tooth = ToothRadii(ended.major / 2, ended.minor / 2)
    section = section_of(flutes)
    lengths = turned_lengths(design.tap.blank, thread.major)
    cut = largest_radius_cut(lengths, design.figures.runout_end)
    wall, least = least_wall(section, flutes.count, cut), least_allowed_wall(thread.major)
    levers = smaller(section, flutes.count)
    if under(wall, least):
        field, limit = "flutes.wall", at_least(least)
        yield finding(Code.FLUTE_NEIGHBOURS, ERROR, field, wall, limit, OWN_RULE, levers=levers)
    least = least_allowed_land(thread.major)
    for code, field, radius in (
        (Code.LAND_CREST, "flutes.land_width", tooth.crest),
        (Code.LAND_ROOT, "flutes.land_width_root", tooth.root),
    ):
        width = land_width(section, flutes.count, radius)
        if under(width, least):
            yield finding(code, ERROR, field, width, at_least(least), OWN_RULE, levers=levers)
