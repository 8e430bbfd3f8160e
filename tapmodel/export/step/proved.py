"""The STEP file of a run: written, read back and held to its solid."""

from pathlib import Path

from tapmodel.export.step.read_back import prove_step
from tapmodel.export.step.write import write_step
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.stages import OnStage, Stage


def deliver_step(solid: Solid, path: Path, name: str, stage: OnStage) -> None:
    """Write one solid as a STEP file and prove the file.

    Args:
        solid: the solid.
        path: of the file.
        name: of the part.
        stage: told each stage as it begins.

    Raises:
        InputError: when nothing can be written there.
        KernelError: when the file fails its proof.
    """
    stage(Stage.STEP_FILE)
    write_step(solid, path, name)
    stage(Stage.READ_BACK)
    prove_step(path, solid)
