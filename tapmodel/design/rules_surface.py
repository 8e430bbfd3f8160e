"""The relieved surfaces of a tap, and the largest legal setting of the relief of one."""

from dataclasses import dataclass

from tapmodel.design.flute_limits import clearance
from tapmodel.design.judging import Numbers, at_most
from tapmodel.design.legal_value import floor_text
from tapmodel.design.rules_reach import (
    ABOVE_CORE,
    Legal,
    largest_setting,
    lowest_nominal,
    spans,
    walls,
)
from tapmodel.design.tap_design import Relief, TapDesign
from tapmodel.words import ReliefPlace


@dataclass(frozen=True, slots=True)
class Surface:
    """A relieved surface.

    Attributes:
        key: section of the job file.
        relief: its relief.
        nominal: its least radius at the edge [mm].
        floor: radius above which it must stay on the whole land [mm].
    """

    key: str
    relief: Relief
    nominal: float
    floor: float


def surfaces(design: TapDesign) -> tuple[Surface, Surface]:
    """The thread (or its crest) and the chamfer, with what they must stay above.

    Source: derived here.
    """
    thread = design.thread
    web = design.flutes.core_diameter / 2 + clearance(thread.major)
    crest, root = thread.major / 2, thread.minor / 2
    whole = design.relief.thread.applies_to is ReliefPlace.THREAD
    reach = (root, web) if whole else (crest, root)
    return (
        Surface("relief.thread", design.relief.thread, *reach),
        Surface("relief.chamfer", design.relief.chamfer, design.chamfer.point_diameter / 2, web),
    )


def spanned(design: TapDesign, relief: Relief) -> bool:
    """Whether the arc of `relief` covers the whole land, down to the web.

    Source: derived here.
    """
    land = walls(design, lowest_wall(design), design.thread.major / 2)
    return spans(relief, land, design.flutes.land_angle)


def lowest_wall(design: TapDesign) -> float:
    """Radius down to which the walls of the flutes are looked at [mm].

    Source: rule of this program.
    """
    return design.flutes.core_diameter / 2 + ABOVE_CORE


def least_nominal(design: TapDesign, surface: Surface, relief: Relief) -> float:
    """Nominal radius with which the surface just ends above its floor on both walls [mm].

    Source: derived here.
    """
    return lowest_nominal(relief, walls(design, lowest_wall(design), surface.floor))


def stays_above(design: TapDesign, surface: Surface, relief: Relief) -> bool:
    """Whether the surface, relieved by `relief`, ends on both walls above its floor.

    Source: derived here.
    """
    return least_nominal(design, surface, relief) <= surface.nominal


def largest_cure(design: TapDesign, surface: Surface, legal: Legal) -> tuple[str, Numbers]:
    """The field that sets the relief with its largest legal value, as a cure and as numbers.

    Source: derived here.
    """
    relief, fields = surface.relief, {choice.field for choice in design.choices}
    by_edge = f"{surface.key}.edge_angle" in fields
    field, value, unit = ("heel_drop", relief.heel_drop, "mm")
    if by_edge:
        field, value, unit = ("edge_angle", relief.edge_angle, "deg")
    most = largest_setting(design, relief, by_edge=by_edge, legal=legal)
    cure = f"set {surface.key}.{field} at most {floor_text(most)} {unit}"
    return cure, at_most(most, value, unit)
