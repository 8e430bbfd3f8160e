"""Time and size of the solid, and how they grow with turns and flutes.

    python tests/benchmarks/solid.py

The reference is M20x1.25, 25 turns, 5 flutes, con-eccentric thread relief, relieved plug chamfer,
neck, shank and square.
"""

import tempfile
import time
from pathlib import Path

import cadquery as cq

from tapmodel.design.design import design_tap
from tapmodel.design.tap_design import TapDesign
from tapmodel.export.step import write_step
from tapmodel.geometry.build import build_solid
from tapmodel.geometry.measure import is_valid
from tapmodel.spec.job_file import checked

TURNS, FLUTES = 25, 5


def reference(turns: int, flutes: int) -> TapDesign:
    """The reference tap with other numbers of turns and flutes."""
    length = 1.25 * turns
    job = {
        "designation": "M20x1.25",
        "flutes": {"count": flutes},
        "relief": {"thread": {"kind": "con-eccentric", "applies_to": "thread"}},
        "blank": {"thread_length": length, "neck_diameter": 18.0, "neck_length": 4.0}
        | {"overall_length": length + 80},
    }
    return design_tap(checked(job))


def ours(design: TapDesign) -> tuple[float, cq.Solid]:
    """Seconds for the whole solid, checked for validity, and the solid."""
    began = time.perf_counter()
    solid = build_solid(design)
    assert is_valid(solid)
    return time.perf_counter() - began, solid


def main() -> None:
    """Print the time of the reference, then how time and size grow."""
    design = reference(TURNS, FLUTES)
    ours(design)
    seconds, _ = ours(design)
    print(f"whole tap, verified valid: {seconds:.2f} s")
    print("turns flutes seconds  s/land-tooth  STEP kB  kB/land-tooth")
    with tempfile.TemporaryDirectory() as folder:
        for turns in (30, 60, 120):
            for flutes in (3, 6):
                teeth = turns * flutes
                seconds, solid = ours(reference(turns, flutes))
                path = Path(folder) / "tap.step"
                write_step(solid, path, "tap")
                size = path.stat().st_size / 1000
                row = f"{turns:5} {flutes:6} {seconds:7.2f} {seconds / teeth:13.4f}"
                print(f"{row} {size:8.0f} {size / teeth:14.1f}")


if __name__ == "__main__":
    main()
