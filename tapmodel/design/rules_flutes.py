"""Rules on the flutes: core, rake, land, neighbours."""

import math

from tapmodel.design import rules_runout
from tapmodel.design.flute_choice import smaller_cutter
from tapmodel.design.flute_limits import (
    LARGEST_RAKE,
    LEAST_CORE_SHARE,
    LEAST_RAKE,
    ToothRadii,
    clearance,
    land_width,
    least_allowed_land,
    least_allowed_wall,
)
from tapmodel.design.flute_neighbours import least_wall
from tapmodel.design.flute_section import FluteSection, on_ball, section_of
from tapmodel.design.judging import (
    ERROR,
    NOTE,
    WARNING,
    Context,
    Findings,
    Numbers,
    at_least,
    at_most,
    between,
    finding,
)
from tapmodel.design.legal_value import ceil_text, floor_text
from tapmodel.design.provenance import OWN_RULE
from tapmodel.design.tap_design import TapDesign
from tapmodel.design.turned import largest_radius_cut, turned_lengths


def judge(design: TapDesign, context: Context) -> Findings:
    """Every finding on the flutes.

    Source: each names its own.
    """
    yield from _wish(design, context)
    yield from _core(design)
    yield from _rake(design)
    yield from _metal(design, context)
    yield from rules_runout.judge(design)


def _wish(design: TapDesign, context: Context) -> Findings:
    unmet = context.flutes.unmet
    if unmet is None:
        return
    wanted = context.flutes.wish.rake or 0.0
    what = (
        f"The wanted rake cannot be had: {unmet.limit} binds, because the edge lies on the ball's "
        f"arc, where core or depth settles the rake; set {unmet.cure}."
    )
    numbers = Numbers(f"{wanted:g} deg", f"{design.flutes.rake_crest:.2f} deg", unmet.cure)
    yield finding("flute-wish", ERROR, what, numbers)


def _core(design: TapDesign) -> Findings:
    least = LEAST_CORE_SHARE * design.thread.major
    core = design.flutes.core_diameter
    if core <= least:
        what = (
            "The web is too thin to drive the tap; set flutes.core_diameter over "
            f"{ceil_text(least)} mm."
        )
        yield finding("core", ERROR, what, at_least(least, core), OWN_RULE)
    most = design.thread.minor - 2 * clearance(design.thread.major)
    if core > most:
        what = (
            "The flutes hardly reach below the root of the thread; set flutes.core_diameter at "
            f"most {floor_text(most)} mm or more depth."
        )
        yield finding("core-root", ERROR, what, at_most(most, core), OWN_RULE)


def _rake(design: TapDesign) -> Findings:
    flutes, crest = design.flutes, design.thread.major / 2
    section = section_of(flutes)
    numbers = between(LEAST_RAKE, LARGEST_RAKE, flutes.rake_crest, "deg")
    if not LEAST_RAKE <= flutes.rake_crest <= LARGEST_RAKE:
        what = f"The rake at the crest is out of range; {_rake_cure(section, crest)}."
        yield finding("rake", ERROR, what, numbers, OWN_RULE)
    if flutes.offset == 0:
        where = "on the ball's arc" if on_ball(section, crest) else "on the straight wall"
        what = (
            f"The flutes are centred: the edge lies {where} and cutter and depth alone settle the "
            f"rake, {flutes.rake_crest:.2f} deg at the crest and {flutes.rake_root:.2f} deg at the "
            "root; set flutes.rake instead of the offset to choose it."
        )
        yield finding("centred-flutes", NOTE, what, numbers)
    if on_ball(section, crest) and flutes.rake_crest < 0:
        what = (
            "The edge lies on the ball's arc with negative rake and scrapes; cut deeper or take a "
            "smaller cutter."
        )
        yield finding("edge-on-ball", WARNING, what, at_least(0, flutes.rake_crest, "deg"))


def _rake_cure(section: FluteSection, crest: float) -> str:
    if on_ball(section, crest):
        return "cut deeper or take a smaller cutter, so that the edge leaves the ball's arc"
    low, high = (
        crest * math.sin(math.radians(angle)) - section.ball_radius
        for angle in (LEAST_RAKE, LARGEST_RAKE)
    )
    return f"set flutes.offset between {ceil_text(low)} and {floor_text(high)} mm"


def _metal(design: TapDesign, context: Context) -> Findings:
    flutes, thread = design.flutes, design.thread
    section, tooth = section_of(flutes), ToothRadii(thread.major / 2, thread.minor / 2)
    lengths = turned_lengths(design.blank, thread.major)
    cut = largest_radius_cut(lengths, flutes.runout_end)
    wall, least = least_wall(section, flutes.count, cut), least_allowed_wall(thread.major)
    if wall < least:
        cure = smaller_cutter(context.flutes.wish, tooth, section)
        what = f"Neighbouring flutes come too close; {cure}."
        yield finding("flute-neighbours", ERROR, what, at_least(least, wall), OWN_RULE)
    least = least_allowed_land(thread.major)
    for place, radius in (("crest", tooth.crest), ("root", tooth.root)):
        width = land_width(section, flutes.count, radius)
        if width < least:
            cure = smaller_cutter(context.flutes.wish, tooth, section)
            what = f"The land is too narrow at the {place}; {cure}."
            yield finding(f"land-{place}", ERROR, what, at_least(least, width), OWN_RULE)
