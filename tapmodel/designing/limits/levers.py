"""What can be changed about flutes that leave too little metal, or do not cut as wanted."""

from tapmodel.designing.judging import less, more
from tapmodel.findings import Lever
from tapmodel.shape.flute_section import FluteSection


def smaller(section: FluteSection, count: int) -> tuple[Lever, ...]:
    """Less is cut away: a smaller cutter, a thicker web, fewer flutes.

    Source: derived here.
    """
    return (
        less("flutes.cutter_diameter", 2 * section.ball_radius),
        more("flutes.core_diameter", section.core_diameter),
        less("flutes.count", count),
    )


def deeper(section: FluteSection, major: float) -> tuple[Lever, ...]:
    """The flute reaches further in, or its cutter is smaller; `major` diameter [mm].

    Source: derived here.
    """
    return (
        less("flutes.core_diameter", section.core_diameter),
        more("flutes.depth_from_top", depth(section, major)),
        less("flutes.cutter_diameter", 2 * section.ball_radius),
    )


def shallower(section: FluteSection, major: float) -> tuple[Lever, ...]:
    """The flute reaches less far in; `major` diameter [mm].

    Source: derived here.
    """
    return (
        more("flutes.core_diameter", section.core_diameter),
        less("flutes.depth_from_top", depth(section, major)),
        less("flutes.cutter_diameter", 2 * section.ball_radius),
    )


def depth(section: FluteSection, major: float) -> float:
    """Of the flute below the top of a blank of the `major` diameter [mm].

    Source: derived here.
    """
    return major / 2 - section.centre_radius + section.ball_radius
