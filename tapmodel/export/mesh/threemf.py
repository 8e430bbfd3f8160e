"""The mesh for slicers, with its unit and its name: 3MF."""

# pyright: reportMissingTypeStubs=false, reportUnknownVariableType=false
# pyright: reportUnknownMemberType=false, reportUnknownArgumentType=false
# pyright: reportOptionalMemberAccess=false
# The library's binding carries no types; only its own names are let off.

import hashlib
import uuid
from pathlib import Path
from typing import Any

import lib3mf
import numpy as np
from numpy.typing import NDArray

from tapmodel.errors import KernelError
from tapmodel.export.atomic import write_whole
from tapmodel.export.mesh.stl import single_precision
from tapmodel.geometry.triangles import Mesh
from tapmodel.stages import Stage

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]


def write_3mf(mesh: Mesh, path: Path, name: str) -> None:
    """Write a mesh as a 3MF file of one part [mm].

    The same mesh and name give the same bytes.

    Args:
        mesh: closed.
        path: of the file.
        name: of the part, as a slicer shows it.

    Raises:
        InputError: when nothing can be written there.
        KernelError: when the mesh does not survive single precision, or the library refuses it.
    """
    vertices, triangles = single_precision(mesh)
    try:
        writer = _model(vertices, triangles, name).QueryWriter("3mf")
        writer.SetStrictModeActive(True)
        content = bytes(writer.WriteToBuffer())
    except lib3mf.ELib3MFException as error:
        raise KernelError(Stage.THREE_MF, f"{path} could not be made: {error}") from error
    write_whole(path, content)


def _model(vertices: Floats, triangles: Indices, name: str) -> Any:  # noqa: ANN401  (untyped)
    wrapper = lib3mf.get_wrapper()
    model = wrapper.CreateModel()
    model.SetUnit(lib3mf.ModelUnit.MilliMeter)
    part = model.AddMeshObject()
    part.SetName(name)
    # The binding would take lists of its records; arrays of them, filled at once, are as good.
    part.SetGeometry(
        (lib3mf.Position * len(vertices)).from_buffer_copy(vertices.astype("<f4").data),
        (lib3mf.Triangle * len(triangles)).from_buffer_copy(triangles.astype("<u4").data),
    )
    if not part.IsManifoldAndOriented():
        raise KernelError(Stage.THREE_MF, "the library does not take the mesh for a closed body")
    item = model.AddBuildItem(part, wrapper.GetIdentityTransform())
    # The library would draw these at random.
    content = vertices.tobytes() + triangles.tobytes() + name.encode()
    part.SetUUID(_identity(content, "part"))
    item.SetUUID(_identity(content, "item"))
    model.SetBuildUUID(_identity(content, "build"))
    return model


def _identity(content: bytes, role: str) -> str:
    """Universally unique name of one role of one content."""
    return str(uuid.uuid5(uuid.NAMESPACE_OID, role + hashlib.sha256(content).hexdigest()))
