"""The STEP file read back and held to the solid, before anyone is told that it is good."""

from pathlib import Path

from tapmodel import precision
from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.step.likeness import departure
from tapmodel.geometry.kernel.step.read import read_plain
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.stages import Stage


def prove_step(path: Path, solid: Solid) -> float:
    """Prove that a STEP file holds `solid`, the whole of it and nothing else.

    The kernel's reader, which shares nothing with the writer, takes the text for well formed and
    finds one solid. Every edge, every face's surface and side, and which faces use which edges in
    which sense are then held to the solid that was proved: so the file's solid is closed as that
    one, has its faces, and its volume within its area times the distance found. A volume measured
    on the file would say less, to 1e-8 of it, and cost five times as much.

    Args:
        path: of the file, in mm.
        solid: what was written.

    Returns:
        The largest distance between any part of the two [mm].

    Raises:
        KernelError: when the file cannot be read or holds something else.
    """
    found = read_plain(path)
    if len(found) != 1:
        raise KernelError(Stage.READ_BACK, f"{path} holds {len(found)} solids instead of one")
    try:
        apart = departure(solid, found[0])
    except KernelError as error:
        raise KernelError(Stage.READ_BACK, f"{path} holds another solid: {error.what}") from None
    if not apart < precision.STEP_PART:
        raise KernelError(Stage.READ_BACK, f"a part in {path} lies {apart:.1e} mm off")
    return apart
