"""The kernel's triangles of one face, as arrays."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from OCP.BRep import BRep_Builder, BRep_Tool
from OCP.BRepMesh import BRepMesh_IncrementalMesh
from OCP.BRepTools import BRepTools
from OCP.Geom import Geom_BSplineSurface
from OCP.IMeshData import IMeshData_Status
from OCP.IMeshTools import IMeshTools_Parameters
from OCP.Poly import Poly_Triangulation
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import TopoDS_Compound, TopoDS_Edge, TopoDS_Face, TopoDS_Shape

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.mesh.slivers import slivers
from tapmodel.geometry.kernel.topology import faces, is_forward
from tapmodel.stages import Stage

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# Where two borders of a face run closer than the chord, the mesher may cross them; a finer chord
# parts them again.
_SHARES = (1.0, 0.7, 0.4, 0.2, 0.1)
# Slivers are given a chord of their own, no finer than this: the sides of one that is left by
# parting are divided at common angles already, and a chord of nanometres gives its neighbours
# thousands of nodes. Where triangles only show where to look, a coarser one is tried first [mm].
_FINEST, _FINEST_ROUGHLY = 1e-5, 1e-3
# The flag by which the mesher says that it has kept triangles it found on a face: no failure.
_REUSED = int(IMeshData_Status.IMeshData_Reused)


def triangulate(shape: TopoDS_Shape, chord: float, angle: float, *, roughly: bool = False) -> None:
    """Give every face of a shape triangles.

    Args:
        shape: what to triangulate; triangles it has already are thrown away, because the kernel
            keeps a finer mesh when asked for a coarser one.
        chord: largest distance between a triangle and its surface [mm].
        angle: largest turn along one side of a triangle [deg].
        roughly: narrow faces get no care of their own while the kernel reports no failure, and
            then little; their triangles may cross the border.

    Raises:
        KernelError: when the kernel reports a failure.
    """
    status = 0
    ways: list[tuple[float, float | None]] = [(share, _FINEST) for share in _SHARES]
    if roughly:
        ways = [(1.0, None), (1.0, _FINEST_ROUGHLY), *ways]
    for share, finest in ways:
        status = _mesher_status(shape, share * chord, angle, finest)
        if status == 0:
            return
    raise KernelError(Stage.MESH, f"the mesher reports status {status}")


def _mesher_status(shape: TopoDS_Shape, chord: float, angle: float, finest: float | None) -> int:
    """Mesh slivers first, then every face but the arched ones closely, then the arched ones.

    Slivers get no care of their own where `finest` is None, else no chord finer than it.

    The later faces take over the nodes of the borders they share with earlier ones; the arched
    ones, which get triangles of their own, from all.
    """
    BRepTools.Clean_s(shape)
    every = faces(shape)
    plain = [face for face in every if not is_arched(face)]
    narrow, fine = ([], chord) if finest is None else slivers(shape, plain, chord, finest)
    if narrow:
        # In one run with one chord: neighbours would divide their common border each its own way.
        _run(_compound(narrow), fine, angle, closely=True)
    status = _run(_compound(plain), chord, angle, closely=True)
    arched = len(plain) < len(every)
    return _run(shape, chord, angle, closely=False) if arched and not status else status


def _compound(parts: list[TopoDS_Face]) -> TopoDS_Compound:
    made = TopoDS_Compound()
    builder = BRep_Builder()
    builder.MakeCompound(made)
    for part in parts:
        builder.Add(made, part)
    return made


def _run(shape: TopoDS_Shape, chord: float, angle: float, *, closely: bool) -> int:
    wanted = IMeshTools_Parameters()
    wanted.Deflection = chord
    wanted.Angle = float(np.radians(angle))
    wanted.Relative = False
    # One face beside the other, on all processors; the triangles are the same to the last bit.
    wanted.InParallel = True
    # Without this the triangles on B-spline faces leave the surface by ten chords and more.
    wanted.ControlSurfaceDeflection = closely
    made = BRepMesh_IncrementalMesh(shape, wanted)
    return int(made.GetStatusFlags()) & ~_REUSED if made.IsDone() else -1


def is_arched(face: TopoDS_Face) -> bool:
    """Whether a face is a rounded crest or root; only those bend across in one span."""
    spline = BRep_Tool.Surface_s(face)
    return isinstance(spline, Geom_BSplineSurface) and int(spline.VDegree()) == 2


@dataclass(frozen=True, slots=True)
class FaceTriangles:
    """Triangles of one face.

    Attributes:
        nodes: shape (n, 3) [mm].
        uv: parameters of the nodes on the face's surface, (n, 2).
        triangles: (m, 3) node numbers, counter-clockwise seen from outside the solid.
        source: the kernel's record, by which edges find their nodes.
        location: in which that record is placed.
    """

    nodes: Floats
    uv: Floats
    triangles: Indices
    source: Poly_Triangulation
    location: TopLoc_Location

    def along(self, edge: TopoDS_Edge) -> list[int]:
        """Nodes along an edge of the face, in the sense of the edge's curve.

        Raises:
            KernelError: when the kernel left the edge out of the mesh.
        """
        polygon = BRep_Tool.PolygonOnTriangulation_s(edge, self.source, self.location)
        if polygon is None:
            raise KernelError(Stage.MESH, "an edge is missing from the mesh of its face")
        return [polygon.Node(n) - 1 for n in range(1, polygon.NbNodes() + 1)]


@dataclass(frozen=True, slots=True)
class Facets:
    """Triangles of every face of a solid.

    Attributes:
        faces: in the order of the shell.
        chord: asked of them [mm].
    """

    faces: list[FaceTriangles]
    chord: float


def face_triangles(face: TopoDS_Face) -> FaceTriangles:
    """Triangles of one face of a shape that `triangulate` has worked on.

    Raises:
        KernelError: when the face has none.
    """
    location = TopLoc_Location()
    source = BRep_Tool.Triangulation_s(face, location)
    if source is None:
        raise KernelError(Stage.MESH, "a face was left without triangles")
    move = location.Transformation()
    numbers = range(1, source.NbNodes() + 1)
    if location.IsIdentity():
        nodes = [source.Node(n).Coord() for n in numbers]
    else:
        nodes = [source.Node(n).Transformed(move).Coord() for n in numbers]
    uv = [source.UVNode(n).Coord() for n in numbers]
    corners = [source.Triangle(n).Get() for n in range(1, source.NbTriangles() + 1)]
    triangles = np.array(corners, dtype=np.intp) - 1
    return FaceTriangles(
        nodes=np.array(nodes),
        uv=np.array(uv),
        triangles=triangles if is_forward(face) else triangles[:, ::-1],
        source=source,
        location=location,
    )
