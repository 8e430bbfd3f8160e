"""What a run takes, against the plain boolean route for thread and flutes alone.

    python tests/benchmarks/build.py

The plain route makes less (see `plain_route.py`) and proves, writes and draws nothing. Each runs as
a process of its own, start-up included, in turn and several times; the quickest counts. On a
machine that others use, too, a quiet moment falls on one run or another, and the median of the
rounds' own ratios is steadier; so is the ratio of processor time. The program is compiled first, as
an installer leaves it, or each run would compile it anew where Python is told to write no bytecode;
the libraries of both have theirs. The stages of the quickest run are printed, of both its
processes.
"""

import compileall
import json
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import Any, NamedTuple

from reference import FLUTES, TURNS, write_job

import tapmodel

HERE = Path(__file__).parent
PROGRAM = (sys.executable, "-m", "tapmodel", "build")
ROUNDS = 5
RUNS = {
    "build": ((), 0.5, 0.6),
    "STEP alone": (("--formats", "step"), 0.3, 0.4),
    "preview": (("--preview",), 0.1, 0.1),
}
"""Options of each run, the share of the plain route's seconds that is wanted, and its bar."""


class Timed(NamedTuple):
    """Seconds of a process and its children by the clock and of the processors; what it printed."""

    wall: float
    processor: float
    printed: str


def timed(command: tuple[str, ...]) -> Timed:
    """Run a command."""
    before, began = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    done = subprocess.run(command, check=True, stdout=subprocess.PIPE, text=True)
    wall, after = time.perf_counter() - began, resource.getrusage(resource.RUSAGE_CHILDREN)
    processor = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return Timed(wall, processor, done.stdout)


def measured(folder: Path) -> dict[str, list[Timed]]:
    """Every run in turn, so that a busy minute falls on all alike."""
    job = str(write_job(folder))
    found: dict[str, list[Timed]] = {"plain route": [], **{name: [] for name in RUNS}}
    for number in range(ROUNDS):
        plain = (sys.executable, str(HERE / "plain_route.py"))
        found["plain route"].append(timed(plain))
        for name, (options, _, _) in RUNS.items():
            out = str(folder / f"{name}-{number}")
            found[name].append(timed((*PROGRAM, job, "--json", *options, "--out", out)))
    return found


def stages(run: dict[str, Any]) -> str:
    """The stages of both processes of a run, in the order in which they came."""
    rows: list[str] = []
    for name, process in run["processes"].items():
        rows.append(f"  {name}, at most {process['peak_memory_mb']:.0f} MB")
        taken = zip(process["seconds"].items(), process["processor_seconds"].values(), strict=True)
        rows += [f"    {stage:12}{wall:8.2f}{cpu:10.2f}" for (stage, wall), cpu in taken]
    return "\n".join(rows)


def main() -> None:
    """Print ratios and stages."""
    compileall.compile_dir(Path(tapmodel.__file__).parent, quiet=1)
    with tempfile.TemporaryDirectory() as folder:
        found = measured(Path(folder))
    plain_wall, plain_cpu = (
        min(getattr(one, part) for one in found["plain route"]) for part in ("wall", "processor")
    )
    print(f"M20x1.25, {TURNS} turns, {FLUTES} flutes; quickest of {ROUNDS}")
    print("                 clock processor     ratio (processor)   median   wanted  bar")
    print(f"plain route {plain_wall:10.2f}{plain_cpu:10.2f}")
    for name, (_, wanted, bar) in RUNS.items():
        wall, cpu = (min(getattr(one, part) for one in found[name]) for part in Timed._fields[:2])
        shares = f"{wall / plain_wall:10.3f}{cpu / plain_cpu:12.3f}"
        rounds = zip(found[name], found["plain route"], strict=True)
        median = statistics.median(one.wall / plain.wall for one, plain in rounds)
        print(f"{name:12}{wall:10.2f}{cpu:10.2f}{shares}{median:9.3f}{wanted:9g}{bar:5g}")
    for name in ("build", "STEP alone"):
        quickest = min(found[name], key=lambda one: one.wall)
        print(f"{name}: seconds by the clock and of the processors")
        print(stages(json.loads(quickest.printed)["run"]))


if __name__ == "__main__":
    main()
