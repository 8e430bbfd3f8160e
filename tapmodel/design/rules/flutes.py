"""Rules on the flutes: core, rake, land, neighbours."""

from dataclasses import replace

from tapmodel.design.judging import (
    ERROR,
    NOTE,
    WARNING,
    Findings,
    Numbers,
    at_least,
    at_most,
    between,
    finding,
    less,
    more,
    over,
    under,
)
from tapmodel.design.limits.flutes import (
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
from tapmodel.design.limits.levers import deeper, shallower, smaller
from tapmodel.design.limits.neighbours import least_wall
from tapmodel.design.provenance import OWN_RULE
from tapmodel.design.record import TapDesign
from tapmodel.design.rules import runout as rules_runout
from tapmodel.design.rules.context import Context
from tapmodel.findings import Lever
from tapmodel.shape.flute_section import on_ball, section_of
from tapmodel.shape.turned import largest_radius_cut, turned_lengths


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the flutes.

    Source: each names its own.
    """
    yield from _wish(design, context)
    yield from _cutter(design)
    yield from _core(design)
    yield from _rake(design)
    yield from _metal(design)
    yield from rules_runout.judge(design)


def _wish(design: TapDesign, context: Context) -> Findings:
    unmet = context.flutes.unmet
    if unmet is None:
        return
    wanted = context.flutes.wish.rake or 0.0
    what = (
        f"The wanted rake of {wanted:g} deg cannot be had: the edge lies on the ball's arc, where "
        "core or depth settles the rake."
    )
    numbers = Numbers(
        f"{wanted:g} deg",
        f"{design.figures.rake_crest:.2f} deg",
        f"any rake by core or depth, {wanted:g} deg only on the straight wall",
    )
    near = dict(unmet.near)
    levers = [
        replace(lever, near=near.get(lever.field))
        for lever in (
            *deeper(section_of(design.tap.flutes), design.tap.thread.major),
            more("flutes.rake", wanted),
        )
    ]
    yield finding("flute-wish", ERROR, what, numbers, levers=levers)


def _cutter(design: TapDesign) -> Findings:
    cutter = design.tap.flutes.cutter_diameter
    if under(cutter, LEAST_CUTTER):
        what = "No ball-nose cutter is made so small."
        numbers = at_least(LEAST_CUTTER, cutter)
        levers = (more("flutes.cutter_diameter", cutter, LEAST_CUTTER),)
        yield finding("cutter-size", ERROR, what, numbers, OWN_RULE, levers=levers)


def _core(design: TapDesign) -> Findings:
    least = LEAST_CORE_SHARE * design.tap.thread.major
    section = section_of(design.tap.flutes)
    core = design.tap.flutes.core_diameter
    if under(core, least):
        what = "The web is too thin to drive the tap."
        levers = shallower(section, design.tap.thread.major)
        levers = (replace(levers[0], near=least), *levers[1:])
        yield finding("core", ERROR, what, at_least(least, core), OWN_RULE, levers=levers)
    most = design.tap.thread.minor - 2 * clearance(design.tap.thread.major)
    if over(core, most):
        what = "The flutes hardly reach below the root of the thread."
        levers = deeper(section, design.tap.thread.major)
        levers = (replace(levers[0], near=most), *levers[1:])
        yield finding("core-root", ERROR, what, at_most(most, core), OWN_RULE, levers=levers)


def _rake(design: TapDesign) -> Findings:
    flutes, crest = design.tap.flutes, design.tap.thread.major / 2
    edge, section = design.figures.rake_crest, section_of(flutes)
    numbers = between(LEAST_RAKE, LARGEST_RAKE, edge, "deg")
    if under(edge, LEAST_RAKE) or over(edge, LARGEST_RAKE):
        what = "The rake at the crest is out of range."
        yield finding("rake", ERROR, what, numbers, OWN_RULE, levers=_rake_levers(design))
    if flutes.offset == 0:
        where = "on the ball's arc" if on_ball(section, crest) else "on the straight wall"
        what = (
            f"The flutes are centred: the edge lies {where} and cutter and depth alone settle the "
            f"rake, {design.figures.rake_crest:.2f} deg at the crest and "
            f"{design.figures.rake_root:.2f} deg at the root; set flutes.rake instead of the "
            "offset to choose it."
        )
        yield finding("centred-flutes", NOTE, what, numbers)
    if on_ball(section, crest) and edge < 0:
        what = "The edge lies on the ball's arc with negative rake and scrapes."
        levers = _rake_levers(design)
        yield finding("edge-on-ball", WARNING, what, at_least(0, edge, "deg"), levers=levers)


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
    section, tooth = section_of(flutes), ToothRadii(thread.major / 2, thread.minor / 2)
    lengths = turned_lengths(design.tap.blank, thread.major)
    cut = largest_radius_cut(lengths, design.figures.runout_end)
    wall, least = least_wall(section, flutes.count, cut), least_allowed_wall(thread.major)
    levers = smaller(section, flutes.count)
    if under(wall, least):
        what = "Neighbouring flutes come too close."
        yield finding(
            "flute-neighbours", ERROR, what, at_least(least, wall), OWN_RULE, levers=levers
        )
    least = least_allowed_land(thread.major)
    for place, radius in (("crest", tooth.crest), ("root", tooth.root)):
        width = land_width(section, flutes.count, radius)
        if under(width, least):
            what = f"The land is too narrow at the {place}."
            numbers = at_least(least, width)
            yield finding(f"land-{place}", ERROR, what, numbers, OWN_RULE, levers=levers)
