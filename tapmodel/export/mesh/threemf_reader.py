"""A reader for our own 3MF files that shares no code with the library that wrote them."""

import zipfile
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree as ET

import numpy as np
from numpy.typing import NDArray

from tapmodel.errors import KernelError
from tapmodel.stages import Stage

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]

_CORE = "{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}"
_MODEL = "3D/3dmodel.model"


class NamedTriangles(NamedTuple):
    """Name of the part, corners (n, 3) [mm] and triangles (m, 3) of a file."""

    name: str
    vertices: Floats
    triangles: Indices


def read_3mf_part(path: Path) -> NamedTriangles:
    """The only part of a 3MF file.

    Args:
        path: of the file.

    Returns:
        The part as it stands in the file; nothing is joined or repaired.

    Raises:
        KernelError: when it is not a 3MF file of one part in millimetres, built where it lies.
    """
    try:
        with zipfile.ZipFile(path) as package:
            # A file of our own that was written a moment ago.
            model = ET.fromstring(package.read(_MODEL))  # noqa: S314
    except (zipfile.BadZipFile, KeyError, ET.ParseError) as error:
        raise KernelError(Stage.THREE_MF, f"{path} cannot be read: {error}") from error
    if model.get("unit") != "millimeter":
        raise KernelError(Stage.THREE_MF, f"{path} is in the unit {model.get('unit')}")
    parts = model.findall(f"{_CORE}resources/{_CORE}object")
    items = model.findall(f"{_CORE}build/{_CORE}item")
    if len(parts) != 1 or [item.get("objectid") for item in items] != [parts[0].get("id")]:
        raise KernelError(
            Stage.THREE_MF, f"{path} holds {len(parts)} parts and builds {len(items)}"
        )
    if items[0].get("transform") is not None:
        raise KernelError(Stage.THREE_MF, f"{path} moves its part")
    return NamedTriangles(
        parts[0].get("name", ""),
        np.array(_rows(parts[0], "vertex", ("x", "y", "z")), dtype=np.float64),
        np.array(_rows(parts[0], "triangle", ("v1", "v2", "v3")), dtype=np.intp),
    )


def _rows(part: ET.Element, tag: str, keys: tuple[str, str, str]) -> list[list[str]]:
    return [[element.attrib[key] for key in keys] for element in part.iter(_CORE + tag)]
