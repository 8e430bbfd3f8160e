"""Files of triangles read back and measured, before anyone is told that they are good."""

from dataclasses import dataclass
from pathlib import Path

import numpy as np
import trimesh

from tapmodel.checks.proof.mesh_report import check_mesh
from tapmodel.errors import KernelError
from tapmodel.export.mesh.glb_reader import read_glb_part
from tapmodel.export.mesh.threemf_reader import NamedTriangles, read_3mf_part
from tapmodel.stages import Stage


@dataclass(frozen=True, slots=True)
class MeshContent:
    """What a file of triangles holds.

    Attributes:
        name: of the part, empty where the format has none.
        size: extent along the tap's x, y and z [mm].
        volume: enclosed [mm³].
        triangles: how many.
        watertight: whether every side joins two triangles and all look outwards.
        genus: through holes; of meaning only when watertight.
        parts: bodies without contact.
    """

    name: str
    size: tuple[float, float, float]
    volume: float
    triangles: int
    watertight: bool
    genus: int
    parts: int


def read_stl(path: Path) -> MeshContent:
    """Measure an STL file; corners are joined where they are equal to the last bit.

    Raises:
        KernelError: when it holds no facets.
    """
    # trimesh leaves the types of its options open.
    mesh = trimesh.load_mesh(  # pyright: ignore[reportUnknownMemberType]
        path, file_type="stl", process=False
    )
    mesh.merge_vertices(digits_vertex=9)
    return _measured(path, NamedTriangles("", mesh.vertices, mesh.faces))


def read_3mf(path: Path) -> MeshContent:
    """Measure a 3MF file as it stands.

    Raises:
        KernelError: when it is not a 3MF file of one part in millimetres.
    """
    return _measured(path, read_3mf_part(path))


def read_glb(path: Path) -> MeshContent:
    """Measure a GLB file as it stands, turned back into the tap's frame and unit.

    Raises:
        KernelError: when it is not a GLB file of one part.
    """
    return _measured(path, read_glb_part(path))


def _measured(path: Path, part: NamedTriangles) -> MeshContent:
    if len(part.triangles) == 0:
        raise KernelError(Stage.READ_BACK, f"{path} holds no facets")
    report = check_mesh(part.vertices, part.triangles)
    x, y, z = np.ptp(part.vertices, axis=0).tolist()
    return MeshContent(
        name=part.name,
        size=(x, y, z),
        volume=report.volume,
        triangles=report.triangles,
        watertight=report.watertight,
        genus=report.genus,
        parts=report.parts,
    )
