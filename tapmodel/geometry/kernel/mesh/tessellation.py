"""A closed triangle mesh of a solid, welded by its topology."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

import numpy as np
from numpy.typing import NDArray
from OCP.TopExp import TopExp
from OCP.TopoDS import TopoDS_Face, TopoDS_Shape
from OCP.TopTools import TopTools_IndexedMapOfShape

from tapmodel.errors import KernelError
from tapmodel.geometry.flat_triangles import without_flat
from tapmodel.geometry.kernel.mesh.arc_triangles import arc_triangles
from tapmodel.geometry.kernel.mesh.triangulation import (
    FaceTriangles,
    Facets,
    face_triangles,
    is_arched,
    triangulate,
)
from tapmodel.geometry.kernel.topology import EDGE, VERTEX, Solid, distinct, edge_uses, faces
from tapmodel.geometry.slits import slits
from tapmodel.geometry.triangles import Mesh, open_sides
from tapmodel.stages import Stage

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Coarse enough that the chord alone decides on anything larger than a few chords.
ANGLE = 30.0

# Shares of the chord to try where the kernel's mesh does not close.
_SHARES = (1.0, 0.8, 0.6, 0.5, 0.35, 0.2)


def tessellate(solid: Solid, chord: float, angle: float = ANGLE) -> Mesh:
    """The mesh of `tessellated` alone."""
    return tessellated(solid, chord, angle)[0]


def tessellated(solid: Solid, chord: float, angle: float = ANGLE) -> tuple[Mesh, Facets]:
    """Closed mesh of a solid, and the triangles face by face that it was welded of.

    Args:
        solid: the solid; the triangles stored with it are replaced.
        chord: largest distance between a triangle and its surface [mm].
        angle: largest turn along one side of a triangle [deg].

    Raises:
        KernelError: when the mesh does not close.
    """
    failure: KernelError | None = None
    for share in _SHARES:
        try:
            return _closed(solid.wrapped, share * chord, angle)
        except KernelError as error:
            failure = failure or error
    raise failure or KernelError(Stage.MESH, "no mesh")


def _closed(shape: TopoDS_Shape, chord: float, angle: float) -> tuple[Mesh, Facets]:
    triangulate(shape, chord, angle)
    weld = _Weld(shape)
    read: list[FaceTriangles] = []
    triangles: list[Indices] = []
    owner: list[Indices] = []
    for number, face in enumerate(faces(shape)):
        mesh = face_triangles(face)
        if is_arched(face):
            mesh = arc_triangles(face, mesh, chord)
        read.append(mesh)
        own = weld.numbers(face, mesh)[mesh.triangles]
        triangles.append(own)
        owner.append(np.full(len(own), number, dtype=np.intp))
    vertices = np.concatenate(weld.points)
    welded = np.concatenate(triangles)
    owners = np.concatenate(owner)
    missing = slits(vertices, welded)
    if len(missing):
        # Whose they are decides nothing but their colour in a file that has any.
        owners = np.concatenate([owners, np.full(len(missing), owners[-1])])
        welded = np.concatenate([welded, missing])
    kept, rows = without_flat(vertices, welded)
    used, renumbered = np.unique(kept, return_inverse=True)
    mesh = Mesh(vertices[used], renumbered.reshape(-1, 3), owners[rows])
    if open_sides(mesh.triangles):
        raise KernelError(Stage.MESH, f"the mesh has {open_sides(mesh.triangles)} open sides")
    return mesh, Facets(read, chord)


class _Weld:
    """Common numbers for the nodes of all faces: corner and edge nodes are shared."""

    def __init__(self, shape: TopoDS_Shape) -> None:
        self.points: list[Floats] = []
        self._count = 0
        self._corners = distinct(shape, VERTEX)
        self._edges = distinct(shape, EDGE)
        self._corner_number: dict[int, int] = {}
        self._edge_numbers: dict[int, list[int]] = {}

    def numbers(self, face: TopoDS_Face, mesh: FaceTriangles) -> Indices:
        """Common number of each node of a face."""
        own = np.full(len(mesh.nodes), -1, dtype=np.intp)
        for edge in edge_uses(face):
            nodes = mesh.along(edge)
            ends = TopExp.FirstVertex_s(edge), TopExp.LastVertex_s(edge)
            for vertex, node in zip(ends, (nodes[0], nodes[-1]), strict=True):
                own[node] = self._corner(vertex, mesh.nodes[node])
            inner = nodes[1:-1]
            own[inner] = self._along(edge, mesh.nodes[inner])
        free = np.nonzero(own < 0)[0]
        own[free] = self._new(mesh.nodes[free])
        return own

    def _new(self, points: Floats) -> list[int]:
        first = self._count
        self._count += len(points)
        self.points.append(points)
        return list(range(first, self._count))

    def _corner(self, vertex: TopoDS_Shape, point: Floats) -> int:
        key = self._key(self._corners, vertex)
        if key not in self._corner_number:
            (self._corner_number[key],) = self._new(point[None])
        return self._corner_number[key]

    def _along(self, edge: TopoDS_Shape, points: Floats) -> list[int]:
        key = self._key(self._edges, edge)
        if key not in self._edge_numbers:
            self._edge_numbers[key] = self._new(points)
        known = self._edge_numbers[key]
        if len(known) != len(points):
            raise KernelError(Stage.MESH, "two faces divide their common edge differently")
        return known

    @staticmethod
    def _key(numbers: TopTools_IndexedMapOfShape, shape: TopoDS_Shape) -> int:
        return int(numbers.FindIndex(shape))
