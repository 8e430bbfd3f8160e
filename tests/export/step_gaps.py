"""How far a solid's curves in the parameters of its surfaces lie from its edges."""

import numpy as np
from OCP.BRep import BRep_Tool
from OCP.TopoDS import TopoDS_Edge, TopoDS_Face, TopoDS_Shape

from tapmodel.geometry.kernel.topology import edge_uses, faces

_PER_EDGE = 41


def widest_gap(shape: TopoDS_Shape) -> float:
    """The largest distance at equal parameters, over all edges of all faces [mm]."""
    uses = [(edge, face) for face in faces(shape) for edge in edge_uses(face)]
    return max(_gap(*use) for use in uses if not BRep_Tool.Degenerated_s(use[0]))


def _gap(edge: TopoDS_Edge, face: TopoDS_Face) -> float:
    surface, curve = BRep_Tool.Surface_s(face), BRep_Tool.Curve_s(edge, 0.0, 1.0)
    flat = BRep_Tool.CurveOnSurface_s(edge, face, 0.0, 1.0)
    along = np.linspace(*BRep_Tool.Range_s(edge), _PER_EDGE).tolist()
    return max(curve.Value(t).Distance(surface.Value(*flat.Value(t).Coord())) for t in along)
