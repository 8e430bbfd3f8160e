"""Where the mill has to stand for the first flute, counted from touching off.

The blank lies in the dividing head, the cutter stands upright, and one looks at the cutting end
with the flute on top. There +theta runs clockwise, so +t points to the right for a right-hand
tap; a left-hand tap is the mirror image.
"""

import math
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.words import Hand


@dataclass(frozen=True, slots=True)
class FluteSetting:
    """Ways of the mill from touching off to the flute, all positive [mm].

    Attributes:
        side: "right" or "left" of the blank's centre line as seen on the cutting end; "" when
            the cutter stands over the axis.
        offset: of the cutter axis from the centre line to that side.
        from_left, from_right: sideways, from where the cutter's shank touches the crests of the
            thread on that side.
        from_top: downwards, from touching a crest with the cutter over the axis.
        from_offset_top: downwards, from touching a crest with the cutter standing at the offset
            already, where the tap's top is lower.
        from_shank: what a reading sideways, or down over the axis, has more where the tap's shank
            is touched instead of the crests; negative where it has less.
        from_front: along the blank, from where the cutter's shank touches the front face to
            where its axis stops.
    """

    side: str
    offset: float
    from_left: float
    from_right: float
    from_top: float
    from_offset_top: float
    from_shank: float
    from_front: float


def flute_setting(design: TapDesign) -> FluteSetting:
    """Ways of the mill to the flutes of a tap.

    Source: derived here. Touching a side, the cutter axis is one blank radius and one cutter
    radius from the axis. Touching the top at an offset e, the ball's centre is that far from the
    axis in a slanted direction, so at the height `sqrt((R + b)**2 - e**2)`.
    """
    flutes = design.tap.flutes
    reach = (design.tap.thread.major + flutes.cutter_diameter) / 2
    right = flutes.offset if design.tap.thread.hand is Hand.RIGHT else -flutes.offset
    return FluteSetting(
        side="" if right == 0 else "right" if right > 0 else "left",
        offset=abs(right),
        from_left=reach + right,
        from_right=reach - right,
        from_top=reach - flutes.centre_radius,
        from_offset_top=math.sqrt(reach**2 - right**2) - flutes.centre_radius,
        from_shank=(design.tap.blank.shank_diameter - design.tap.thread.major) / 2,
        from_front=flutes.full_depth_length + flutes.cutter_diameter / 2,
    )
