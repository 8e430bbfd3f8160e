"""The mesh, and the solid as bytes, on their way from the kernel's process to the desk's."""

import secrets
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from tapmodel.export.refusal import refused
from tapmodel.geometry.triangles import Mesh

_PARTS = ("vertices", "triangles", "face_of_triangle")
_PLACE = "a place where a file can be written"


@dataclass(frozen=True, slots=True)
class MeshFile:
    """Where a mesh lies, and how far its triangles may stand off the solid [mm].

    It lies in a file, because the sender of so long a message waits until it is heard.
    """

    path: Path
    chord: float


@dataclass(frozen=True, slots=True)
class SolidFile:
    """Where a solid lies, as bytes."""

    path: Path


def put_down_solid(content: bytes, folder: Path) -> SolidFile:
    """Put a solid down in `folder`, beside others that nobody took yet.

    Raises:
        InputError: when it cannot be written there.
    """
    path = folder / f".solid-{secrets.token_hex(8)}.bin"
    try:
        path.write_bytes(content)
    except OSError as error:
        raise refused("output file", path, _PLACE, error) from error
    return SolidFile(path)


def take_solid(file: SolidFile) -> bytes:
    """The solid that was put down; its file is gone afterwards."""
    content = file.path.read_bytes()
    file.path.unlink()
    return content


def put_down(mesh: Mesh, chord: float, folder: Path) -> MeshFile:
    """Put a mesh down in `folder`.

    Raises:
        InputError: when it cannot be written there.
    """
    path = folder / ".mesh.npz"
    try:
        np.savez(path, **{part: getattr(mesh, part) for part in _PARTS})
    except OSError as error:
        raise refused("output file", path, _PLACE, error) from error
    return MeshFile(path, chord)


def take(file: MeshFile) -> Mesh:
    """The mesh that was put down; its file is gone afterwards."""
    with np.load(file.path) as parts:
        mesh = Mesh(*(parts[part] for part in _PARTS))
    file.path.unlink()
    return mesh
