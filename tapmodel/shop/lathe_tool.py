"""The tool that cuts the tap's thread on the lathe, and how it is set."""

import math
from dataclasses import dataclass
from enum import StrEnum

from tapmodel.shop.compound import along_compound, compound_settings
from tapmodel.tap.tap import TapThread
from tapmodel.words import Hand

WORKING_CLEARANCE = 3.0
"""Side clearance that is left beside the helix [deg]; common practice, 2 to 3 degrees."""


class Side(StrEnum):
    """A side of the tool, with the work between centres and the operator in front."""

    HEADSTOCK = "headstock"
    TAILSTOCK = "tailstock"


@dataclass(frozen=True, slots=True)
class LatheTool:
    """Form and setting of the threading tool, its top level and on centre height.

    Side clearances are taken in a plane tangent to the work at the cutting edge, from the
    direction square to the lathe's axis, as ground on the tool.

    Attributes:
        included_angle: between its two edges [deg].
        tilted_included_angle: the same for a tool swung square to the helix at the pitch
            diameter [deg].
        nose_flat, nose_radius: of the tip, which leaves the root; one of them is 0 [mm].
        crest_flat, crest_radius: of the crest that is left or formed [mm].
        depth: radial infeed from the blank's major diameter to the root [mm].
        infeed_at_compound: feed of the compound for that depth, by its setting ([deg], [mm]).
        sharp_adds: how much deeper a sharp tip goes until the flanks are as far apart [mm]; one
            between is deeper by its share of that, as its flat or radius is smaller.
        helix_major, helix_pitch, helix_minor: lead angle at the three diameters [deg].
        leading_side: the side that goes ahead in the cut.
        leading_clearance, trailing_clearance: least to be ground on either side; a negative one
            means that the helix alone clears that side [deg].
    """

    included_angle: float
    tilted_included_angle: float
    nose_flat: float
    nose_radius: float
    crest_flat: float
    crest_radius: float
    depth: float
    infeed_at_compound: tuple[tuple[float, float], ...]
    sharp_adds: float
    helix_major: float
    helix_pitch: float
    helix_minor: float
    leading_side: Side
    leading_clearance: float
    trailing_clearance: float


def lathe_tool(thread: TapThread) -> LatheTool:
    """Tool for the tap's own thread, cut with the spindle forward.

    The helix is steepest at the root, where the leading side needs most clearance, and flattest at
    the crest, where it helps the trailing side least.

    Source: geometry derived here; angle of a tilted tool by tan(A_n) = tan(A)*cos(lead angle),
    Machinery's Handbook 31st ed. p. 2127 (read); working clearance from common practice.
    """
    helix_major, helix_pitch, helix_minor = (
        lead_angle_at(thread.lead, diameter)
        for diameter in (thread.major, thread.pitch_diameter, thread.minor)
    )
    tangent = math.tan(math.radians(thread.flank_angle)) * math.cos(math.radians(helix_pitch))
    depth = (thread.major - thread.minor) / 2
    return LatheTool(
        included_angle=2 * thread.flank_angle,
        tilted_included_angle=2 * math.degrees(math.atan(tangent)),
        nose_flat=thread.root_flat,
        nose_radius=thread.root_radius,
        crest_flat=thread.crest_flat,
        crest_radius=thread.crest_radius,
        depth=depth,
        infeed_at_compound=tuple(
            (angle, along_compound(depth, angle)) for angle in compound_settings(thread.flank_angle)
        ),
        sharp_adds=(thread.flanks.sharp - (thread.pitch_diameter - thread.minor)) / 2,
        helix_major=helix_major,
        helix_pitch=helix_pitch,
        helix_minor=helix_minor,
        leading_side=Side.HEADSTOCK if thread.hand is Hand.RIGHT else Side.TAILSTOCK,
        leading_clearance=WORKING_CLEARANCE + helix_minor,
        trailing_clearance=WORKING_CLEARANCE - helix_major,
    )


def lead_angle_at(lead: float, diameter: float) -> float:
    """Angle of the helix to the plane square to the axis [deg].

    Args:
        lead: advance in one turn [mm].
        diameter: on which the helix lies [mm].

    Source: definition.
    """
    return math.degrees(math.atan(lead / (math.pi * diameter)))
