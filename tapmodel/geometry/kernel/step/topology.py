"""The kernel's solid as statements of a STEP file: faces, their bounds, edges and corners."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from OCP.BRep import BRep_Tool
from OCP.BRepTools import BRepTools_WireExplorer
from OCP.TopAbs import TopAbs_Orientation
from OCP.TopExp import TopExp
from OCP.TopoDS import TopoDS, TopoDS_Edge, TopoDS_Face, TopoDS_Shape, TopoDS_Wire

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.step import geometry as step_geometry
from tapmodel.geometry.kernel.step.text import Statements
from tapmodel.geometry.kernel.topology import (
    EDGE,
    SHELL,
    VERTEX,
    WIRE,
    Solid,
    distinct,
    edge_uses,
    faces,
    is_forward,
)
from tapmodel.stages import Stage

_FORWARD = TopAbs_Orientation.TopAbs_FORWARD

# An edge and the sense in which it is used.
_Use = tuple[TopoDS_Edge, bool]


class Shell:
    """Writes a solid of one closed shell."""

    def __init__(self, to: Statements, solid: Solid) -> None:
        """Take the parts of `solid`, which has one shell, and write `to` a file."""
        self._to, self._shape = to, solid.wrapped
        self._edges, self._vertices = distinct(self._shape, EDGE), distinct(self._shape, VERTEX)
        self._corners: dict[int, str] = {}
        self._curves: dict[int, str] = {}
        # Where a circle closes, a seam meets it. Off by the rounding of a point, the two would
        # overlap, and readers take the border of the face for one that crosses itself.
        edges = (self._edges.FindKey(n) for n in range(1, self._edges.Extent() + 1))
        ends = (
            (TopExp.FirstVertex_s(e), TopExp.LastVertex_s(e)) for e in map(TopoDS.Edge_s, edges)
        )
        self._closing = {self._vertices.FindIndex(a) for a, b in ends if a.IsSame(b)}

    def written(self) -> str:
        """The reference to the solid.

        Raises:
            KernelError: when it holds something that no tap has.
        """
        shells = distinct(self._shape, SHELL).Extent()
        if shells != 1:
            raise KernelError(Stage.STEP, f"one closed shell was expected, not {shells}")
        whole = ",".join(map(self._face, faces(self._shape)))
        shell = self._to.own(f"CLOSED_SHELL('',({whole}))")
        return self._to.own(f"MANIFOLD_SOLID_BREP('',{shell})")

    def _face(self, face: TopoDS_Face) -> str:
        item = BRep_Tool.Surface_s(face)
        upright = TopoDS.Face_s(face.Oriented(_FORWARD))
        wires = distinct(upright, WIRE)
        found = [TopoDS.Wire_s(wires.FindKey(n)) for n in range(1, wires.Extent() + 1)]
        bounds = ",".join(self._bound(_in_order(wire, upright), face) for wire in found)
        outward = is_forward(face) != step_geometry.is_mirrored(item)
        on = step_geometry.surface(self._to, item)
        return self._to.own(f"ADVANCED_FACE('',({bounds}),{on},{_truth(outward)})")

    def _bound(self, run: list[_Use], face: TopoDS_Face) -> str:
        """A wire, counter-clockwise seen from outside the solid."""
        if not is_forward(face):
            run = [(edge, not forward) for edge, forward in reversed(run)]
        uses = [
            self._to.own(f"ORIENTED_EDGE('',*,*,{self._edge(edge)},{_truth(forward)})")
            for edge, forward in run
        ]
        loop = self._to.own(f"EDGE_LOOP('',({','.join(uses)}))")
        return self._to.own(f"FACE_BOUND('',{loop},.T.)")

    def _edge(self, edge: TopoDS_Edge) -> str:
        number = self._edges.FindIndex(edge)
        if number not in self._curves:
            ends = TopExp.FirstVertex_s(edge), TopExp.LastVertex_s(edge)
            start, end = (self._corner(vertex) for vertex in ends)
            seam = any(self._vertices.FindIndex(vertex) in self._closing for vertex in ends)
            curve = step_geometry.curve(self._to, BRep_Tool.Curve_s(edge, 0.0, 0.0), seam=seam)
            self._curves[number] = self._to.own(f"EDGE_CURVE('',{start},{end},{curve},.T.)")
        return self._curves[number]

    def _corner(self, vertex: TopoDS_Shape) -> str:
        number = self._vertices.FindIndex(vertex)
        if number not in self._corners:
            place = BRep_Tool.Pnt_s(TopoDS.Vertex_s(vertex)).Coord()
            point = self._to.point(place, fine=number in self._closing)
            self._corners[number] = self._to.own(f"VERTEX_POINT('',{point})")
        return self._corners[number]


def _in_order(wire: TopoDS_Wire, face: TopoDS_Face) -> list[_Use]:
    """The edges of a wire head to tail; those without length, tips of cones, are left out."""
    explorer = BRepTools_WireExplorer(wire, face)
    run: list[_Use] = []
    while explorer.More():
        run.append((explorer.Current(), is_forward(explorer.Current())))
        explorer.Next()
    if len(run) != len(edge_uses(wire)):
        raise KernelError(Stage.STEP, "a wire does not run through all of its edges")
    return [use for use in run if not BRep_Tool.Degenerated_s(use[0])]


def _truth(value: bool) -> str:
    return ".T." if value else ".F."
