"""Area of a plane section of any solid, by the kernel's intersector: slower, no surface refused."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from OCP.BRepAlgoAPI import BRepAlgoAPI_Section
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace
from OCP.BRepGProp import BRepGProp
from OCP.gp import gp_Dir, gp_Pln, gp_Pnt
from OCP.GProp import GProp_GProps
from OCP.ShapeAnalysis import ShapeAnalysis_FreeBounds
from OCP.TopoDS import TopoDS
from OCP.TopTools import TopTools_HSequenceOfShape

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.topology import EDGE, Solid, distinct
from tapmodel.stages import Stage

_JOINED = 1e-6  # gap between the ends of pieces of an outline [mm]
_PRECISION = 1e-9  # of an area, relative


def general_section_area(solid: Solid, z: float) -> float:
    """Area of the section at height `z` [mm²], of a solid whose sections are one piece with holes.

    Raises:
        KernelError: when the outline does not close.
    """
    plane = gp_Pln(gp_Pnt(0.0, 0.0, z), gp_Dir(0.0, 0.0, 1.0))
    cut = BRepAlgoAPI_Section(solid.wrapped, plane, False)
    cut.Approximation(True)
    cut.Build()
    found = distinct(cut.Shape(), EDGE)
    edges, wires = TopTools_HSequenceOfShape(), TopTools_HSequenceOfShape()
    for n in range(1, found.Extent() + 1):
        edges.Append(found.FindKey(n))
    ShapeAnalysis_FreeBounds.ConnectEdgesToWires_s(edges, _JOINED, False, wires)
    areas: list[float] = []
    for n in range(1, wires.Length() + 1):
        face = BRepBuilderAPI_MakeFace(plane, TopoDS.Wire_s(wires.Value(n)), True)
        if not wires.Value(n).Closed() or not face.IsDone():
            raise KernelError(Stage.SECTION, f"the outline at z = {z:.3f} mm does not close")
        found_area = GProp_GProps()
        BRepGProp.SurfaceProperties_s(face.Face(), found_area, _PRECISION)
        areas.append(abs(float(found_area.Mass())))
    # the outline is the largest, all others are holes in it
    return 2 * max(areas, default=0.0) - sum(areas)
