"""The 60-degree centre in the front face."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

import numpy as np
from OCP.BRepPrimAPI import BRepPrimAPI_MakeCone
from OCP.gp import gp_Ax2, gp_Dir, gp_Pnt
from OCP.TopAbs import TopAbs_Orientation, TopAbs_ShapeEnum
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Edge, TopoDS_Face, TopoDS_Wire

from tapmodel.geometry.kernel.solid import shapes as kernel


def front_centre(rim: float) -> tuple[list[TopoDS_Face], tuple[TopoDS_Wire, ...]]:
    """The pit's face and the wire of its rim for the front face; both empty for no centre.

    Args:
        rim: diameter at the front face [mm].
    """
    if rim == 0:
        return [], ()
    depth = rim / 2 / float(np.tan(np.radians(30.0)))
    axes = gp_Ax2(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1))
    cone = BRepPrimAPI_MakeCone(axes, rim / 2, 0.0, depth).Cone()
    side = TopoDS.Face_s(cone.LateralFace().Reversed())
    explorer = TopExp_Explorer(side, TopAbs_ShapeEnum.TopAbs_EDGE)
    rims: list[TopoDS_Edge] = []
    while explorer.More():
        edge = TopoDS.Edge_s(explorer.Current())
        first = kernel.heights(edge)
        if all(abs(z) < kernel.TOLERANCE for z in first):
            rims.append(edge)
        explorer.Next()
    (edge,) = rims
    backwards = edge.Orientation() == TopAbs_Orientation.TopAbs_FORWARD
    return [side], (kernel.wire([(edge, not backwards)]),)
