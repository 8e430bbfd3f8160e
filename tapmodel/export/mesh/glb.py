"""The mesh for viewers: binary glTF, in metres and with Y up, as that format demands."""

from pathlib import Path
from typing import cast

import numpy as np
import trimesh
from numpy.typing import NDArray

from tapmodel.export.atomic import write_whole
from tapmodel.export.mesh.stl import single_precision
from tapmodel.geometry.triangles import Mesh

_METRES = 0.001  # in a millimetre

# The viewer's axes as rows in the tap's: x stays, the tap's axis is y, and z comes forward.
_Y_UP: NDArray[np.float64] = np.array([[1.0, 0, 0], [0, 0, 1], [0, -1, 0]])


def write_glb(mesh: Mesh, path: Path, name: str) -> None:
    """Write a mesh as a GLB file of one part, the tap standing on its front.

    Args:
        mesh: closed [mm].
        path: of the file.
        name: of the part, as a viewer shows it.

    Raises:
        InputError: when nothing can be written there.
        KernelError: when the mesh does not survive the format's single precision.
    """
    turned = Mesh(mesh.vertices @ _Y_UP.T * _METRES, mesh.triangles, mesh.face_of_triangle)
    vertices, triangles = single_precision(turned)
    body = trimesh.Trimesh(vertices, triangles, process=False)
    # trimesh leaves the types of its options open.
    scene = trimesh.Scene()
    scene.add_geometry(  # pyright: ignore[reportUnknownMemberType]
        body, node_name=name, geom_name=name
    )
    content = cast(
        "bytes",
        scene.export(file_type="glb"),  # pyright: ignore[reportUnknownMemberType]
    )
    write_whole(path, content)
