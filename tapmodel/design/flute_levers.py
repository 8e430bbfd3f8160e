"""What can be changed about flutes that leave too little metal, or do not cut as wanted."""

from tapmodel.design.flute_section import FluteSection
from tapmodel.design.judging import down, up
from tapmodel.findings import Lever


def smaller(section: FluteSection, count: int) -> tuple[Lever, ...]:
    """Less is cut away: a smaller cutter, a thicker web, fewer flutes.

    Source: derived here.
    """
    return (
        down("flutes.cutter_diameter", 2 * section.ball_radius),
        up("flutes.core_diameter", section.core_diameter),
        down("flutes.count", count),
    )


def deeper(section: FluteSection, major: float) -> tuple[Lever, ...]:
    """The flute reaches further in, or its cutter is smaller; `major` diameter [mm].

    Source: derived here.
    """
    return (
        down("flutes.core_diameter", section.core_diameter),
        up("flutes.depth_from_top", depth(section, major)),
        down("flutes.cutter_diameter", 2 * section.ball_radius),
    )


def shallower(section: FluteSection, major: float) -> tuple[Lever, ...]:
    """The flute reaches less far in; `major` diameter [mm].

    Source: derived here.
    """
    return (
        up("flutes.core_diameter", section.core_diameter),
        down("flutes.depth_from_top", depth(section, major)),
        down("flutes.cutter_diameter", 2 * section.ball_radius),
    )


def depth(section: FluteSection, major: float) -> float:
    """Of the flute below the top of a blank of the `major` diameter [mm].

    Source: derived here.
    """
    return major / 2 - section.centre_radius + section.ball_radius
