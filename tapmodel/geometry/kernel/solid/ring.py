"""The turned face that goes round the tap above the flutes, joined to the rear.

The rear solid begins at a plain circle. Its face above that circle is made anew on the same
surface: the circle gives way to the chain of flute openings below it, and the seam grows down to
the far end of the first opening.
"""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from OCP.BRep import BRep_Builder, BRep_Tool
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge
from OCP.BRepTools import BRepTools_WireExplorer
from OCP.Geom import Geom_ConicalSurface, Geom_CylindricalSurface, Geom_Plane
from OCP.GeomAPI import GeomAPI_ProjectPointOnCurve
from OCP.ShapeAnalysis import ShapeAnalysis
from OCP.TopAbs import TopAbs_Orientation
from OCP.TopExp import TopExp
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import TopoDS, TopoDS_Edge, TopoDS_Face, TopoDS_Vertex

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.solid import shapes as kernel
from tapmodel.geometry.kernel.solid.faces import KernelEdges
from tapmodel.geometry.kernel.solid.rear import rear_solid
from tapmodel.geometry.kernel.topology import Solid, edge_uses, faces
from tapmodel.geometry.trace.skin import Cycle, Skin
from tapmodel.shape.form import Form
from tapmodel.stages import Stage

Floats = NDArray[np.float64]
FORWARD = TopAbs_Orientation.TopAbs_FORWARD

# A kernel circle or plane lies at a height when it is this close [mm].
_AT_HEIGHT = 1e-6


@dataclass(frozen=True, slots=True)
class _Part:
    """One use of an edge in the wire of the rear's first face."""

    edge: TopoDS_Edge
    forward: bool
    role: str


def rear_faces(form: Form, skin: Skin, edges: KernelEdges) -> list[TopoDS_Face]:
    """Faces of the rear, the first of them reaching down to the flutes."""
    number = skin.bodies[-1].number
    limit = min(form.turned[number].end, form.tap.blank.square_start)
    start = (skin.opening_end + limit) / 2
    seam_edge, seam_vertex = _seam_corner(skin, edges)
    angle = float(np.arctan2(seam_edge[1], seam_edge[0]))
    rear = rear_solid(form, start, angle)
    side, rest = _first_face(rear, start)
    (cycle,) = skin.loops[skin.bodies[-1]]
    ring = _remade(side, start, _Chain(skin, edges, cycle, seam_edge, seam_vertex))
    return [ring, *rest]


def _seam_corner(skin: Skin, edges: KernelEdges) -> tuple[Floats, TopoDS_Vertex]:
    """The far end of the first flute's opening, where the seam begins."""
    ring = skin.bodies[-1]
    for number, piece in enumerate(skin.edges):
        first = any(key.kind.is_run_out and key.flute == 0 for key in piece.carriers)
        if first and ring in piece.carriers:
            top = piece.start[2] < piece.end[2]
            corner = piece.end if top else piece.start
            if abs(float(piece.knots[-1 if top else 0]) - np.pi / 2) < 1e-9:
                made = edges[number][0]
                vertex = TopExp.LastVertex_s(made) if top else TopExp.FirstVertex_s(made)
                return corner, vertex
    raise KernelError(Stage.REAR, "the first flute has no opening in the blank")


def _first_face(rear: Solid, start: float) -> tuple[TopoDS_Face, list[TopoDS_Face]]:
    """The turned face above the first circle, and the other faces without the disc."""
    side: list[TopoDS_Face] = []
    rest: list[TopoDS_Face] = []
    for face in faces(rear.wrapped):
        low = min(z for edge in edge_uses(face) for z in kernel.heights(edge))
        begins = low < start + _AT_HEIGHT
        if begins and isinstance(BRep_Tool.Surface_s(face), Geom_Plane):
            continue
        (side if begins else rest).append(face)
    if len(side) != 1:
        raise KernelError(Stage.REAR, f"{len(side)} faces begin at the joint instead of one")
    return side[0], rest


@dataclass(frozen=True, slots=True)
class _Chain:
    """The flute openings and arcs that replace the circle."""

    skin: Skin
    edges: KernelEdges
    cycle: Cycle
    corner: Floats
    vertex: TopoDS_Vertex

    def ordered(self) -> Cycle:
        """The cycle from the seam's corner on, in the sense of growing angle."""
        cycle = self.cycle
        if self._turning(cycle) < 0:
            cycle = [(number, not forward) for number, forward in reversed(cycle)]
        starts = [self._start(number, forward) for number, forward in cycle]
        first = int(np.argmin([np.linalg.norm(point - self.corner) for point in starts]))
        return cycle[first:] + cycle[:first]

    def _start(self, number: int, forward: bool) -> Floats:
        piece = self.skin.edges[number]
        return piece.start if forward else piece.end

    def _turning(self, cycle: Cycle) -> float:
        total = 0.0
        for number, forward in cycle:
            points = self.skin.edges[number].samples.reshape(-1, 3)
            angles = np.unwrap(np.arctan2(points[:, 1], points[:, 0]))
            total += float(angles[-1] - angles[0]) * (1 if forward else -1)
        return total


def _remade(side: TopoDS_Face, start: float, chain: _Chain) -> TopoDS_Face:
    location = TopLoc_Location()
    surface = BRep_Tool.Surface_s(side, location)
    builder = BRep_Builder()
    face = TopoDS.Face_s(side.EmptyCopied())
    parts = _parts(side, start)
    grown = _grown_seam(side, parts, chain.vertex)
    run: list[tuple[TopoDS_Edge, bool]] = []
    for part in parts:
        if part.role == "seam":
            run.append((grown, part.forward))
        elif part.role == "circle":
            run += _laid(chain, surface, growing=_grows(part))
        else:
            run.append((part.edge, part.forward))
    builder.Add(face, kernel.wire(run))
    return face


def _parts(side: TopoDS_Face, start: float) -> list[_Part]:
    """Edge uses of the face's wire in order, in the sense of the forward face."""
    forward_face = TopoDS.Face_s(side.Oriented(FORWARD))
    wire = ShapeAnalysis.OuterWire_s(forward_face)
    explorer = BRepTools_WireExplorer(wire, forward_face)
    parts: list[_Part] = []
    while explorer.More():
        edge = explorer.Current()
        heights = [
            BRep_Tool.Pnt_s(vertex).Z()
            for vertex in (TopExp.FirstVertex_s(edge), TopExp.LastVertex_s(edge))
        ]
        role = "upper"
        if BRep_Tool.IsClosed_s(edge, forward_face):
            role = "seam"
        elif all(abs(z - start) < _AT_HEIGHT for z in heights):
            role = "circle"
        parts.append(_Part(edge, edge.Orientation() == FORWARD, role))
        explorer.Next()
    roles = [part.role for part in parts]
    if roles.count("seam") != 2 or roles.count("circle") != 1:
        raise KernelError(Stage.REAR, f"unexpected boundary of the joint: {roles}")
    return parts


def _grows(part: _Part) -> bool:
    """Whether the circle runs towards growing angle in the wire."""
    curve = BRep_Tool.Curve_s(part.edge, 0.0, 1.0)
    a, b = curve.Value(0.1), curve.Value(0.2)
    return (a.X() * b.Y() - a.Y() * b.X() > 0) == part.forward


def _grown_seam(side: TopoDS_Face, parts: list[_Part], vertex: TopoDS_Vertex) -> TopoDS_Edge:
    """The seam, lengthened down to `vertex` on the same curves."""
    forward_face = TopoDS.Face_s(side.Oriented(FORWARD))
    old = TopoDS.Edge_s(next(p.edge for p in parts if p.role == "seam").Oriented(FORWARD))
    curve = BRep_Tool.Curve_s(old, 0.0, 1.0)
    flat = [
        BRep_Tool.CurveOnSurface_s(TopoDS.Edge_s(edge), forward_face, 0.0, 1.0)
        for edge in (old, old.Reversed())
    ]
    corner = BRep_Tool.Pnt_s(vertex)
    projected = GeomAPI_ProjectPointOnCurve(corner, curve)
    if projected.NbPoints() == 0 or projected.LowerDistance() > 1e-6:
        raise KernelError(Stage.REAR, "the seam misses the end of the first flute")
    low, high = TopExp.FirstVertex_s(old), TopExp.LastVertex_s(old)
    upwards = BRep_Tool.Pnt_s(low).Z() < BRep_Tool.Pnt_s(high).Z()
    at = projected.LowerDistanceParameter()
    if upwards:
        made = BRepBuilderAPI_MakeEdge(curve, vertex, high, at, BRep_Tool.Parameter_s(high, old))
    else:
        made = BRepBuilderAPI_MakeEdge(curve, low, vertex, BRep_Tool.Parameter_s(low, old), at)
    grown = made.Edge()
    surface = BRep_Tool.Surface_s(side)
    BRep_Builder().UpdateEdge(grown, flat[0], flat[1], surface, TopLoc_Location(), kernel.TOLERANCE)
    return grown


def _laid(
    chain: _Chain, surface: Geom_CylindricalSurface | Geom_ConicalSurface, *, growing: bool
) -> list[tuple[TopoDS_Edge, bool]]:
    """The chain's edges in the wire's sense, with their parameter curves on the surface."""
    run: list[tuple[TopoDS_Edge, bool]] = []
    for number, forward in chain.ordered():
        edge, knots = chain.edges[number]
        uv = _parameters(surface, chain.skin.edges[number].samples)
        kernel.lay(edge, kernel.parameter_curve(knots, uv), surface)
        run.append((edge, forward))
    return run if growing else [(edge, not forward) for edge, forward in reversed(run)]


def _parameters(surface: Geom_CylindricalSurface | Geom_ConicalSurface, samples: Floats) -> Floats:
    """Surface parameters of samples (n, m, 3), the angle continuous within [0, 2 pi]."""
    axes = surface.Position()
    rows = [(d.X(), d.Y(), d.Z()) for d in (axes.XDirection(), axes.YDirection(), axes.Direction())]
    origin = axes.Location()
    local = (samples - np.array([origin.X(), origin.Y(), origin.Z()])) @ np.array(rows).T
    flat = local.reshape(-1, 3)
    angle = np.unwrap(np.arctan2(flat[:, 1], flat[:, 0]))
    middle = len(angle) // 2
    angle += np.mod(angle[middle], 2 * np.pi) - angle[middle]
    lean = 1.0
    if isinstance(surface, Geom_ConicalSurface):
        lean = float(np.cos(surface.Cone().SemiAngle()))
    return np.stack([angle, flat[:, 2] / lean], axis=-1).reshape(*samples.shape[:-1], 2)
