"""The exact solid for CAM and CAD programs."""

from pathlib import Path

from tapmodel.export.atomic import whole_file
from tapmodel.export.step_text import compacted
from tapmodel.geometry.step_file import write_step_text
from tapmodel.geometry.topology import Solid


def write_step(solid: Solid, path: Path, name: str) -> None:
    """Write one solid as a STEP file of one part: AP214, mm, exact surfaces.

    Args:
        solid: the solid.
        path: of the file.
        name: of the part, as a CAD program shows it.

    Raises:
        InputError: when nothing can be written there.
        KernelError: when the kernel refuses.
    """
    with whole_file(path) as draft:
        # The kernel says only that it failed; the operating system says why.
        draft.touch()
        write_step_text(solid, draft, name)
        draft.write_text(compacted(draft.read_text("ascii")), "ascii")
