"""Time and size of the solid, beside the plain boolean route measured in the same run.

    python tests/benchmarks/solid.py

The reference is M20x1.25, 25 turns, 5 flutes, con-eccentric thread relief, relieved plug chamfer,
neck, shank and square; the plain route makes its thread and flutes only (see `plain_route.py`).
Processor time stands beside the clock's, because it is steadier on a busy machine.
"""

import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import cadquery as cq
from plain_route import PlainRod

from tapmodel.design.design import design_tap
from tapmodel.design.tap_design import TapDesign
from tapmodel.export.step import write_step
from tapmodel.geometry.build import build_solid
from tapmodel.geometry.measure import is_valid, volume
from tapmodel.spec.job_file import checked

TURNS, FLUTES = 25, 5
SIZES = ((TURNS, FLUTES), (30, 3), (60, 3), (120, 3), (30, 6), (60, 6), (120, 6))
ROUNDS = 3
BAR = 0.35


class Timed(NamedTuple):
    """A solid, and the seconds it took by the clock and of the processors."""

    solid: cq.Solid
    wall: float
    cpu: float


def reference(turns: int, flutes: int) -> TapDesign:
    """The reference tap with other numbers of turns and flutes."""
    length = 1.25 * turns
    job = {
        "designation": "M20x1.25",
        "flutes": {"count": flutes},
        "chamfer": {"form": "plug"},
        "relief": {"thread": {"kind": "con-eccentric", "applies_to": "thread"}},
        "blank": {"thread_length": length, "neck_diameter": 18.0, "neck_length": 4.0}
        | {"overall_length": length + 80},
    }
    return design_tap(checked(job))


def timed(make: Callable[[], cq.Solid]) -> Timed:
    """Make a solid and have the kernel check it, both timed."""
    wall, cpu = time.perf_counter(), time.process_time()
    solid = make()
    if not is_valid(solid):
        raise ValueError("the kernel does not take the solid for valid")
    return Timed(solid, time.perf_counter() - wall, time.process_time() - cpu)


def best(design: TapDesign) -> Timed:
    """The whole tap, quickest of some rounds; the first also loads what the later ones share."""
    return min((timed(lambda: build_solid(design)) for _ in range(ROUNDS)), key=lambda t: t.cpu)


def compare() -> None:
    """Print times of the whole tap and of the plain route, and their ratio."""
    design = reference(TURNS, FLUTES)
    first, whole = timed(lambda: build_solid(design)), best(design)
    print(f"whole tap, first time:      {first.wall:6.2f} s, processor {first.cpu:6.2f} s")
    print(f"whole tap, best of {ROUNDS}:       {whole.wall:6.2f} s, processor {whole.cpu:6.2f} s")
    rod = PlainRod(design, TURNS)
    plain = timed(rod.fluted)
    print(f"plain thread and flutes:    {plain.wall:6.2f} s, processor {plain.cpu:6.2f} s")
    off = volume(plain.solid) / rod.fluted_volume() - 1
    if abs(off) > 1e-6:
        raise ValueError(f"the plain route is off by {off:.1e} of its volume")
    print(f"its volume is off by {off:+.1e} of the formula's")
    wall, cpu = whole.wall / plain.wall, whole.cpu / plain.cpu
    print(f"ratio {wall:.3f}, processor {cpu:.3f} (bar {BAR})")


def growth() -> None:
    """Print how time and size of the whole tap grow with turns and flutes."""
    print("turns flutes seconds processor ms/land-tooth  STEP kB  kB/land-tooth")
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "tap.step"
        for turns, flutes in SIZES:
            teeth = turns * flutes
            whole = best(reference(turns, flutes))
            write_step(whole.solid, path, "tap")
            size = path.stat().st_size / 1000
            row = f"{turns:5} {flutes:6} {whole.wall:7.2f} {whole.cpu:9.2f}"
            print(f"{row} {whole.cpu / teeth * 1000:13.2f} {size:8.0f} {size / teeth:14.1f}")


if __name__ == "__main__":
    compare()
    growth()
