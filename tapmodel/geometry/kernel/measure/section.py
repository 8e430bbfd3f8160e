"""Areas of plane sections square to the axis, exact to the precision of the edges.

By Green's theorem the area is half the integral of x dy - y dx along the section's outline, each
piece run with the body at its left. The pieces need not be chained: a piece starts where the
plane crosses an edge that its face, lying at the left, uses downwards, and ends where one is
used upwards; so the end of a piece is the start of the next by construction.
"""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from collections.abc import Sequence

from OCP.BRep import BRep_Tool
from OCP.TopoDS import TopoDS, TopoDS_Edge, TopoDS_Face

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.measure.crossings import Crossing, EdgeHeights
from tapmodel.geometry.kernel.measure.section_pieces import Ends, swept
from tapmodel.geometry.kernel.topology import EDGE, Solid, distinct, edge_uses, faces, is_forward
from tapmodel.stages import Stage

# The plane is held this far back, so that corners and faces meant to lie in it lie beyond it
# whatever their rounding; an area changes by less than 1e-7 of itself [mm].
JUST_BEFORE = 1e-7

# A face, its edges with their numbers as often as it uses them, and those numbers.
Uses = tuple[TopoDS_Face, list[tuple[int, TopoDS_Edge]], set[int]]


def section_area(solid: Solid, z: float) -> float:
    """Area of the section at height `z` [mm²]; see `section_areas`."""
    return section_areas(solid, [z])[0]


def section_areas(solid: Solid, heights: Sequence[float]) -> list[float]:
    """Areas of the sections at several heights, cheaper together than one by one.

    A plane that holds a face or a corner gives the section just before it. An outline
    that touches no edge of the solid is not seen; a tap has none.

    Args:
        solid: the solid.
        heights: z of each plane [mm].

    Returns:
        One area per height, 0 where the plane misses the solid [mm²].

    Raises:
        KernelError: when the outline does not close, or lies on a surface of a kind that taps
            do not have.
    """
    shape = solid.wrapped
    numbers = distinct(shape, EDGE)
    edges = [TopoDS.Edge_s(numbers.FindKey(n)) for n in range(1, numbers.Extent() + 1)]
    solvers = [
        EdgeHeights(n, edge) for n, edge in enumerate(edges, 1) if not BRep_Tool.Degenerated_s(edge)
    ]
    uses: list[Uses] = []
    for face in faces(shape):
        used = [(numbers.FindIndex(edge), edge) for edge in edge_uses(face)]
        uses.append((face, used, {n for n, _ in used}))
    return [_area(solvers, uses, z - JUST_BEFORE) for z in heights]


def _area(solvers: list[EdgeHeights], uses: list[Uses], z: float) -> float:
    crossings = {solver.number: found for solver in solvers if (found := solver.crossings(z))}
    total = 0.0
    for face, used, numbers in uses:
        if not numbers.isdisjoint(crossings):
            touched = [(edge, crossings[n]) for n, edge in used if n in crossings]
            total += _swept(face, z, _ends(touched))
    return total


def _swept(face: TopoDS_Face, z: float, ends: Ends) -> float:
    try:
        return swept(face, z, ends)
    except (ZeroDivisionError, IndexError):
        # A face that lies level where a tap's rises: the solid of another, or one that lies down.
        raise KernelError(Stage.SECTION, "an outline on a level face is not known") from None


def _ends(used: list[tuple[TopoDS_Edge, list[Crossing]]]) -> Ends:
    """Starts and ends of the outline's pieces on one face."""
    starts: list[tuple[Crossing, TopoDS_Edge]] = []
    ends: list[tuple[Crossing, TopoDS_Edge]] = []
    for edge, crossings in used:
        for crossing in crossings:
            upwards = crossing.rising == is_forward(edge)
            (ends if upwards else starts).append((crossing, edge))
    if len(starts) != len(ends):
        raise KernelError(Stage.SECTION, f"{len(starts)} pieces start on a face, {len(ends)} end")
    return starts, ends
