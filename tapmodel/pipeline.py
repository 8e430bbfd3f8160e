"""One run from the design to the files: the only place that knows the order of the rooms.

It runs in a process of its own (see `tapmodel.workshop`), because it loads the kernel.
"""

import json
import resource
import sys
import time
from collections.abc import Callable
from dataclasses import asdict
from pathlib import Path
from typing import Any

from tapmodel import precision
from tapmodel.checks.proof import MeshProof, ModelProof
from tapmodel.checks.verdict import FOREIGN, differences, faults
from tapmodel.checks.verify import prove_mesh, prove_solid
from tapmodel.design.tap_design import TapDesign
from tapmodel.errors import InputError, KernelError
from tapmodel.export.dxf import write_profile_dxf, write_section_dxf
from tapmodel.export.formats import Format
from tapmodel.export.glb import write_glb
from tapmodel.export.manifest import file_record
from tapmodel.export.read_back import MeshContent, read_3mf, read_glb, read_stl
from tapmodel.export.read_back_step import prove_step
from tapmodel.export.step import write_step
from tapmodel.export.stl import write_stl
from tapmodel.export.threemf import write_3mf
from tapmodel.geometry.build import build_solid
from tapmodel.geometry.mesh import tessellate
from tapmodel.geometry.step_file import read_step_text
from tapmodel.geometry.topology import Solid
from tapmodel.geometry.triangles import Mesh
from tapmodel.record import SIMPLIFICATIONS, full_record, with_files
from tapmodel.report.page.solid import Model
from tapmodel.report.page.write import PageContent, write_page
from tapmodel.report.papers import stills, write_papers
from tapmodel.report.pictures.catalogue import draw_all
from tapmodel.report.sections import proof as proof_section
from tapmodel.wish import Wish

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


def make(
    design: TapDesign,
    folder: Path,
    wish: Wish,
    tell: Told = lambda _stage: None,
) -> dict[str, Any]:
    """Build, prove, write and read back one tap.

    Args:
        design: every number of the tap.
        folder: an empty folder that the files are written to.
        wish: the files wanted beside pictures and record.
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
    chord = precision.mesh_chord(design.thread.pitch, design.thread.major)
    mesh = tessellate(solid, chord)
    mesh_proof = prove_mesh(mesh, chord)
    wrong = faults(proof, mesh_proof)
    if wrong:
        raise KernelError("proof", "; ".join(wrong))
    clock.stage("files")
    _write(design, folder, wish.formats, (solid, mesh))
    clock.stage("read back")
    _read_back(folder / design.name, wish.formats, solid, mesh_proof)
    clock.stage("pictures")
    pictures = draw_all(design, mesh, folder)
    clock.stage("papers")
    _, drawings = write_papers(design, folder, wish.look)
    content = PageContent(
        drawings,
        Model(mesh.vertices, mesh.triangles, f"Proved model, chord {chord:g} mm"),
        stills(design, pictures),
        proof_section.section(proof, mesh_proof, SIMPLIFICATIONS),
    )
    write_page(folder / f"{design.name}.html", design, content, wish.look.units)
    clock.stage("record")
    record = full_record(design, proof, mesh_proof, clock.seconds, _peak_memory_mb())
    files = [file_record(path, folder) for path in sorted(folder.rglob("*")) if path.is_file()]
    record = with_files(record, files)
    text = json.dumps(record, indent=1, allow_nan=False)
    (folder / "record.json").write_text(text + "\n", encoding="utf-8")
    return record


def inspect(design: TapDesign, file: Path, tell: Told = lambda _stage: None) -> dict[str, Any]:
    """Compare the solid in a STEP file with the design.

    Returns:
        What was measured, and `differences`: every way in which it is not the designed tap.

    Raises:
        InputError: when the file does not hold one solid.
    """
    tell("read back")
    try:
        solids = read_step_text(file)
    except KernelError as error:
        raise InputError("FILE", str(file), f"a STEP file ({error.what})") from None
    if len(solids) != 1:
        raise InputError("FILE", f"{file}: {len(solids)} solids", "a STEP file of one solid")
    tell("proof")
    proof = prove_solid(design, solids[0])
    return asdict(proof) | {"differences": differences(proof, FOREIGN)}


def _write(
    design: TapDesign, folder: Path, formats: tuple[Format, ...], model: tuple[Solid, Mesh]
) -> None:
    solid, mesh = model
    name, stem = design.name, folder / design.name
    writers: dict[Format, Callable[[], None]] = {
        Format.STEP: lambda: write_step(solid, stem.with_name(f"{name}.step"), name),
        Format.STL: lambda: write_stl(mesh, stem.with_name(f"{name}.stl")),
        Format.THREEMF: lambda: write_3mf(mesh, stem.with_name(f"{name}.3mf"), name),
        Format.GLB: lambda: write_glb(mesh, stem.with_name(f"{name}.glb"), name),
        Format.DXF: lambda: _write_dxf(design, stem),
    }
    for wanted in formats:
        writers[wanted]()


def _write_dxf(design: TapDesign, stem: Path) -> None:
    write_section_dxf(design, stem.with_name(f"{design.name}-section.dxf"))
    write_profile_dxf(design, stem.with_name(f"{design.name}-profile.dxf"))


def _read_back(stem: Path, formats: tuple[Format, ...], solid: Solid, mesh: MeshProof) -> None:
    readers: dict[Format, Callable[[Path], MeshContent]] = {
        Format.STL: read_stl,
        Format.THREEMF: read_3mf,
        Format.GLB: read_glb,
    }
    for wanted in formats:
        path = stem.with_name(f"{stem.name}.{wanted}")
        if wanted is Format.STEP:
            prove_step(path, solid)
        elif wanted in readers:
            _judge_mesh_file(wanted, readers[wanted](path), mesh)


def _judge_mesh_file(kind: Format, content: MeshContent, mesh: MeshProof) -> None:
    if not content.watertight or content.genus != 0 or content.parts != 1:
        raise KernelError("read back", f"the {kind} file is not one closed body: {content}")
    if abs(content.volume / mesh.volume - 1) > precision.STL_VOLUME:
        raise KernelError("read back", f"the {kind} file's volume is {content.volume:.6f} mm³")


def _peak_memory_mb() -> float:
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    # Linux counts in kB, macOS in bytes.
    return peak / (1e6 if sys.platform == "darwin" else 1e3)
