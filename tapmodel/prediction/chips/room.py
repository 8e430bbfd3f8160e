"""Room for the chips in the flutes, and how deep a hole it lets the tap go without backing out."""

import math
from dataclasses import dataclass

from tapmodel.prediction.chips.record import Chips
from tapmodel.shape.flute_section import flute_area, section_of
from tapmodel.tap.tap import Tap

BULKING = 4.0
"""Room that curled chips take over the room of the metal they were.

Source: common practice, 3 to 5; short chips of cast iron or brass lie closer."""


@dataclass(frozen=True, slots=True)
class Room:
    """What the flutes hold against what the teeth cut.

    Attributes:
        flute_area: of all flutes inside the drilled hole [mm²]; the thread's own grooves, which
            chips enter only to jam there, are no room.
        chip_area: metal cut for each mm of full thread [mm³/mm].
        bulking: room that chips take over that of the metal.
        ratio: room over what full thread fills of it; from 1 on chips never fill the flutes.
        through: thickest work that the tap is through before its flutes are full [mm].
        blind: deepest full thread in a hole without an end to leave by [mm].
    """

    flute_area: float
    chip_area: float
    bulking: float
    ratio: float
    through: float
    blind: float


def room_of(tap: Tap, drill: float, chips: Chips, bulking: float = BULKING) -> Room:
    """Room for the chips of a tap in a hole drilled to diameter `drill` [mm].

    All chips stay in the flutes between the front and the mouth of the hole; broken ones that fall
    out below are not counted. A tooth at height H has cut a length h - H of its thread when the
    front is h deep, and the flutes are full where what all have cut fills what lies below the
    mouth. Behind its full depth a flute lets nothing out, so that no hole is tapped deeper.

    Source: derived here, by Pappus' rule for the volume of each chip.
    """
    free = tap.flutes.count * flute_area(section_of(tap.flutes), drill / 2)
    around = 2 * math.pi / tap.thread.lead
    solid = around * math.fsum(tooth.area * tooth.radius for tooth in chips.teeth)
    deepest = min(_full_at(tap, chips, free / bulking), tap.flutes.full_depth_length)
    return Room(
        flute_area=free,
        chip_area=solid,
        bulking=bulking,
        ratio=free / (bulking * solid) if solid else math.inf,
        through=deepest,
        blind=max(0.0, deepest - tap.chamfer_length),
    )


def _full_at(tap: Tap, chips: Chips, metal_room: float) -> float:
    """Depth of the front at which the flutes are full, if they ever are [mm].

    Args:
        tap: that cuts.
        chips: of its teeth in rising order.
        metal_room: metal whose chips fill the flutes, for each mm of depth [mm²].
    """
    cut = moved = 0.0
    followings = [*(tooth.height for tooth in chips.teeth[1:]), math.inf]
    for tooth, following in zip(chips.teeth, followings, strict=False):
        rate = 2 * math.pi / tap.thread.lead * tooth.area * tooth.radius
        cut, moved = cut + rate, moved + rate * tooth.height
        # cut*h - moved = metal_room*h, as long as no other tooth has entered the work
        if cut > metal_room and moved <= following * (cut - metal_room):
            return moved / (cut - metal_room)
    return math.inf
