"""What a shop has for reliefs: the way it makes them, its wheels, and how finely it can set."""

from dataclasses import dataclass

from tapmodel.designing.choose.tools import tools_of
from tapmodel.designing.record import TapDesign
from tapmodel.standards.inches import MM
from tapmodel.words import ReliefWay, ToolSizes

WHEELS = {ToolSizes.METRIC: (150.0, 100.0, 10.0), ToolSizes.INCH: (6 * MM, 4 * MM, 0.375 * MM)}
"""Two wheels of a tool or bench grinder, and a mounted point [mm]; from memory."""

OFFSET_STEP = {ToolSizes.METRIC: 0.05, ToolSizes.INCH: 0.002 * MM}
"""Graduation that an offset is set by [mm]; common practice."""

INDICATOR_STEP = {ToolSizes.METRIC: 0.01, ToolSizes.INCH: 0.0005 * MM}
"""Division of an indicator, and of a feed [mm]; common practice."""


@dataclass(frozen=True, slots=True)
class OnHand:
    """What reliefs are made with.

    Attributes:
        way: how they are made.
        wheels: diameters, the greatest first [mm].
        usual_wheels: whether these are the usual ones, as the job names none.
        offset_step: graduation of the offset of centres [mm].
        indicator_step: division of indicator and feed [mm].
    """

    way: ReliefWay
    wheels: tuple[float, ...]
    usual_wheels: bool
    offset_step: float
    indicator_step: float


def on_hand(design: TapDesign) -> OnHand:
    """What the job names, and what is usual in place of the rest.

    Source: common practice.
    """
    tools, wheels = tools_of(design), design.numbers("shop.wheels")
    return OnHand(
        way=way_of(design),
        wheels=tuple(sorted(wheels or WHEELS[tools], reverse=True)),
        usual_wheels=not wheels,
        offset_step=design.number("shop.offset_step") or OFFSET_STEP[tools],
        indicator_step=design.number("shop.indicator_step") or INDICATOR_STEP[tools],
    )


def way_of(design: TapDesign) -> ReliefWay:
    """The way that the job asks for, else the one that what it names is for, else the file.

    Source: rule of this program; every shop has a file.
    """
    asked = design.choice("shop.relief_by")
    if asked is not None:
        return ReliefWay(str(asked.value))
    if design.choice("shop.offset_step") is not None:
        return ReliefWay.CENTRES
    return ReliefWay.FILE if design.choice("shop.wheels") is None else ReliefWay.WHEEL
