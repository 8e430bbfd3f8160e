"""A reader for our own GLB files that shares no code with the library that wrote them."""

import json
import struct
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tapmodel.errors import KernelError
from tapmodel.export.mesh.threemf_reader import NamedTriangles
from tapmodel.stages import Stage

# Source: glTF 2.0 specification, sections 4 and 3.6 (from memory).
_MAGIC, _JSON, _BINARY = 0x46546C67, 0x4E4F534A, 0x004E4942
_NUMBERS = {5121: "<u1", 5123: "<u2", 5125: "<u4", 5126: "<f4"}
_COLUMNS = {"SCALAR": 1, "VEC3": 3}
_MOVES = {"matrix", "translation", "rotation", "scale"}


def read_glb_part(path: Path) -> NamedTriangles:
    """The only part of a GLB file, in the tap's own frame and in millimetres.

    Args:
        path: of the file.

    Returns:
        The part as it stands in the file; nothing is joined or repaired.

    Raises:
        KernelError: when it is not a GLB file of one part of triangles, shown where it lies.
    """
    try:
        scene, binary = _chunks(path.read_bytes())
        (node,) = scene["nodes"]
        (shape,) = scene["meshes"]
        (primitive,) = shape["primitives"]
        corners = _array(scene, binary, primitive["attributes"]["POSITION"])
        triangles = _array(scene, binary, primitive["indices"]).reshape(-1, 3)
    except (ValueError, KeyError, struct.error) as error:
        raise KernelError(Stage.GLB, f"{path} cannot be read: {error!r}") from error
    if _MOVES & set(node) or primitive["mode"] != 4:
        raise KernelError(
            Stage.GLB, f"{path} moves its part, or shows it otherwise than in triangles"
        )
    right, up, forward = corners.astype(np.float64).T * 1000
    return NamedTriangles(
        node["name"], np.stack([right, -forward, up], axis=1), triangles.astype(np.intp)
    )


def _chunks(content: bytes) -> tuple[dict[str, Any], bytes]:
    """The description and the numbers."""
    magic, version, length, size, kind = struct.unpack_from("<5I", content)
    if (magic, version, length, kind) != (_MAGIC, 2, len(content), _JSON):
        raise ValueError("not a whole file of version 2")
    binary_size, binary_kind = struct.unpack_from("<2I", content, 20 + size)
    start = 28 + size
    if binary_kind != _BINARY or start + binary_size != length:
        raise ValueError("no numbers after the description")
    return json.loads(content[20 : 20 + size]), content[start:]


def _array(scene: dict[str, Any], binary: bytes, number: int) -> NDArray[Any]:
    accessor = scene["accessors"][number]
    view = scene["bufferViews"][accessor["bufferView"]]
    columns = _COLUMNS[accessor["type"]]
    flat = np.frombuffer(
        binary,
        dtype=_NUMBERS[accessor["componentType"]],
        count=accessor["count"] * columns,
        offset=view.get("byteOffset", 0) + accessor.get("byteOffset", 0),
    )
    return flat.reshape(-1, columns)
