"""The files of triangles of a run, written and read back."""

from collections.abc import Callable
from pathlib import Path

from tapmodel import precision
from tapmodel.checks.proof import MeshProof
from tapmodel.errors import KernelError
from tapmodel.export.formats import Format
from tapmodel.export.glb import write_glb
from tapmodel.export.read_back import MeshContent, read_3mf, read_glb, read_stl
from tapmodel.export.stl import write_stl
from tapmodel.export.threemf import write_3mf
from tapmodel.geometry.triangles import Mesh
from tapmodel.wish import Order


def write(order: Order, mesh: Mesh, proof: MeshProof) -> None:
    """Write the files of triangles wanted, read each back, and hold it to the mesh.

    Raises:
        InputError: when nothing can be written there.
        KernelError: when a file holds something else.
    """
    name = order.design.name
    writers: dict[Format, Callable[[Path], None]] = {
        Format.STL: lambda path: write_stl(mesh, path),
        Format.THREEMF: lambda path: write_3mf(mesh, path, name),
        Format.GLB: lambda path: write_glb(mesh, path, name),
    }
    readers: dict[Format, Callable[[Path], MeshContent]] = {
        Format.STL: read_stl,
        Format.THREEMF: read_3mf,
        Format.GLB: read_glb,
    }
    for kind, writer in writers.items():
        if kind in order.wish.formats:
            path = order.file(f".{kind}")
            writer(path)
            _judge(kind, readers[kind](path), proof)


def _judge(kind: Format, content: MeshContent, mesh: MeshProof) -> None:
    if not content.watertight or content.genus != 0 or content.parts != 1:
        raise KernelError("read back", f"the {kind} file is not one closed body: {content}")
    if abs(content.volume / mesh.volume - 1) > precision.STL_VOLUME:
        raise KernelError("read back", f"the {kind} file's volume is {content.volume:.6f} mm³")
