"""How time, memory and size of a whole run grow with the turns, stage by stage.

    python tests/benchmarks/growth.py [MOST TURNS] [FLUTES]

Prints processor seconds of each stage, and its exponent from one number of turns to the next, 1
being linear. Below a tenth of a second it says nothing and is left out. Up to the 1500 turns that
it is made for it takes a quarter of an hour. `tapmodel.run.estimate` rests on it.
"""

import math
import sys
import tempfile
from pathlib import Path
from typing import Any

from reference import reference

from tapmodel.run.crew import Limits
from tapmodel.run.workshop import produce

STEP = 2.5
"""From one number of turns to the next."""
TOLD = 0.1
"""Seconds below which an exponent says nothing."""


def costs(turns: int, flutes: int) -> dict[str, float]:
    """What a run with so many turns takes, by name."""
    with tempfile.TemporaryDirectory() as folder:
        told = lambda _stage: None  # noqa: E731
        limits = Limits(seconds=7200.0, memory_mb=100_000)
        record = produce(reference(turns, flutes), Path(folder), told, limits=limits)
    return _stages(record["run"]) | {
        file["path"].rpartition(".")[2] + " MB": file["bytes"] / 1e6
        for file in record["files"]
        if "-" not in file["path"]
    }


def _stages(run: dict[str, Any]) -> dict[str, float]:
    found: dict[str, float] = {}
    for name, process in run["processes"].items():
        taken = process["processor_seconds"]
        found |= {f"{name}: {stage}": seconds for stage, seconds in taken.items()}
        found[f"{name}: in all"] = sum(taken.values())
        found[f"{name}: memory in GB"] = process["peak_memory_mb"] / 1000
    return found


def exponent(sizes: tuple[int, int], values: tuple[float, float]) -> str:
    """Of the growth between two sizes; nothing where the first value is too small to tell."""
    (few, many), (low, high) = sizes, values
    return f"{math.log(high / low) / math.log(many / few):10.2f}" if low > TOLD else ""


def main() -> None:
    """Print what each number of turns takes, beside the exponent from the one before."""
    most = int(sys.argv[1]) if len(sys.argv) > 1 else 1500
    flutes = int(sys.argv[2]) if len(sys.argv) > 2 else 3
    sizes = [round(most / STEP**k) for k in range(3, -1, -1)]
    few, before = 0, dict[str, float]()
    for turns in sizes:
        found = costs(turns, flutes)
        print(f"{turns} turns, {flutes} flutes" + (f", exponent from {few}" if few else ""))
        for name, value in found.items():
            grown = exponent((few, turns), (before[name], value)) if name in before else ""
            print(f"  {name:24}{value:9.2f}{grown}", flush=True)
        few, before = turns, found


if __name__ == "__main__":
    main()
