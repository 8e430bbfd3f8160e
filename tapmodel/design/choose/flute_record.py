"""The record of the flutes, every number computed from the section."""

import math
from typing import TYPE_CHECKING

from tapmodel.shape.flute_section import (
    FluteSection,
    chordal_hook,
    flute_area,
    land_angle,
    rake,
)
from tapmodel.shape.turned import runout_end, turned_lengths
from tapmodel.tap.design import Flutes, TapThread

if TYPE_CHECKING:
    # Reading a record must not load all that chooses its values.
    from tapmodel.design.choose.blank import ChosenBlank


def flute_record(
    section: FluteSection, count: int, thread: TapThread, chosen: "ChosenBlank"
) -> Flutes:
    """All numbers of the flutes.

    Source: derived here by `tapmodel.shape.flute_section`; depth as set from the top of a blank
    turned to the major diameter.
    """
    crest, root = thread.major / 2, thread.minor / 2
    land = land_angle(section, count, crest)
    lengths = turned_lengths(chosen.blank, thread.major)
    return Flutes(
        count=count,
        cutter_diameter=2 * section.ball_radius,
        offset=section.offset,
        centre_radius=section.centre_radius,
        depth_from_top=crest - (section.centre_radius - section.ball_radius),
        core_diameter=section.core_diameter,
        rake_crest=rake(section, crest),
        rake_pitch=rake(section, thread.pitch_diameter / 2),
        rake_root=rake(section, root),
        chordal_hook=chordal_hook(section, crest, root),
        land_angle=land,
        land_width=math.radians(land) * crest,
        area=flute_area(section, crest),
        angles=tuple(360 * j / count for j in range(count)),
        full_depth_length=chosen.full_depth_length,
        runout_end=runout_end(section, chosen.full_depth_length, lengths),
    )
