"""Soundness of a triangle mesh, judged by two libraries that share no code with the CAD kernel."""

from dataclasses import dataclass

import manifold3d
import numpy as np
import trimesh
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
FLAT = 1e-12  # triangle height over its longest side: less is a needle without a normal


@dataclass(frozen=True, slots=True)
class MeshReport:
    """What was found.

    Attributes:
        triangles: how many.
        watertight: every edge joins exactly two triangles that run it in opposite senses, and
            manifold3d accepts the mesh as an oriented manifold.
        volume: enclosed, negative when the mesh is inside out [mm³].
        genus: handles, summed over the parts; of meaning only when watertight.
        degenerate: triangles with a repeated corner or of no area.
        parts: pieces without a common corner; of meaning only when watertight.
    """

    triangles: int
    watertight: bool
    volume: float
    genus: int
    degenerate: int
    parts: int


def check_mesh(vertices: Floats, faces: Indices) -> MeshReport:
    """Examine a mesh as it is, merging and repairing nothing.

    Args:
        vertices: shape (n, 3) [mm].
        faces: shape (m, 3), indices of corners, counter-clockwise seen from outside.

    Returns:
        The report.
    """
    mesh = trimesh.Trimesh(vertices, faces, process=False)
    closed = bool(mesh.is_watertight and mesh.is_winding_consistent)
    body = manifold3d.Manifold(
        manifold3d.Mesh64(
            vert_properties=np.array(vertices, dtype=np.float64, order="C"),
            tri_verts=np.array(faces, dtype=np.uint64, order="C"),
        )
    )
    parts = len(body.decompose())
    return MeshReport(
        triangles=len(faces),
        watertight=closed and body.status() is manifold3d.Error.NoError,
        volume=_volume(vertices, faces),
        genus=parts - int(mesh.euler_number) // 2,
        degenerate=_degenerate(vertices, faces),
        parts=parts,
    )


def _volume(vertices: Floats, faces: Indices) -> float:
    a, b, c = np.moveaxis(vertices[faces] - vertices.mean(axis=0), 1, 0)
    return float(np.einsum("nx,nx->", a, np.cross(b, c))) / 6


def _degenerate(vertices: Floats, faces: Indices) -> int:
    corners = vertices[faces]
    sides = np.roll(corners, -1, axis=1) - corners
    longest = np.linalg.norm(sides, axis=2).max(axis=1)
    doubled = np.linalg.norm(np.cross(sides[:, 0], sides[:, 1]), axis=1)
    return int((doubled <= FLAT * longest**2).sum())
