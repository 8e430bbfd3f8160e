"""What a flute may not fall short of, and how far a section does."""

import math
from dataclasses import dataclass

from tapmodel.designing.codes import Code
from tapmodel.designing.judging import ERROR, at_least, at_most, between, finding, less, more
from tapmodel.designing.limits.levers import deeper, shallower, smaller
from tapmodel.designing.limits.neighbours import least_wall
from tapmodel.findings import Finding, Lever
from tapmodel.shape.flute_section import FluteSection, land_angle, rake
from tapmodel.values import Values

LEAST_RAKE, LARGEST_RAKE = -20.0, 25.0
"""Rake outside this range [deg] leaves either a scraper or a tooth with no metal behind it."""

LEAST_CUTTER = 0.1
"""Least diameter of a ball-nose cutter [mm]: the smallest that is sold (from memory)."""

LEAST_CORE_SHARE = 0.15
"""Least core diameter as a share of the major diameter."""


@dataclass(frozen=True, slots=True)
class ToothRadii:
    """Radii of the thread that the flutes cut through [mm]."""

    crest: float
    root: float


def least_allowed_wall(major: float) -> float:
    """Least metal between neighbouring flutes on a tap of `major` diameter, all [mm].

    Source: rule of this program: 4 % of the diameter, at least 0.1 mm, below 1 mm 10 %.
    """
    return max(min(0.1, 0.1 * major), 0.04 * major)


def least_allowed_land(major: float) -> float:
    """Least width of a land, at crest and at root, on a tap of `major` diameter, all [mm].

    Source: rule of this program: 5 % of the diameter, at least 0.12 mm, below 1 mm 12 %.
    """
    return max(min(0.12, 0.12 * major), 0.05 * major)


def clearance(major: float) -> float:
    """Metal between the web of the flutes and any other surface, least radial amount, all [mm].

    Source: rule of this program: 0.1 mm, below 4 mm 2.5 % of the diameter.
    """
    return min(0.1, 0.025 * major)


def land_width(section: FluteSection, count: int, radius: float) -> float:
    """Arc length of a land at `radius` [mm]; negative when it is cut away.

    Source: derived here.
    """
    return math.radians(land_angle(section, count, radius)) * radius


def stands(section: FluteSection, count: int, tooth: ToothRadii) -> bool:
    """Whether no tooth is taller than its foot is thick along the cut; else it breaks off.

    Source: rule of this program.
    """
    return land_width(section, count, tooth.root) >= tooth.crest - tooth.root


def impossible(section: FluteSection, tooth: ToothRadii) -> Finding | None:
    """Why no tooth with a cutting face comes of this section; None when one does.

    Source: derived here: the face must reach from below the root to the crest.
    """
    b, R, root = section.ball_radius, tooth.crest, tooth.root
    if section.centre_radius <= 0:
        deepest, depth = R + b, R + b - section.centre_radius
        field, limit = "flutes.depth_from_top", at_most(deepest)
        return finding(Code.FLUTE_AXIS, ERROR, field, depth, limit, levers=(less(field, depth),))
    core, least = section.core_diameter, LEAST_CORE_SHARE * 2 * R
    if core <= 0:
        field, levers = "flutes.core_diameter", shallower(section, 2 * R)
        return finding(Code.FLUTE_AXIS, ERROR, field, core, at_least(least), levers=levers)
    if section.offset + b >= R or section.offset - b <= -R - 2 * b:
        levers = (*_back_over(section.offset), less("flutes.cutter_diameter", 2 * b))
        field, limit = "flutes.offset", between(-R - b, R - b)
        return finding(Code.FLUTE_BESIDE, ERROR, field, section.offset, limit, levers=levers)
    if core / 2 >= root:
        field, levers = "flutes.core_diameter", deeper(section, 2 * R)
        return finding(Code.FLUTE_DEPTH, ERROR, field, core, at_most(2 * root), levers=levers)
    return None


def _back_over(offset: float) -> tuple[Lever, ...]:
    """The cutter comes nearer to the axis."""
    if offset > 0:
        return (less("flutes.offset", offset),)
    return (more("flutes.offset", offset),)


def misplaced(offset: float, core: float, ball: float) -> Finding:
    """No ball of radius `ball` leaves that core at that offset, all [mm].

    Source: derived here: its centre lies `core/2 + ball` from the axis, farther than the offset.
    """
    m = core / 2 + ball
    levers = (
        *_back_over(offset),
        more("flutes.rake", -45.0) if offset < 0 else less("flutes.rake", 45.0),
        more("flutes.core_diameter", core, 2 * (abs(offset) - ball)),
        more("flutes.cutter_diameter", 2 * ball),
    )
    limit, values = between(-m, m), Values(core=core, cutter=2 * ball)
    return finding(
        Code.FLUTE_PLACE, ERROR, "flutes.offset", offset, limit, values=values, levers=levers
    )


def no_land(section: FluteSection, count: int, tooth: ToothRadii) -> Finding:
    """The flutes cut away all of the land.

    Source: rule of this program.
    """
    width, least = land_width(section, count, tooth.crest), least_allowed_land(2 * tooth.crest)
    levers, values = smaller(section, count), Values(count=count, cutter=2 * section.ball_radius)
    field, limit = "flutes.land_width", at_least(least)
    return finding(Code.FLUTE_LAND, ERROR, field, width, limit, values=values, levers=levers)


def shortfall(section: FluteSection, count: int, tooth: ToothRadii) -> float:
    """How far a possible section falls short of core, wall, land and rake limits; 0 for not at all.

    In shares of the crest radius, so that cutters can be compared.

    Source: rule of this program.
    """
    R = tooth.crest
    edge = rake(section, R)
    missing = (
        LEAST_CORE_SHARE * 2 * R - section.core_diameter,
        least_allowed_wall(2 * R) - least_wall(section, count, R),
        least_allowed_land(2 * R) - land_width(section, count, R),
        least_allowed_land(2 * R) - land_width(section, count, tooth.root),
        (edge - LARGEST_RAKE) / 45 * R,
        (LEAST_RAKE - edge) / 45 * R,
    )
    return max(0.0, *missing) / R
