"""One run from the design to the files: the only place that knows the order of the rooms.

It runs in a process of its own (see `tapmodel.workshop`), because it loads the kernel.
"""

import json
import resource
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from tapmodel import precision
from tapmodel.checks.proof import MeshProof, ModelProof
from tapmodel.checks.verify import faults, prove_mesh, prove_solid
from tapmodel.design.tap_design import TapDesign
from tapmodel.errors import KernelError
from tapmodel.export.manifest import file_record
from tapmodel.export.read_back import read_step, read_stl
from tapmodel.export.step import write_step
from tapmodel.export.stl import write_stl
from tapmodel.geometry.build import build_solid
from tapmodel.geometry.mesh import Mesh, tessellate
from tapmodel.geometry.topology import Solid
from tapmodel.record import full_record, with_files
from tapmodel.report.still import draw

Told = Callable[[str], None]


class _Clock:
    """Seconds of each stage, told to a listener as it begins."""

    def __init__(self, tell: Told) -> None:
        self.seconds: dict[str, float] = {}
        self._tell, self._stage, self._since = tell, "", time.perf_counter()

    def stage(self, name: str) -> None:
        """Close the running stage and begin `name`."""
        now = time.perf_counter()
        if self._stage:
            self.seconds[self._stage] = now - self._since
        self._stage, self._since = name, now
        self._tell(name)


def make(design: TapDesign, folder: Path, tell: Told = lambda _stage: None) -> dict[str, Any]:
    """Build, prove, write and read back one tap.

    Args:
        design: every number of the tap.
        folder: an empty folder that the files are written to.
        tell: told each stage as it begins.

    Returns:
        The record, which also stands in the folder.

    Raises:
        KernelError: when the model or a file fails its proof.
    """
    clock = _Clock(tell)
    solid = build_solid(design, clock.stage)
    clock.stage("proof")
    proof = prove_solid(design, solid)
    clock.stage("mesh")
    mesh = tessellate(solid, precision.MESH_CHORD)
    mesh_proof = prove_mesh(mesh, precision.MESH_CHORD)
    wrong = faults(proof, mesh_proof)
    if wrong:
        raise KernelError("proof", "; ".join(wrong))
    clock.stage("files")
    _write(design.name, folder, solid, mesh)
    clock.stage("read back")
    _read_back(design.name, folder, proof, mesh_proof)
    clock.stage("picture")
    draw(mesh.vertices, mesh.triangles, folder / f"{design.name}.png")
    clock.stage("record")
    record = full_record(design, proof, mesh_proof, clock.seconds, _peak_memory_mb())
    files = [file_record(path, folder) for path in sorted(folder.iterdir())]
    record = with_files(record, files)
    text = json.dumps(record, indent=1, allow_nan=False)
    (folder / "record.json").write_text(text + "\n", encoding="utf-8")
    return record


def _write(name: str, folder: Path, solid: Solid, mesh: Mesh) -> None:
    write_step(solid, folder / f"{name}.step", name)
    write_stl(mesh, folder / f"{name}.stl")


def _read_back(name: str, folder: Path, proof: ModelProof, mesh: MeshProof) -> None:
    step = read_step(folder / f"{name}.step")
    if step.solids != 1 or not step.valid or step.faces != proof.faces:
        raise KernelError("read back", f"the STEP file holds something else: {step}")
    if abs(step.volume / proof.volume - 1) > precision.STEP_VOLUME:
        raise KernelError("read back", f"the STEP file's volume is {step.volume:.6f} mm³")
    stl = read_stl(folder / f"{name}.stl")
    if not stl.watertight or stl.genus != 0:
        raise KernelError("read back", f"the STL file is not one closed body: {stl}")
    if abs(stl.volume / mesh.volume - 1) > precision.STL_VOLUME:
        raise KernelError("read back", f"the STL file's volume is {stl.volume:.6f} mm³")


def _peak_memory_mb() -> float:
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    # Linux counts in kB, macOS in bytes.
    return peak / (1e6 if sys.platform == "darwin" else 1e3)
