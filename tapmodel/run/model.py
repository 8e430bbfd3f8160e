"""The order of work in the kernel's process: from the design to the proved solid and its file.

What needs no kernel is made beside it, at the desk (see `tapmodel.run.desk.work`).
"""

from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

from tapmodel import precision
from tapmodel.checks.proof.record import MeshProof, ModelProof
from tapmodel.checks.proof.solid import prove_solid
from tapmodel.checks.proof.verdict import FOREIGN, differences, faults
from tapmodel.errors import InputError, KernelError
from tapmodel.export.formats import Format
from tapmodel.export.step.proved import deliver_step
from tapmodel.geometry.kernel.build import build
from tapmodel.geometry.kernel.measure.solid import is_valid
from tapmodel.geometry.kernel.solid_bytes import to_bytes
from tapmodel.geometry.kernel.step.read import read_step_text
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.run.crew import Line
from tapmodel.run.desk.handover import put_down, put_down_solid
from tapmodel.stages import Stage

if TYPE_CHECKING:
    from tapmodel.run.wish import SolidOrder


def make(line: Line) -> tuple[ModelProof, dict[str, float]]:
    """Build and prove one tap, hand its mesh to the desk, write and read back the STEP file.

    Where the desk makes the STEP file, it is handed the solid, too, and judges whether it is valid.

    Args:
        line: on which come the order and, from the desk, the mesh's proof; before it whether the
            solid is valid, if the desk has it.

    Returns:
        What was measured on the solid, and the lengths that were moved to make it [mm].

    Raises:
        KernelError: when the model or the file fails its proof.
    """
    order: SolidOrder = line.hear()
    thread = order.tap.thread
    chord = precision.mesh_chord(thread.pitch, thread.major)
    shared = order.wish.step_at_desk

    def made(solid: Solid) -> None:
        if shared:
            line.pass_on(put_down_solid(to_bytes(solid), order.folder))

    def valid(solid: Solid) -> bool:
        return line.hear() if shared else is_valid(solid)

    built = build(order.tap, chord, line.stage, made)
    solid = built.solid
    line.pass_on(put_down(built.mesh, chord, order.folder))
    if Format.STEP in order.wish.formats and not shared:
        deliver_step(solid, order.file(".step"), order.name, line.stage)
    line.stage(Stage.PROOF)
    proof = prove_solid(order.tap, solid, built.facets, valid)
    line.pass_on(proof)
    mesh_proof: MeshProof = line.hear()
    wrong = faults(proof, mesh_proof)
    if wrong:
        raise KernelError(Stage.PROOF, "; ".join(wrong))
    return proof, asdict(built.parting) | {"mesh": built.stand_in}


def inspect(line: Line) -> dict[str, Any]:
    """Compare the solid in a STEP file with the design.

    Args:
        line: on which comes the design with the file.

    Returns:
        What was measured; `differences`, every way in which it is not the designed tap; `causes`
        of them as far as they can be established; and the `bounds` that it is held to.

    Raises:
        InputError: when the file does not hold one solid.
    """
    design, file = line.hear()
    line.stage(Stage.READ_BACK)
    solid = _only_solid(file)
    line.stage(Stage.PROOF)
    proof = prove_solid(design.tap, solid)
    wrong = differences(proof, FOREIGN)
    # Loaded only where somebody asks what is in a file.
    from tapmodel.checks.causes.causes import causes  # noqa: PLC0415

    found = asdict(causes(design.tap, solid, proof.volume)) if wrong else None
    return asdict(proof) | {"differences": wrong, "causes": found, "bounds": asdict(FOREIGN)}


def _only_solid(file: Path) -> Any:  # noqa: ANN401  (the kernel's own class)
    try:
        solids = read_step_text(file)
    except KernelError as error:
        raise InputError("FILE", str(file), f"a STEP file ({error.what})") from None
    if len(solids) != 1:
        raise InputError("FILE", f"{file}: {len(solids)} solids", "a STEP file of one solid")
    return solids[0]
