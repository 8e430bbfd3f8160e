"""The files of triangles of a run, written and read back."""

from collections.abc import Callable
from pathlib import Path

from tapmodel import precision
from tapmodel.checks.proof.record import MeshProof
from tapmodel.errors import KernelError
from tapmodel.export.formats import Format
from tapmodel.export.mesh.glb import write_glb
from tapmodel.export.mesh.read_back import MeshContent, read_3mf, read_glb, read_stl
from tapmodel.export.mesh.stl import write_stl
from tapmodel.export.mesh.threemf import write_3mf
from tapmodel.geometry.triangles import Mesh
from tapmodel.run.wish import Order
from tapmodel.stages import Stage

_NAMED_WRITERS: dict[Format, Callable[[Mesh, Path, str], None]] = {
    Format.THREEMF: write_3mf,
    Format.GLB: write_glb,
}
_READERS: dict[Format, Callable[[Path], MeshContent]] = {
    Format.STL: read_stl,
    Format.THREEMF: read_3mf,
    Format.GLB: read_glb,
}


def write(order: Order, mesh: Mesh, proof: MeshProof) -> None:
    """Write the files of triangles wanted, read each back, and hold it to the mesh.

    Raises:
        InputError: when nothing can be written there.
        KernelError: when a file holds something else.
    """
    for kind in (kind for kind in order.wish.formats if kind in _READERS):
        path = order.file(f".{kind}")
        if kind is Format.STL:
            write_stl(mesh, path)
        else:
            _NAMED_WRITERS[kind](mesh, path, order.design.name)
        _judge(kind, _READERS[kind](path), proof)


def _judge(kind: Format, content: MeshContent, mesh: MeshProof) -> None:
    if not content.watertight or content.genus != 0 or content.parts != 1:
        raise KernelError(Stage.READ_BACK, f"the {kind} file is not one closed body: {content}")
    if abs(content.volume / mesh.volume - 1) > precision.STL_VOLUME:
        raise KernelError(Stage.READ_BACK, f"the {kind} file's volume is {content.volume:.6f} mm³")
