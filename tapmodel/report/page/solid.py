"""A mesh packed for the page: 16-bit places over its box, normals of a byte, sharp edges."""

# pyright: reportUnknownMemberType=false, reportUnknownVariableType=false
# pyright: reportUnknownArgumentType=false
# The mesh library leaves the types of its arrays open.

import base64
import gzip
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tapmodel.report.pictures.creases import SHARP, creases

Floats = NDArray[np.float64]
Integers = NDArray[np.int64]

_STEPS = 65535


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


def packed_model(model: Model) -> dict[str, Any]:
    """The mesh as base64 of gzip, and what is needed to unpack it.

    Places are `low + number * step` [mm]; to look at, not to measure.
    """
    low, high = model.vertices.min(axis=0), model.vertices.max(axis=0)
    step = (high - low) / _STEPS
    corners, normals, numbers = _smoothed(model)
    places = np.round((corners - low) / step).astype("<u2")
    edges = creases(model.vertices, model.triangles, SHARP)
    ends = np.round((model.vertices[edges.ravel()] - low) / step).astype("<u2")
    parts = {
        "places": places.tobytes(),
        "normals": np.round(normals * 127).astype("i1").tobytes(),
        "triangles": numbers.astype("<u4").tobytes(),
        "edges": ends.tobytes(),
    }
    return {
        "caption": model.caption,
        "low": low.tolist(),
        "step": step.tolist(),
        "lengths": {name: len(data) for name, data in parts.items()},
        "data": _squeezed(b"".join(parts.values())),
    }


def squeezed_text(text: str) -> str:
    """A text as base64 of gzip."""
    return _squeezed(text.encode())


def _squeezed(data: bytes) -> str:
    return base64.b64encode(gzip.compress(data, 9, mtime=0)).decode()


def _smoothed(model: Model) -> tuple[Floats, Floats, Integers]:
    """Vertices split along sharp edges, their normals, and the triangles between them."""
    import trimesh  # noqa: PLC0415  (a page without a model does without)

    mesh = trimesh.Trimesh(model.vertices, model.triangles, process=False)
    smooth = trimesh.graph.smooth_shade(mesh, angle=float(np.radians(SHARP)))
    return (
        np.asarray(smooth.vertices, dtype=np.float64),
        np.asarray(smooth.vertex_normals, dtype=np.float64),
        np.asarray(smooth.faces, dtype=np.int64),
    )
