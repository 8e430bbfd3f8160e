"""Files read back and measured, before anyone is told that they are good."""

from dataclasses import dataclass
from pathlib import Path

import trimesh

from tapmodel.errors import KernelError
from tapmodel.geometry.measure import counts, is_valid, volume
from tapmodel.geometry.step_file import read_step_text

# Asked of the kernel's volume; it gives some 1e-9, and 1e-7 would cost half as much time again.
_PRECISION = 1e-5


@dataclass(frozen=True, slots=True)
class StepContent:
    """What a STEP file holds: volume of all its solids [mm³], their number, faces, soundness."""

    volume: float
    solids: int
    faces: int
    valid: bool


@dataclass(frozen=True, slots=True)
class StlContent:
    """What an STL file holds: enclosed volume [mm³], facets, whether closed, and the genus."""

    volume: float
    triangles: int
    watertight: bool
    genus: int


def read_step(path: Path) -> StepContent:
    """Measure a STEP file.

    Raises:
        KernelError: when it cannot be read.
    """
    solids = read_step_text(path)
    return StepContent(
        volume=sum(volume(solid, _PRECISION) for solid in solids),
        solids=len(solids),
        faces=sum(counts(solid).faces for solid in solids),
        valid=all(is_valid(solid) for solid in solids),
    )


def read_stl(path: Path) -> StlContent:
    """Measure an STL file; corners are joined where they are equal to the last bit.

    Raises:
        KernelError: when it holds no facets.
    """
    # trimesh leaves the types of its options open.
    mesh = trimesh.load_mesh(  # pyright: ignore[reportUnknownMemberType]
        path, file_type="stl", process=False
    )
    mesh.merge_vertices(digits_vertex=9)
    if len(mesh.faces) == 0:
        raise KernelError("STL", f"{path} holds no facets")
    return StlContent(
        volume=float(mesh.volume),
        triangles=len(mesh.faces),
        watertight=bool(mesh.is_watertight and mesh.is_winding_consistent),
        genus=int(mesh.body_count) - int(mesh.euler_number) // 2,
    )
