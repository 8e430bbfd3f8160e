"""The relieved surfaces of a tap, and what can be changed where the relief of one is too deep."""

from dataclasses import dataclass

from tapmodel.designing.judging import NOISE, less, more
from tapmodel.designing.limits.flutes import clearance
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.reliefs.reach import ABOVE_CORE, lowest_nominal, spans, walls
from tapmodel.findings import Lever
from tapmodel.shape.back_taper import thread_at_end
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
        spans: whether its arc covers the whole land, down to the web.
        least: nominal radius with which it just ends above its floor on both walls [mm].
    """

    key: str
    relief: Relief
    figures: ReliefFigures
    nominal: float
    floor: float
    spans: bool
    least: float

    @property
    def stays_above(self) -> bool:
        """Whether it ends on both walls above its floor."""
        return self.least <= self.nominal + NOISE


def surfaces(design: TapDesign) -> tuple[Surface, Surface]:
    """The thread (or its crest) and the chamfer, with what they must stay above.

    Source: derived here.
    """
    thread = design.tap.thread
    web = design.tap.flutes.core_diameter / 2 + clearance(thread.major)
    ended = thread_at_end(design.tap)
    crest, root = ended.major / 2, ended.minor / 2
    whole = design.tap.relief.thread.applies_to is ReliefPlace.THREAD
    reach = (root, web) if whole else (crest, root)
    reliefs, figures = design.tap.relief, design.figures
    point = design.tap.chamfer.point_diameter / 2
    return (
        _surface(design, "relief.thread", reliefs.thread, figures.thread_relief, reach),
        _surface(design, "relief.chamfer", reliefs.chamfer, figures.chamfer_relief, (point, web)),
    )


def _surface(
    design: TapDesign,
    key: str,
    relief: Relief,
    figures: ReliefFigures,
    reach: tuple[float, float],
) -> Surface:
    nominal, floor = reach
    major, lowest = design.tap.thread.major, lowest_wall(design)
    return Surface(
        key,
        relief,
        figures,
        nominal,
        floor,
        spans=spans(relief, major, walls(design, lowest, major / 2)),
        least=lowest_nominal(relief, major, walls(design, lowest, floor)),
    )


def lowest_wall(design: TapDesign) -> float:
    """Radius down to which the walls of the flutes are looked at [mm].

    Source: rule of this program.
    """
    return design.tap.flutes.core_diameter / 2 + ABOVE_CORE


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
