"""What a flute may not fall short of, and how far a section does."""

import math
from dataclasses import dataclass

from tapmodel.design.flute_neighbours import least_wall
from tapmodel.design.flute_section import FluteSection, land_angle, rake

LEAST_RAKE, LARGEST_RAKE = -20.0, 25.0
"""Rake outside this range [deg] leaves either a scraper or a tooth with no metal behind it."""

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


def impossible(section: FluteSection, tooth: ToothRadii) -> str:
    """Why no tooth with a cutting face comes of this section, ending in the cure; "" when one does.

    Source: derived here: the face must reach from below the root to the crest.
    """
    b, R, root = section.ball_radius, tooth.crest, tooth.root
    if section.centre_radius <= 0:
        return (
            f"the ball's centre lies {-section.centre_radius:.3f} mm past the tap's axis; "
            f"set flutes.depth_from_top to less than {R + b:.3f} mm"
        )
    if section.core_diameter <= 0:
        return (
            f"the cutter passes the tap's axis (core {section.core_diameter:.3f} mm); give "
            f"flutes.core_diameter at least {2 * LEAST_CORE_SHARE * R:.3f} mm or less depth"
        )
    if section.offset + b >= R or section.offset - b <= -R - 2 * b:
        return (
            f"the cutter stands beside the tap (offset {section.offset:.3f} mm); keep "
            f"flutes.offset between {-R - b:.3f} and {R - b:.3f} mm"
        )
    if section.core_diameter / 2 >= root:
        return (
            f"the flute does not reach the root of the thread (core {section.core_diameter:.3f} "
            f"mm); give flutes.core_diameter less than {2 * root:.3f} mm or more depth"
        )
    return ""


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
