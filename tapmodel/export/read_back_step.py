"""The STEP file read back and measured, before anyone is told that it is good."""

from dataclasses import dataclass
from pathlib import Path

# Before the modelling package, which loads the same library.
import tapmodel.export.dxf_library  # noqa: F401  # pyright: ignore[reportUnusedImport]

# isort: split
from tapmodel import precision
from tapmodel.checks.proof import ModelProof
from tapmodel.errors import KernelError
from tapmodel.geometry.measure import counts, is_valid, volume
from tapmodel.geometry.step_file import read_step_text

# Asked of the kernel's volume; on the surfaces of taps it then gives some 1e-8, and to ask for
# 1e-5 would cost three times as much.
_PRECISION = 1e-3


@dataclass(frozen=True, slots=True)
class StepContent:
    """What a STEP file holds: volume of all its solids [mm³], their number, faces, soundness."""

    volume: float
    solids: int
    faces: int
    valid: bool


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


def judge_step(step: StepContent, proof: ModelProof) -> None:
    """Hold what a STEP file was found to hold to the solid that was proved.

    Raises:
        KernelError: when it is something else.
    """
    if step.solids != 1 or not step.valid or step.faces != proof.faces:
        raise KernelError("read back", f"the STEP file holds something else: {step}")
    if abs(step.volume / proof.volume - 1) > precision.STEP_VOLUME:
        raise KernelError("read back", f"the STEP file's volume is {step.volume:.6f} mm³")
