"""The relieved surfaces of a tap, and what can be changed where the relief of one is too deep."""

from dataclasses import dataclass

from tapmodel.designing.judging import NOISE, less, more
from tapmodel.designing.limits.flutes import clearance
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.reliefs.reach import ABOVE_CORE, lowest_nominal, spans, walls
from tapmodel.findings import Lever
from tapmodel.shape.figures import ReliefFigures
from tapmodel.tap.tap import Relief
from tapmodel.words import ReliefKind, ReliefPlace


@dataclass(frozen=True, slots=True)
class Surface:
    """A relieved surface.

    Attributes:
        key: section of the job file.
        relief: its relief; `figures` is what follows from it.
        nominal: its least radius at the edge [mm].
        floor: radius above which it must stay on the whole land [mm].
    """

    key: str
    relief: Relief
    figures: ReliefFigures
    nominal: float
    floor: float


def surfaces(design: TapDesign) -> tuple[Surface, Surface]:
    """The thread (or its crest) and the chamfer, with what they must stay above.

    Source: derived here.
    """
    thread = design.tap.thread
    web = design.tap.flutes.core_diameter / 2 + clearance(thread.major)
    crest, root = thread.major / 2, thread.minor / 2
    whole = design.tap.relief.thread.applies_to is ReliefPlace.THREAD
    reach = (root, web) if whole else (crest, root)
    return (
        Surface("relief.thread", design.tap.relief.thread, design.figures.thread_relief, *reach),
        Surface(
            "relief.chamfer",
            design.tap.relief.chamfer,
            design.figures.chamfer_relief,
            design.tap.chamfer.point_diameter / 2,
            web,
        ),
    )


def spanned(design: TapDesign, relief: Relief) -> bool:
    """Whether the arc of `relief` covers the whole land, down to the web.

    Source: derived here.
    """
    land = walls(design, lowest_wall(design), design.tap.thread.major / 2)
    return spans(relief, design.tap.thread.major, land)


def lowest_wall(design: TapDesign) -> float:
    """Radius down to which the walls of the flutes are looked at [mm].

    Source: rule of this program.
    """
    return design.tap.flutes.core_diameter / 2 + ABOVE_CORE


def least_nominal(design: TapDesign, surface: Surface, relief: Relief) -> float:
    """Nominal radius with which the surface just ends above its floor on both walls [mm].

    Source: derived here.
    """
    return lowest_nominal(
        relief, design.tap.thread.major, walls(design, lowest_wall(design), surface.floor)
    )


def stays_above(design: TapDesign, surface: Surface, relief: Relief) -> bool:
    """Whether the surface, relieved by `relief`, ends on both walls above its floor.

    Source: derived here.
    """
    return least_nominal(design, surface, relief) <= surface.nominal + NOISE


def less_relief(design: TapDesign, surface: Surface) -> tuple[Lever, ...]:
    """A smaller drop or edge angle, or a narrower land to drop over.

    Source: derived here.
    """
    relief, key = surface.relief, surface.key
    by_drop = less(f"{key}.heel_drop", surface.figures.heel_drop)
    by_edge = less(f"{key}.edge_angle", surface.figures.edge_angle)
    margin = less(f"{key}.margin_angle", relief.margin_angle)
    land = (
        more("flutes.cutter_diameter", design.tap.flutes.cutter_diameter),
        more("flutes.count", design.tap.flutes.count),
        less("flutes.core_diameter", design.tap.flutes.core_diameter),
    )
    if relief.kind is ReliefKind.CON_ECCENTRIC:
        return (by_drop, margin, *land)
    return (by_drop, by_edge, *land)
