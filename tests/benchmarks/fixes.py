"""Refused jobs mended by their cures, one after the other: the laws of the tests on more jobs.

    python tests/benchmarks/fixes.py [COUNT] [FIRST SEED]

Draws `COUNT` jobs of each kind at random (`tests/geometry/random_jobs.py`, and broken on purpose
`tests/design/broken_jobs.py`), prints each that a law does not hold of, and how many were refused.
"""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "design"))
sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from broken_jobs import broken_job
from fix_laws import cures_hold, refused
from random_jobs import SAMPLERS


def main() -> None:
    """Hold the laws to `COUNT` seeds of each kind."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 300
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 0
    for name, drawn in {**SAMPLERS, "broken": broken_job}.items():
        met = 0
        for seed in range(first, first + count):
            table = drawn(seed)
            met += refused(table) is not None
            try:
                cures_hold(table)
            except AssertionError as error:
                print(f"{name} {seed}\t{error}\t{table}", flush=True)
        print(f"{name}: {met} of {count} refused")


if __name__ == "__main__":
    main()
