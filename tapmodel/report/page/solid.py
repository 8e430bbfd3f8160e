"""A mesh packed for the page: 16-bit places over its box, normals of the surfaces it stands for."""

import base64
import gzip
import json
import struct
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tapmodel.designing.record import TapDesign
from tapmodel.geometry.smooth.smoothed import Smoothed, smoothed
from tapmodel.report.units import Units
from tapmodel.report.view.model.model import model_view

Floats = NDArray[np.float64]
Integers = NDArray[np.int64]

_STEPS = 65535
_HALF = 32767
_WORD = 4
_SHORT = 1 << 16


@dataclass(frozen=True, slots=True)
class Model:
    """What is turned on the page.

    Attributes:
        vertices: (n, 3) [mm].
        triangles: (m, 3) vertex numbers.
        caption: what the mesh is, and whether it is proved.
    """

    vertices: Floats
    triangles: Integers
    caption: str


def packed_model(model: Model, design: TapDesign, units: Units = Units.MM) -> dict[str, Any]:
    """The mesh as base64 of gzip, and what is needed to unpack and to show it.

    Places are `low + number * step` [mm]; to look at, not to measure.
    """
    head, data = _parts(model, design, units)
    return head | {"data": _squeezed(data)}


def sent_model(model: Model, design: TapDesign, units: Units) -> bytes:
    """The same as bytes: length of a head in JSON, that head, and the arrays behind it.

    The length is of four bytes, the lowest first; the head ends in blanks so that the arrays
    begin at a multiple of four.
    """
    head, data = _parts(model, design, units)
    told = json.dumps(head).encode()
    told += b" " * (-len(told) % _WORD)
    return struct.pack("<I", len(told)) + told + data


def squeezed_text(text: str) -> str:
    """A text as base64 of gzip."""
    return _squeezed(text.encode())


def _squeezed(data: bytes) -> str:
    return base64.b64encode(gzip.compress(data, 9, mtime=0)).decode()


def _parts(model: Model, design: TapDesign, units: Units) -> tuple[dict[str, Any], bytes]:
    mesh = smoothed(design.tap, model.vertices, model.triangles)
    low, high = mesh.vertices.min(axis=0), mesh.vertices.max(axis=0)
    step = (high - low) / _STEPS
    places = np.rint((mesh.vertices - low) / step).astype("<u2")
    parts = {
        "places": places.tobytes(),
        "normals": _folded(mesh.normals).tobytes(),
        "triangles": _numbers(mesh.triangles, len(places)),
        "edges": _numbers(mesh.edges, len(places)),
        "kinds": mesh.kinds.tobytes(),
    }
    head = {
        "caption": model.caption,
        "low": low.tolist(),
        "step": step.tolist(),
        **_counts(mesh),
        "lengths": {name: len(data) for name, data in parts.items()},
        **asdict(model_view(design, units)),
    }
    return head, b"".join(data + bytes(-len(data) % _WORD) for data in parts.values())


def _counts(mesh: Smoothed) -> dict[str, int]:
    return {
        "vertices": len(mesh.vertices),
        "triangles": len(mesh.triangles),
        "edges": len(mesh.edges),
        "fine": mesh.fine,
    }


def _numbers(numbers: NDArray[np.intp], count: int) -> bytes:
    """Vertex numbers, of two bytes where those do."""
    return numbers.astype("<u2" if count <= _SHORT else "<u4").tobytes()


def _folded(normals: Floats) -> NDArray[np.int16]:
    """Directions on the square that an octahedron unfolds to, (n, 2) of 16 bits."""
    flat = normals / np.abs(normals).sum(axis=1, keepdims=True)
    x, y, z = flat.T
    turned = (1 - np.abs(flat[:, 1::-1])) * np.where(flat[:, :2] < 0, -1.0, 1.0)
    square = np.where((z < 0)[:, None], turned, np.stack([x, y], axis=1))
    return np.rint(square * _HALF).astype("<i2")
