"""How far two solids that ought to be one and the same are apart, part by part."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

import numpy as np
from numpy.typing import NDArray
from OCP.BRep import BRep_Tool
from OCP.Geom import Geom_BSplineSurface, Geom_Surface
from OCP.GeomAPI import GeomAPI_ProjectPointOnSurf
from OCP.gp import gp_Pnt, gp_Vec
from OCP.TopExp import TopExp
from OCP.TopoDS import TopoDS, TopoDS_Edge, TopoDS_Face

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.topology import EDGE, Solid, distinct, edge_uses, faces, is_forward
from tapmodel.geometry.trace.coincidence import labels
from tapmodel.stages import Stage

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
_Place = tuple[float, float]
_Pair = tuple[_Place, _Place]

# Shares of an edge's and of a surface's parameter at which points are compared. A spline of the
# highest degree in use, 9, has one span there, or bends little in each.
_ALONG = np.linspace(0.0, 1.0, 11)
_ACROSS = np.linspace(0.0, 1.0, 3)
# Of how many of its edges the middles are compared on a plane, cylinder, cone or sphere.
_MIDDLES = 8
# Middles of equal edges are no farther apart [mm]; those of different edges are.
_SAME_MIDDLE = 5e-8


def departure(solid: Solid, twin: Solid) -> float:
    """The largest distance between equal parts of two solids [mm].

    Compared are 11 points and the corners of every edge, which faces use it in which sense, and
    of every face its surface, with the side that the normal points to: a spline at 33 points all
    over, others, which their edges settle, at the middles of 8 of these. Edges may come in any
    order, faces not.

    Args:
        solid: the one.
        twin: the other, whose curves and surfaces have the same parameters from end to end, be it
            to another measure.

    Raises:
        KernelError: when a part is missing, joined or turned otherwise.
    """
    mine, its = _Edges(solid), _Edges(twin)
    pairs = list(zip(faces(solid.wrapped), faces(twin.wrapped), strict=False))
    sizes = [(len(edges.points), len(faces(edges.solid.wrapped))) for edges in (mine, its)]
    if sizes[0] != sizes[1]:
        raise KernelError(Stage.LIKENESS, f"{sizes[1]} edges and faces instead of {sizes[0]}")
    # The middles tell edges apart that join the same corners.
    middle = len(_ALONG) // 2
    number = _partners(mine.points[:, middle], its.points[:, middle])
    worst = float(np.max(np.linalg.norm(mine.points - its.points[number], axis=-1)))
    for face, other in pairs:
        used = {(int(number[edge]), forward) for edge, forward in mine.uses(face)}
        if used != set(its.uses(other)):
            raise KernelError(Stage.LIKENESS, "a face is bounded by other edges")
        around = [gp_Pnt(*mine.points[edge, middle].tolist()) for edge, _ in mine.uses(face)]
        worst = max(worst, _apart(face, other, around))
    return worst


def _partners(points: Floats, its: Floats) -> Indices:
    """Number of the point of `its` that coincides with each, of as many; shape (n,)."""
    places = labels(np.concatenate([points, its]), _SAME_MIDDLE)
    mine, other = np.split(places, [len(points)])
    number = np.argsort(other)
    every = np.arange(len(points))
    if not (np.array_equal(np.sort(mine), every) and np.array_equal(other[number], every)):
        raise KernelError(Stage.LIKENESS, "an edge is missing, or lies elsewhere")
    return number[mine]


class _Edges:
    """The edges of a solid that have a length, numbered from 0, and points along them."""

    def __init__(self, solid: Solid) -> None:
        self.solid = solid
        self._all = distinct(solid.wrapped, EDGE)
        edges = [TopoDS.Edge_s(self._all.FindKey(n + 1)) for n in range(self._all.Extent())]
        real = [n for n, edge in enumerate(edges) if not BRep_Tool.Degenerated_s(edge)]
        self._number = {n: place for place, n in enumerate(real)}
        self.points = np.array([_points(edges[n]) for n in real])

    def uses(self, face: TopoDS_Face) -> list[tuple[int, bool]]:
        """Edges round a face with the sense in which it lies at their left, seen from outside."""
        numbered = ((self._all.FindIndex(use) - 1, is_forward(use)) for use in edge_uses(face))
        return [(self._number[n], forward) for n, forward in numbered if n in self._number]


def _points(edge: TopoDS_Edge) -> list[tuple[float, float, float]]:
    curve = BRep_Tool.Curve_s(edge, 0.0, 1.0)
    low, high = BRep_Tool.Range_s(edge)
    ends = TopExp.FirstVertex_s(edge), TopExp.LastVertex_s(edge)
    corners = [BRep_Tool.Pnt_s(vertex).Coord() for vertex in ends]
    along = [curve.Value(t).Coord() for t in (low + (high - low) * _ALONG).tolist()]
    return [*along, *corners]


def _apart(face: TopoDS_Face, other: TopoDS_Face, around: list[gp_Pnt]) -> float:
    """Distance between the surfaces of two faces, `around` which are points on both."""
    surface, its = BRep_Tool.Surface_s(face), BRep_Tool.Surface_s(other)
    if type(surface) is not type(its):
        raise KernelError(Stage.LIKENESS, f"a {type(its).__name__} for a {type(surface).__name__}")
    worst, same = 0.0, is_forward(face) == is_forward(other)
    for place, twin in _places(surface, its, around):
        (point, normal), (found, across) = _normal(surface, place), _normal(its, twin)
        if (normal.Dot(across) > 0) != same:
            raise KernelError(Stage.LIKENESS, "a face looks the other way")
        worst = max(worst, float(point.Distance(found)))
    return worst


def _places(surface: Geom_Surface, its: Geom_Surface, around: list[gp_Pnt]) -> list[_Pair]:
    """Parameters on both surfaces that ought to mean one point."""
    if isinstance(surface, Geom_BSplineSurface):
        return list(zip(_grid(surface), _grid(its), strict=True))
    step = -(-len(around) // _MIDDLES)
    return [(_nearest(surface, point), _nearest(its, point)) for point in around[::step]]


def _grid(spline: Geom_BSplineSurface) -> list[_Place]:
    u_low, u_high, v_low, v_high = spline.Bounds()
    return [
        (u_low + (u_high - u_low) * along, v_low + (v_high - v_low) * across)
        for along in _ALONG.tolist()
        for across in _ACROSS.tolist()
    ]


def _normal(surface: Geom_Surface, place: _Place) -> tuple[gp_Pnt, gp_Vec]:
    point, along, across = gp_Pnt(), gp_Vec(), gp_Vec()
    surface.D1(*place, point, along, across)
    return point, along.Crossed(across)


def _nearest(surface: Geom_Surface, point: gp_Pnt) -> _Place:
    found = GeomAPI_ProjectPointOnSurf(point, surface)
    u, v = found.LowerDistanceParameters()
    return float(u), float(v)
