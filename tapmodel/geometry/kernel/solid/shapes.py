"""The only place that speaks to the kernel's topology: surfaces, edges, faces, solid.

Everything is made with explicit shared topology from the skin; nothing is sewn, and no boolean
touches the threaded part.
"""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from OCP.BRep import BRep_Builder, BRep_Tool
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeVertex
from OCP.Geom import (
    Geom_BSplineCurve,
    Geom_BSplineSurface,
    Geom_Circle,
    Geom_ConicalSurface,
    Geom_Curve,
    Geom_CylindricalSurface,
    Geom_Line,
    Geom_Plane,
    Geom_SphericalSurface,
    Geom_Surface,
)
from OCP.Geom2d import Geom2d_BSplineCurve, Geom2d_Curve, Geom2d_Line
from OCP.gp import gp_Ax2, gp_Ax3, gp_Dir, gp_Dir2d, gp_Pnt, gp_Pnt2d
from OCP.TColgp import TColgp_Array1OfPnt, TColgp_Array1OfPnt2d, TColgp_Array2OfPnt
from OCP.TColStd import TColStd_Array1OfInteger, TColStd_Array1OfReal, TColStd_Array2OfReal
from OCP.TopAbs import TopAbs_Orientation
from OCP.TopExp import TopExp
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import (
    TopoDS_Edge,
    TopoDS_Face,
    TopoDS_Shell,
    TopoDS_Solid,
    TopoDS_Vertex,
    TopoDS_Wire,
)

from tapmodel.geometry import bezier
from tapmodel.geometry.surfaces.carriers import (
    Arched,
    Carrier,
    Cone,
    Cylinder,
    Frame,
    Plane,
    Ruled,
    Sphere,
)
from tapmodel.geometry.trace.tracing import Edge

Floats = NDArray[np.float64]

# Tolerance of every edge and face [mm]: curves and surfaces agree within some bezier.CLOSE.
TOLERANCE = 5e-7
# Departure from a straight line in a surface's parameters that counts as none.
_STRAIGHT = 1e-12

FORWARD = TopAbs_Orientation.TopAbs_FORWARD
REVERSED = TopAbs_Orientation.TopAbs_REVERSED


def point(xyz: Floats) -> gp_Pnt:
    """Kernel point."""
    return gp_Pnt(*xyz.tolist())


def _reals(values: Sequence[float]) -> TColStd_Array1OfReal:
    array = TColStd_Array1OfReal(1, len(values))
    for n, value in enumerate(values, 1):
        array.SetValue(n, value)
    return array


def _integers(values: Sequence[int]) -> TColStd_Array1OfInteger:
    array = TColStd_Array1OfInteger(1, len(values))
    for n, value in enumerate(values, 1):
        array.SetValue(n, value)
    return array


def _ax3(frame: Frame) -> gp_Ax3:
    x, _, z = frame.axes
    return gp_Ax3(point(frame.origin), gp_Dir(*z.tolist()), gp_Dir(*x.tolist()))


def surface(carrier: Carrier) -> Geom_Surface:
    """Kernel surface of a carrier."""
    match carrier:
        case Plane():
            return Geom_Plane(_ax3(carrier.frame))
        case Sphere():
            return Geom_SphericalSurface(_ax3(carrier.frame), carrier.radius)
        case Cylinder():
            return Geom_CylindricalSurface(_ax3(carrier.frame), carrier.radius)
        case Cone():
            return Geom_ConicalSurface(_ax3(carrier.frame), carrier.half_angle, carrier.radius)
        case Ruled():
            rows = _integers([2, 2]), _reals(carrier.span)
            return _spline(carrier, rows, 1)
        case Arched():
            weights = TColStd_Array2OfReal(1, len(carrier.poles), 1, 3)
            for n in range(1, len(carrier.poles) + 1):
                for k, weight in enumerate((1.0, carrier.weight, 1.0), 1):
                    weights.SetValue(n, k, weight)
            return _spline(carrier, (_integers([3, 3]), _reals([0.0, 1.0])), 2, weights)


def _spline(
    carrier: Ruled | Arched,
    across: tuple[TColStd_Array1OfInteger, TColStd_Array1OfReal],
    degree: int,
    weights: TColStd_Array2OfReal | None = None,
) -> Geom_BSplineSurface:
    """A surface from its poles; multiplicities and knots `across` u, rational with `weights`."""
    rows, columns = carrier.poles.shape[:2]
    poles = TColgp_Array2OfPnt(1, rows, 1, columns)
    for n, row in enumerate(carrier.poles.tolist(), 1):
        for k, xyz in enumerate(row, 1):
            poles.SetValue(n, k, gp_Pnt(*xyz))
    along = _reals(carrier.knots.tolist()), _integers(carrier.multiplicities)
    multiplicities, knots = across
    nets = (poles,) if weights is None else (poles, weights)
    order = carrier.multiplicities[0]
    return Geom_BSplineSurface(*nets, along[0], knots, along[1], multiplicities, order - 1, degree)


def vertex(xyz: Floats) -> TopoDS_Vertex:
    """Kernel vertex."""
    return BRepBuilderAPI_MakeVertex(point(xyz)).Vertex()


def edge(piece: Edge, start: TopoDS_Vertex, end: TopoDS_Vertex) -> tuple[TopoDS_Edge, Floats]:
    """Kernel edge of a traced piece, and the knots of its parameter."""
    curve, knots = _curve(piece)
    made = BRepBuilderAPI_MakeEdge(curve, start, end, float(knots[0]), float(knots[-1]))
    return made.Edge(), knots


def _curve(piece: Edge) -> tuple[Geom_Curve, Floats]:
    if piece.shape == "line":
        way = piece.end - piece.start
        length = float(np.linalg.norm(way))
        line = Geom_Line(point(piece.start), gp_Dir(*(way / length).tolist()))
        return line, _rescaled(piece.knots, length)
    if piece.shape == "circle":
        return _circle(piece)
    poles, multiplicities = bezier.join(piece.knots, bezier.fit(piece.samples))
    array = TColgp_Array1OfPnt(1, len(poles))
    for n, xyz in enumerate(poles.tolist(), 1):
        array.SetValue(n, gp_Pnt(*xyz))
    knots = _reals(piece.knots.tolist())
    return (
        Geom_BSplineCurve(array, knots, _integers(multiplicities), multiplicities[0] - 1),
        piece.knots,
    )


def _circle(piece: Edge) -> tuple[Geom_Circle, Floats]:
    """Circle through start, an inner sample and the end, its parameter 0 at the start."""
    flat = piece.samples.reshape(-1, 3)
    a, b, c = flat[0], flat[len(flat) // 2], flat[-1]
    ab, ac = b - a, c - a
    normal = np.cross(ab, ac)
    square = float(normal @ normal)
    centre = a + (np.cross(normal, ab) * float(ac @ ac) + np.cross(ac, normal) * float(ab @ ab)) / (
        2 * square
    )
    normal = normal / np.sqrt(square)
    x = a - centre
    radius = float(np.linalg.norm(x))
    y = np.cross(normal, x)
    sweep = float(np.arctan2((c - centre) @ y, (c - centre) @ x)) % (2 * np.pi)
    axes = gp_Ax2(point(centre), gp_Dir(*normal.tolist()), gp_Dir(*(x / radius).tolist()))
    return Geom_Circle(axes, radius), _rescaled(piece.knots, sweep)


def _rescaled(knots: Floats, length: float) -> Floats:
    return (knots - knots[0]) * (length / (knots[-1] - knots[0]))


def parameter_curve(knots: Floats, uv: Floats) -> Geom2d_Curve:
    """Curve in a surface's parameters from uv samples of each span: (n, degree + 1, 2)."""
    start = uv[0, 0]
    speed = (uv[-1, -1] - start) / (knots[-1] - knots[0])
    steady = bezier.span_parameters(knots[:-1], knots[1:], uv.shape[1] - 1)[..., None] - knots[0]
    straight = float(np.max(np.abs(uv - start - speed * steady))) < _STRAIGHT
    # A line's own parameter is its length; most edges run along their surface at that speed.
    if straight and abs(float(speed @ speed) - 1) < _STRAIGHT:
        u, v = (start - speed * knots[0]).tolist()
        return Geom2d_Line(gp_Pnt2d(u, v), gp_Dir2d(*speed.tolist()))
    poles, multiplicities = bezier.join(knots, bezier.fit(uv))
    array = TColgp_Array1OfPnt2d(1, len(poles))
    for n, (u, v) in enumerate(poles.tolist(), 1):
        array.SetValue(n, gp_Pnt2d(u, v))
    return Geom2d_BSplineCurve(
        array, _reals(knots.tolist()), _integers(multiplicities), uv.shape[1] - 1
    )


def lay(made: TopoDS_Edge, curve: Geom2d_Curve, on: Geom_Surface) -> None:
    """Record where an edge runs in the parameters of a surface."""
    BRep_Builder().UpdateEdge(made, curve, on, TopLoc_Location(), TOLERANCE)


def wire(edges: Sequence[tuple[TopoDS_Edge, bool]]) -> TopoDS_Wire:
    """Closed wire from edges in order, each with its sense."""
    builder = BRep_Builder()
    made = TopoDS_Wire()
    builder.MakeWire(made)
    for item, forward in edges:
        builder.Add(made, item.Oriented(FORWARD if forward else REVERSED))
    made.Closed(True)
    return made


def face(on: Geom_Surface, wires: Sequence[TopoDS_Wire], *, outward: bool) -> TopoDS_Face:
    """Face on a surface, wires counter-clockwise about its natural normal."""
    builder = BRep_Builder()
    made = TopoDS_Face()
    builder.MakeFace(made, on, TOLERANCE)
    for item in wires:
        builder.Add(made, item)
    made.Orientation(FORWARD if outward else REVERSED)
    return made


def solid(faces: Sequence[TopoDS_Face]) -> TopoDS_Solid:
    """Solid bounded by faces that share their edges."""
    builder = BRep_Builder()
    shell = TopoDS_Shell()
    builder.MakeShell(shell)
    for item in faces:
        builder.Add(shell, item)
    shell.Closed(True)
    made = TopoDS_Solid()
    builder.MakeSolid(made)
    builder.Add(made, shell)
    return made


def heights(made: TopoDS_Edge) -> tuple[float, float]:
    """The z of both ends of an edge [mm]."""
    ends = TopExp.FirstVertex_s(made), TopExp.LastVertex_s(made)
    return BRep_Tool.Pnt_s(ends[0]).Z(), BRep_Tool.Pnt_s(ends[1]).Z()
