"""Sweeps of the design space: each job is refused with a reason, or built and proved.

    python tests/benchmarks/sweep.py SPACE [--fine] [--count N] [--first N] [--every N] [--edges]

SPACE is one of

* `listed`: every size that a standard lists, in every family, both hands, 1 to 4 starts;
* `grid`: M1 to M300, every diameter of ISO 261 with every pitch that it lists and 20 odd ones;
* `uniform`, `round`, `extreme`: jobs drawn at random, see `tests/geometry/random_jobs.py`.

Prints a line for each job that failed or took long, and the counts of outcomes. Each job runs in a
process that may crash or hang without ending the sweep. `--edges` stops where every edge is found
and every face closed; the whole takes some ten times as long. `--fine` takes of `listed` or `grid`
only the large taps of fine pitch, whose blanks and flutes follow rules of their own; `--first`,
`--every` and `--count` then count those. `--processes 1` leaves a shared machine to others.
"""

import argparse
import multiprocessing
import sys
import time
from collections import Counter
from itertools import islice
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from listed_jobs import listed_designations, metric_grid
from random_jobs import SAMPLERS

from tapmodel.designing.limits.turns import large_and_fine
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError, RefusedError, TapmodelError
from tapmodel.report.words.findings import what as what_of
from tapmodel.report.words.refusal import refusal
from tapmodel.shape.parting import AS_DESIGNED
from tapmodel.spec.designation import parse
from tapmodel.spec.job_file import checked
from tapmodel.standards.families import FAMILIES
from tapmodel.standards.family_rules import settled_pitch
from tapmodel.tap.tap import Tap
from tapmodel.words import Severity

# A job that takes longer than this counts as a hang, or is printed as slow [s].
PATIENCE, SLOW = 300.0, 60.0
TOLD_EVERY = 20
# How much coarser than the program's the mesh is; on coarse pitches this share of them, since a
# large tap would take most of its time there.
CHORDS, SHARE = 2.0, 0.01

Table = dict[str, object]
Outcome = tuple[str, str, float]


def outcome(table: Table, edges_only: bool) -> Outcome:
    """What became of a job, why, and the processor's seconds it took."""
    began = time.process_time()
    try:
        design = settle(checked(table))
    except InputError as error:
        return "refused: no tap", str(error), 0.0
    except RefusedError as error:
        return "refused: no tap", refusal(error), 0.0
    wrong = [f for f in design.findings if f.severity is Severity.ERROR]
    if wrong:
        return f"refused: {wrong[0].code}", what_of(wrong[0]), 0.0
    try:
        what, why = closed(design.tap) if edges_only else proved(design.tap)
    except TapmodelError as error:
        what, why = "FAILED", str(error)
    except Exception as error:  # noqa: BLE001  (the sweep is there to find them)
        what, why = "FAILED", f"{type(error).__name__}: {error}"
    return what, why, time.process_time() - began


def closed(tap: Tap) -> tuple[str, str]:
    """Whether every face closes."""
    from tapmodel.geometry.trace.skin import first_skin  # noqa: PLC0415  (where it is used)

    skin = first_skin(tap)
    moved = skin.form.parting != AS_DESIGNED
    return "closed, parted" if moved else "closed", f"{len(skin.edges)} edges"


def proved(tap: Tap) -> tuple[str, str]:
    """Whether the tap is built, meshed and proved."""
    # The kernel is loaded once in each process, where it is used.
    from tapmodel import precision  # noqa: PLC0415
    from tapmodel.checks.proof.mesh import prove_mesh  # noqa: PLC0415
    from tapmodel.checks.proof.solid import prove_solid  # noqa: PLC0415
    from tapmodel.checks.proof.verdict import faults  # noqa: PLC0415
    from tapmodel.geometry.kernel.build import build  # noqa: PLC0415

    fine = precision.mesh_chord(tap.thread.pitch, tap.thread.major)
    chord = max(CHORDS * fine, SHARE * tap.thread.pitch)
    built = build(tap, chord)
    proof = prove_solid(tap, built.solid, built.facets)
    missed = faults(proof, prove_mesh(built.mesh, chord))
    moved = built.parting != AS_DESIGNED
    good = "proved, parted" if moved else "proved"
    return ("NOT PROVED", "; ".join(missed)) if missed else (good, f"{proof.faces} faces")


def fine(designation: str) -> bool:
    """Whether blank and flutes of this thread follow the rules for large taps of fine pitch."""
    read = parse(designation)
    thread = FAMILIES[read.family].settle(read)
    return large_and_fine(thread.diameter, settled_pitch(thread))


def jobs(
    space: str, first: int, count: int | None, every: int, only_fine: bool
) -> list[tuple[str, Table]]:
    """Jobs of a space with their names."""
    if space in SAMPLERS:
        seeds = range(first, first + (count or 300))
        return [(f"{space} {seed}", SAMPLERS[space](seed)) for seed in seeds]
    names = {"listed": listed_designations, "grid": metric_grid}[space]()
    wanted = filter(fine, names) if only_fine else names
    last = None if count is None else first + count * every
    return [(name, {"designation": name}) for name in islice(wanted, first, last, every)]


def main() -> None:
    """Sweep a space on all processors."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawTextHelpFormatter
    )
    parser.add_argument("space", choices=["listed", "grid", *SAMPLERS])
    parser.add_argument("--count", type=int)
    parser.add_argument("--first", type=int, default=0)
    parser.add_argument("--every", type=int, default=1)
    parser.add_argument("--edges", action="store_true")
    parser.add_argument("--fine", action="store_true")
    parser.add_argument("--processes", type=int)
    asked = parser.parse_args()
    if asked.fine and asked.space in SAMPLERS:
        parser.error("--fine is for listed and grid")
    wanted = jobs(asked.space, asked.first, asked.count, asked.every, asked.fine)
    counts: Counter[str] = Counter()
    slowest = (0.0, "")
    began = time.perf_counter()
    context = multiprocessing.get_context("spawn")
    with context.Pool(asked.processes, maxtasksperchild=100) as pool:
        tasks = [(name, pool.apply_async(outcome, (job, asked.edges))) for name, job in wanted]
        for done, (name, task) in enumerate(tasks):
            if done % TOLD_EVERY == 0:
                print(f"\r{done} of {len(tasks)} ", end="", file=sys.stderr, flush=True)
            try:
                what, why, seconds = task.get(timeout=PATIENCE)
            except multiprocessing.TimeoutError:
                what, why, seconds = "CRASHED OR HUNG", f"no answer in {PATIENCE:g} s", PATIENCE
            counts[what] += 1
            slowest = max(slowest, (seconds, name))
            if what.split()[0].isupper() or seconds > SLOW:
                print(f"{name}\t{what}\t{seconds:.1f} s\t{why}", flush=True)
    print(f"\n{len(wanted)} jobs of {asked.space} in {time.perf_counter() - began:.0f} s", end="")
    print(f", the slowest {slowest[1]}: {slowest[0]:.1f} s of one processor")
    for what, number in counts.most_common():
        print(f"{number:5}  {what}")


if __name__ == "__main__":
    main()
