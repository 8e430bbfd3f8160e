"""Points on a solid's exact surfaces, spread over all its faces."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from math import ceil

import numpy as np
from numpy.typing import NDArray
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.BRepTopAdaptor import BRepTopAdaptor_FClass2d
from OCP.gp import gp_Pnt2d
from OCP.TopAbs import TopAbs_State
from OCP.TopoDS import TopoDS_Face

from tapmodel.errors import KernelError
from tapmodel.geometry import topology
from tapmodel.geometry.topology import Solid
from tapmodel.geometry.triangulation import FaceTriangles, face_triangles, triangulate

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

# The mesh only spreads the points; it needs no more than the shape of each face.
_CHORD, _ANGLE = 0.05, 30.0
# Additive recurrence of lowest discrepancy in three dimensions, after the real root of
# x^4 = x + 1: the powers of its inverse.
_STEP = 1.2207440846057596 ** -np.arange(1.0, 4.0)
_MOST_ROUNDS = 8
# Distance from every border, in the parameters of the face.
_INSIDE = 1e-9


def sample_faces(solid: Solid, per_face: int, minimum: int) -> tuple[Floats, Indices, Floats]:
    """Points strictly inside the trimmed faces, evenly by area on each, always the same.

    The solid's own mesh is replaced by a coarse one.

    Args:
        solid: the solid.
        per_face: points on every face, however small.
        minimum: points in all; `per_face` is raised to reach it.

    Returns:
        Points on the exact surfaces, shape (n, 3) [mm]; the number of the face of each in the
        order of the shell, (n,); and their surface parameters, (n, 2).

    Raises:
        KernelError: when a face has no inside to put points in.
    """
    triangulate(solid.wrapped, _CHORD, _ANGLE)
    faces = topology.faces(solid.wrapped)
    each = max(per_face, ceil(minimum / len(faces)))
    points: list[Floats] = []
    uv: list[Floats] = []
    for number, face in enumerate(faces):
        inside = _inside(face, each, number)
        surface = BRepAdaptor_Surface(face, False)
        points.append(np.array([surface.Value(u, v).Coord() for u, v in inside.tolist()]))
        uv.append(inside)
    numbers = np.repeat(np.arange(len(faces), dtype=np.intp), each)
    return np.concatenate(points), numbers, np.concatenate(uv)


def _inside(face: TopoDS_Face, count: int, number: int) -> Floats:
    """Parameters of `count` points inside a face."""
    mesh = face_triangles(face)
    classifier = BRepTopAdaptor_FClass2d(face, _INSIDE)
    kept: list[list[float]] = []
    for turn in range(_MOST_ROUNDS):
        for u, v in _spread(mesh, count, turn * count).tolist():
            if classifier.Perform(gp_Pnt2d(u, v)) == TopAbs_State.TopAbs_IN:
                kept.append([u, v])
        if len(kept) >= count:
            return np.array(kept[:count])
    raise KernelError("sampling", f"face {number}: too few of its points lie inside its borders")


def _spread(mesh: FaceTriangles, count: int, first: int) -> Floats:
    """Parameters of points `first` to `first + count` of the sequence over the triangles."""
    corners = mesh.nodes[mesh.triangles]
    sides = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    share = np.cumsum(np.linalg.norm(sides, axis=1))
    steps = np.arange(first + 1, first + count + 1)[:, None]
    at, a, b = np.moveaxis((0.5 + steps * _STEP) % 1.0, -1, 0)
    which = np.searchsorted(share / share[-1], at)
    # Folded, so that a square's points fall evenly into a triangle.
    fold = a + b > 1
    a, b = np.where(fold, 1 - a, a), np.where(fold, 1 - b, b)
    uv = mesh.uv[mesh.triangles[which]]
    weights = np.stack([1 - a - b, a, b], axis=-1)
    return np.einsum("nk,nkd->nd", weights, uv)
