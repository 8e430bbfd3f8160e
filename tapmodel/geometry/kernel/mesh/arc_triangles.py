"""Triangles of a rounded crest or root: rows of points along it, as wide as the chord allows.

The kernel's own refinement makes such a strip, long and bent across only, into triangles as small
along it as across, some thirty times too many. Here the nodes that the kernel has put on the
borders are kept, so that the faces still meet, and those inside are laid on a grid that is
stretched along the strip.
"""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# Neither the kernel's binding nor the triangulation library carries type stubs.

from dataclasses import replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray
from OCP.BRep import BRep_Tool
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.TopoDS import TopoDS_Face

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.mesh.triangulation import FaceTriangles
from tapmodel.geometry.kernel.topology import edge_uses, is_forward
from tapmodel.geometry.loops import inside
from tapmodel.numerics import distinct
from tapmodel.stages import Stage

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Shares of the chord that the steps across the arc and those along it may use up; the rest is for
# the wider gaps where points were left out near the border.
_ACROSS, _ALONG = 0.5, 0.3
# Least distance of an inner point from the border, in steps of the grid.
_CLEAR = 0.45
# Triangles below this area, in steps of the grid, are the flat ones of a straight border.
_FLAT = 1e-9


def arc_triangles(face: TopoDS_Face, coarse: FaceTriangles, chord: float) -> FaceTriangles:
    """The triangles of an arched face anew, within `chord` of it [mm].

    Args:
        face: the face.
        coarse: its triangles with the nodes on its borders.
        chord: largest distance between a triangle and the surface [mm].

    Raises:
        KernelError: when the triangles do not fill the face between its borders.
    """
    sides = _border(face, coarse)
    flat = _Flat(face, coarse, chord)
    border = distinct(sides)
    inner = _grid(flat.at(coarse.uv), sides)
    points = np.concatenate([flat.at(coarse.uv[border]), inner])
    found = _filled(points, np.searchsorted(border, sides))
    surface = BRepAdaptor_Surface(face, False)
    new_uv = flat.uv(inner)
    new = np.array([surface.Value(u, v).Coord() for u, v in new_uv.tolist()]).reshape(-1, 3)
    numbers = np.concatenate([border, len(coarse.nodes) + np.arange(len(inner))])
    triangles = numbers[found]
    return replace(
        coarse,
        nodes=np.concatenate([coarse.nodes, new]),
        uv=np.concatenate([coarse.uv, new_uv]),
        triangles=triangles if is_forward(face) else triangles[:, ::-1],
    )


def _border(face: TopoDS_Face, mesh: FaceTriangles) -> Indices:
    """Pairs of nodes along the borders, (n, 2), the face at the left of its natural normal."""
    sides: list[tuple[int, int]] = []
    for edge in edge_uses(face):
        nodes = mesh.along(edge)
        if is_forward(edge) != is_forward(face):
            nodes = nodes[::-1]
        sides += pairwise(nodes)
    return np.array(sides, dtype=np.intp)


class _Flat:
    """The face laid out flat, one unit a step of the grid: x along the strip, y across."""

    def __init__(self, face: TopoDS_Face, mesh: FaceTriangles, chord: float) -> None:
        spline = BRep_Tool.Surface_s(face)
        self._half = float(np.arccos(spline.Weight(1, 2)))
        ends = spline.Pole(1, 1).Distance(spline.Pole(1, 3))
        arc = ends / (2 * float(np.sin(self._half)))
        reach = float(np.max(np.hypot(mesh.nodes[:, 0], mesh.nodes[:, 1])))
        self._along = 2 * float(np.sqrt(2 * _ALONG * chord / reach))
        self._across = 2 * float(np.arccos(max(1 - _ACROSS * chord / arc, 0.5)))

    def at(self, uv: Floats) -> Floats:
        """Places of parameters (n, 2)."""
        tangent = (2 * uv[:, 1] - 1) * np.tan(self._half / 2)
        return np.column_stack([uv[:, 0] / self._along, 2 * np.arctan(tangent) / self._across])

    def uv(self, places: Floats) -> Floats:
        """Parameters of places (n, 2)."""
        tangent = np.tan(places[:, 1] * self._across / 2)
        v = (1 + tangent / np.tan(self._half / 2)) / 2
        return np.column_stack([places[:, 0] * self._along, v])


def _grid(places: Floats, sides: Indices) -> Floats:
    """Points of a staggered grid inside the border and clear of it."""
    used = places[distinct(sides)]
    low, high = used.min(axis=0), used.max(axis=0)
    rows = np.linspace(low[1], high[1], int(np.ceil(high[1] - low[1])) + 1)[1:-1]
    columns = int(np.ceil(high[0] - low[0]))
    steps = np.linspace(low[0], high[0], columns + 1)
    step = (high[0] - low[0]) / columns
    grid = [
        np.column_stack([steps + (n % 2) * step / 2, np.full(len(steps), y)])
        for n, y in enumerate(rows.tolist())
    ]
    if not grid:
        return np.empty((0, 2))
    points = np.concatenate(grid)
    start, end = places[sides[:, 0]], places[sides[:, 1]]
    return points[inside(points, start, end) & (_distance(points, start, end) > _CLEAR)]


def _distance(points: Floats, start: Floats, end: Floats) -> Floats:
    """Distance of points from the nearest side."""
    way = end - start
    length = np.maximum(np.sum(way**2, axis=1), np.finfo(float).tiny)
    from_start = points[:, None] - start
    share = np.clip(np.sum(from_start * way, axis=2) / length, 0.0, 1.0)
    return np.min(np.linalg.norm(from_start - share[..., None] * way, axis=2), axis=1)


def _filled(points: Floats, sides: Indices) -> Indices:
    """Triangles between the border and the inner points, counter-clockwise."""
    # Takes as long to load as all else but the kernel; most taps have flats.
    from scipy.spatial import Delaunay  # noqa: PLC0415

    found = np.asarray(Delaunay(points).simplices, dtype=np.intp)
    a, b, c = (points[found[:, k]] for k in range(3))
    area = (b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0]
    keep = (np.abs(area) > _FLAT) & inside(
        (a + b + c) / 3, points[sides[:, 0]], points[sides[:, 1]]
    )
    found = np.where(area[:, None] > 0, found, found[:, ::-1])[keep]
    _demand_filled(found, sides)
    return found


def _demand_filled(triangles: Indices, sides: Indices) -> None:
    """The sides that no other triangle runs back along must be the border's, no more, no fewer."""
    used = {tuple(pair) for n in range(3) for pair in triangles[:, [n, (n + 1) % 3]].tolist()}
    free = {(a, b) for a, b in used if (b, a) not in used}
    if free != {tuple(pair) for pair in sides.tolist()}:
        raise KernelError(Stage.MESH, "a rounded crest or root is not filled by its triangles")
