"""The mesh for slicers and viewers: binary STL."""

from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from tapmodel.errors import KernelError
from tapmodel.export.atomic import write_whole
from tapmodel.geometry.flat_triangles import without_flat
from tapmodel.geometry.triangles import Mesh, open_sides
from tapmodel.stages import Stage

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

_FACET = np.dtype(
    [("normal", "<f4", (3,)), ("corners", "<f4", (3, 3)), ("attribute", "<u2")],
)
# Readers take a file that begins with "solid" for the text form.
_HEADER = b"binary STL, mm"


def write_stl(mesh: Mesh, path: Path) -> None:
    """Write a mesh as binary STL [mm].

    Args:
        mesh: closed.
        path: of the file.

    Raises:
        InputError: when nothing can be written there.
        KernelError: when the mesh does not survive the format's single precision.
    """
    vertices, triangles = single_precision(mesh)
    corners = vertices[triangles]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    facets = np.zeros(len(triangles), dtype=_FACET)
    facets["normal"] = normals / np.linalg.norm(normals, axis=1, keepdims=True)
    facets["corners"] = corners
    number = np.array(len(facets), dtype="<u4")
    write_whole(path, _HEADER.ljust(80, b"\0") + number.tobytes() + facets.tobytes())


def single_precision(mesh: Mesh) -> tuple[Floats, Indices]:
    """The mesh as single precision can hold it: still closed, and no facet without area.

    Corners that fall together become one, and triangles that lose their area are taken out.

    Raises:
        KernelError: when that tears or folds the mesh.
    """
    rounded = mesh.vertices.astype(np.float32).astype(np.float64) + 0.0  # no negative zeros
    vertices, number = np.unique(rounded, axis=0, return_inverse=True)
    triangles, _ = without_flat(vertices, number.reshape(-1)[mesh.triangles])
    if open_sides(triangles):
        raise KernelError(Stage.STL, "the mesh is finer than single precision can hold")
    return vertices, triangles
