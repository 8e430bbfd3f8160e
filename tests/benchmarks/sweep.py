"""Random designs over the whole space, each refused with a reason or built and proved.

    python tests/benchmarks/sweep.py [COUNT] [FIRST SEED] > table.tsv

Prints one line for each seed and the counts of outcomes at the end. Each design is built in a
process that may crash or hang without ending the sweep.
"""

import multiprocessing
import sys
import time
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from random_jobs import random_job

from tapmodel.design.settle import settle
from tapmodel.errors import InputError, RefusedError, TapmodelError
from tapmodel.spec.job_file import checked
from tapmodel.words import Severity

# A design that takes longer than this counts as a hang [s].
PATIENCE = 120.0
CHORD = 0.02


def outcome(seed: int) -> tuple[str, str]:
    """What became of a seed, and why."""
    # The kernel is loaded once in each process, where it is used.
    from tapmodel.checks.mesh_proof import prove_mesh  # noqa: PLC0415
    from tapmodel.checks.verdict import faults  # noqa: PLC0415
    from tapmodel.checks.verify import prove_solid  # noqa: PLC0415
    from tapmodel.geometry.build import build_solid  # noqa: PLC0415
    from tapmodel.geometry.mesh import tessellate  # noqa: PLC0415

    try:
        design = settle(checked(random_job(seed)))
    except (InputError, RefusedError) as error:
        return "refused: no tap", str(error)
    wrong = [f for f in design.findings if f.severity is Severity.ERROR]
    if wrong:
        return f"refused: {wrong[0].code}", wrong[0].what
    try:
        solid = build_solid(design)
        proof = prove_solid(design, solid)
        chord = CHORD * max(design.thread.major / 10, 0.2)
        missed = faults(proof, prove_mesh(tessellate(solid, chord), chord))
    except TapmodelError as error:
        return "FAILED", str(error)
    except Exception as error:  # noqa: BLE001  (the sweep is there to find them)
        return "FAILED", f"{type(error).__name__}: {error}"
    return ("NOT PROVED", "; ".join(missed)) if missed else ("proved", f"{proof.faces} faces")


def main() -> None:
    """Sweep `COUNT` seeds on all processors."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 300
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 0
    counts: Counter[str] = Counter()
    began = time.perf_counter()
    with multiprocessing.get_context("spawn").Pool(maxtasksperchild=100) as pool:
        tasks = [(seed, pool.apply_async(outcome, (seed,))) for seed in range(first, first + count)]
        for seed, task in tasks:
            try:
                what, why = task.get(timeout=PATIENCE)
            except multiprocessing.TimeoutError:
                what, why = "CRASHED OR HUNG", f"no answer within {PATIENCE:g} s"
            counts[what] += 1
            print(f"{seed}\t{what}\t{why}", flush=True)
    print(f"\n{count} designs in {time.perf_counter() - began:.0f} s")
    for what, number in counts.most_common():
        print(f"{number:5}  {what}")


if __name__ == "__main__":
    main()
