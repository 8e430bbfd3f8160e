"""The faces of a solid as surfaces within borders: points on them, and feet of points on them."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

import math
from contextlib import suppress

import numpy as np
from numpy.typing import NDArray
from OCP.BRep import BRep_Tool
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeVertex
from OCP.BRepExtrema import BRepExtrema_DistShapeShape
from OCP.BRepTopAdaptor import BRepTopAdaptor_FClass2d
from OCP.gp import gp_Pnt, gp_Pnt2d
from OCP.ShapeAnalysis import ShapeAnalysis_Surface
from OCP.TopAbs import TopAbs_State
from OCP.TopoDS import TopoDS_Face, TopoDS_Shape

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel import topology
from tapmodel.geometry.kernel.mesh.arc_triangles import arc_triangles
from tapmodel.geometry.kernel.mesh.triangulation import (
    FaceTriangles,
    Facets,
    face_triangles,
    is_arched,
    triangulate,
)
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.stages import Stage

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# The triangles only show where to look; they need no more than the shape of each face.
_CHORD, _ANGLE = 0.05, 30.0
# Distance from a border, in the parameters of the face, within which a point counts as on it.
_BORDER = 1e-7
_CLOSE = 1e-12  # asked of a foot [mm]


class TrimmedFace:
    """One face: its surface, its borders and its triangles."""

    def __init__(self, face: TopoDS_Face, mesh: FaceTriangles) -> None:
        """Prepare a face and its triangles for searches.

        Raises:
            KernelError: when it has no surface.
        """
        # With the face's own place in the solid, which a file may keep apart from its surface.
        surface = BRep_Tool.Surface_s(face)
        if surface is None:
            raise KernelError(Stage.MEASURE, "a face has no surface")
        self.mesh = mesh
        self._surface = ShapeAnalysis_Surface(surface)
        self._borders = BRepTopAdaptor_FClass2d(face, _BORDER)
        self._face = face

    def point(self, u: float, v: float) -> tuple[float, float, float]:
        """Point of the surface [mm]."""
        x, y, z = self._surface.Value(u, v).Coord()
        return x, y, z

    def inside(self, u: float, v: float) -> bool:
        """Whether parameters lie within the borders, not on them."""
        return bool(self._borders.Perform(gp_Pnt2d(u, v)) == TopAbs_State.TopAbs_IN)

    def distance(
        self, point: tuple[float, float, float], start: tuple[float, float], below: float
    ) -> float:
        """Distance of a point to its foot on the face, sought from parameters `start` [mm].

        Whatever the search, no less than the true distance; infinite when the foot that it finds
        lies beyond the borders or not `below`.
        """
        foot = self._surface.NextValueOfUV(gp_Pnt2d(*start), gp_Pnt(*point), _CLOSE)
        found = math.dist(self.point(foot.X(), foot.Y()), point)
        if found >= below or self._borders.Perform(foot) == TopAbs_State.TopAbs_OUT:
            return math.inf
        return found

    def exact_distance(self, point: tuple[float, float, float]) -> float:
        """Distance from a point to the face, borders and all, by the kernel's own search [mm].

        Raises:
            KernelError: when the search fails.
        """
        return _searched(point, self._face)


def _searched(point: tuple[float, float, float], shape: TopoDS_Shape) -> float:
    vertex = BRepBuilderAPI_MakeVertex(gp_Pnt(*point)).Vertex()
    search = BRepExtrema_DistShapeShape(vertex, shape)
    if not search.IsDone():
        raise KernelError(Stage.MEASURE, "no distance from a point to the solid")
    return float(search.Value())


def _coarse(solid: Solid) -> Facets:
    """Coarse triangles of a solid, which replace its own.

    Raises:
        KernelError: when the mesher fails.
    """
    triangulate(solid.wrapped, _CHORD, _ANGLE, roughly=True)
    return Facets([_filled(face) for face in topology.faces(solid.wrapped)], _CHORD)


def _filled(face: TopoDS_Face) -> FaceTriangles:
    """Triangles of a face; the mesher leaves arched ones flat between their borders."""
    mesh = face_triangles(face)
    if is_arched(face):
        # A solid from elsewhere may hold arches that this does not know; they stay flat.
        with suppress(KernelError):
            return arc_triangles(face, mesh, _CHORD)
    return mesh


class TrimmedFaces:
    """All faces of a solid, in the order of the shell.

    Attributes:
        faces: one by one.
        chord: of the triangles [mm].
        corners: of the triangles of all faces, shape (n, 3, 3) [mm].
        uv: the same in the parameters of each one's face, (n, 3, 2).
        owner: number of each triangle's face, (n,).
        sizes: number of triangles of each face, (faces,).
        triangle_areas: (n,) [mm²].
    """

    def __init__(self, solid: Solid, facets: Facets | None = None) -> None:
        """Prepare every face.

        Args:
            solid: the solid.
            facets: triangles of its faces; without, coarse ones replace the solid's own mesh.

        Raises:
            KernelError: when a face has no surface, or the mesher fails.
        """
        facets = facets or _coarse(solid)
        self._shape, self.chord = solid.wrapped, facets.chord
        meshes = facets.faces
        pairs = zip(topology.faces(self._shape), meshes, strict=True)
        self.faces = [TrimmedFace(face, mesh) for face, mesh in pairs]
        self.corners: Floats = np.concatenate([mesh.nodes[mesh.triangles] for mesh in meshes])
        self.uv: Floats = np.concatenate([mesh.uv[mesh.triangles] for mesh in meshes])
        self.sizes: Indices = np.array([len(mesh.triangles) for mesh in meshes], dtype=np.intp)
        a, b, c = np.moveaxis(self.corners, 1, 0)
        self.triangle_areas: Floats = np.linalg.norm(np.cross(b - a, c - a), axis=1) / 2
        self.owner: Indices = np.repeat(np.arange(len(meshes), dtype=np.intp), self.sizes)

    def areas(self) -> Floats:
        """Areas of the faces' triangles, shape (faces,) [mm²]."""
        found: Floats = np.zeros(len(self.faces))
        np.add.at(found, self.owner, self.triangle_areas)
        return found

    def exact_distance(self, point: tuple[float, float, float]) -> float:
        """Distance from a point to the boundary by the kernel's own search, slowly [mm].

        Raises:
            KernelError: when the search fails.
        """
        shells = topology.distinct(self._shape, topology.SHELL)
        return min(_searched(point, shells.FindKey(n)) for n in range(1, shells.Extent() + 1))
