"""Volume, soundness and topology of a solid, by the kernel."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from dataclasses import dataclass

from OCP.BRep import BRep_Tool
from OCP.BRepBuilderAPI import BRepBuilderAPI_Copy
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepGProp import BRepGProp
from OCP.GProp import GProp_GProps
from OCP.TopAbs import TopAbs_ShapeEnum
from OCP.TopoDS import TopoDS, TopoDS_Shape

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.topology import EDGE, FACE, SHELL, VERTEX, WIRE, Solid, distinct
from tapmodel.stages import Stage


@dataclass(frozen=True, slots=True)
class Counts:
    """What a solid is made of.

    Attributes:
        solids, faces, edges: distinct ones; edges without length are not counted.
        genus: number of through holes of all its shells together: 0 for a tap.
    """

    solids: int
    faces: int
    edges: int
    genus: int


def volume(solid: Solid, precision: float = 1e-7) -> float:
    """Volume; negative when the faces look inwards [mm³].

    Args:
        solid: the solid.
        precision: relative, asked of the kernel for each face. Without it the kernel's integral
            over helical faces is off by up to 1.5e-3.
    """
    found = GProp_GProps()
    BRepGProp.VolumeProperties_s(solid.wrapped, found, precision, True, False)
    return float(found.Mass())


def is_valid(solid: Solid) -> bool:
    """Whether the kernel finds curves, wires, faces and shell consistent.

    True also for a solid turned inside out or overlapping itself: look at `volume`, too. A mesh
    that the solid bears is left out: whether its sides lie on an edge of nanometres says nothing
    of the solid, and a mesh has its own proof.
    """
    bare = BRepBuilderAPI_Copy(solid.wrapped, False, False).Shape()
    curves_too, on_all_processors = True, True
    return bool(BRepCheck_Analyzer(bare, curves_too, on_all_processors).IsValid())


def counts(solid: Solid) -> Counts:
    """Numbers of the parts, and the genus from them.

    Raises:
        KernelError: when a shell cannot be the boundary of a body.
    """
    shape = solid.wrapped
    shells = distinct(shape, SHELL)
    return Counts(
        solids=distinct(shape, TopAbs_ShapeEnum.TopAbs_SOLID).Extent(),
        faces=distinct(shape, FACE).Extent(),
        edges=_real_edges(shape),
        genus=sum(_genus(shells.FindKey(n)) for n in range(1, shells.Extent() + 1)),
    )


def _genus(shell: TopoDS_Shape) -> int:
    """Genus of one closed shell.

    Euler and Poincaré: V - E + F - (W - F) = 2 - 2 genus with W wires. A face with n wires
    is a disc after n - 1 cuts from wire to wire, and each cut adds an edge. A seam is an edge
    like any other; an edge shrunk to a point (pole, tip of a cone) is no edge.
    """
    vertices, faces, wires = (distinct(shell, kind).Extent() for kind in (VERTEX, FACE, WIRE))
    twice = 2 - (vertices - _real_edges(shell) + faces - (wires - faces))
    if twice < 0 or twice % 2:
        raise KernelError(Stage.MEASURE, f"the shell is not closed: Euler sum {2 - twice}")
    return twice // 2


def _real_edges(shape: TopoDS_Shape) -> int:
    found = distinct(shape, EDGE)
    edges = (TopoDS.Edge_s(found.FindKey(n)) for n in range(1, found.Extent() + 1))
    return sum(not BRep_Tool.Degenerated_s(edge) for edge in edges)
