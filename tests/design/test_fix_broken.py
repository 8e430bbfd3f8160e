"""Cures applied one after the other, on jobs with values moved far out on purpose."""

import pytest
from broken_jobs import broken_job
from fix_laws import cures_hold, refused
from sweeps import in_part

# `tests/benchmarks/fixes.py` takes as many as are wanted.
SEEDS = in_part(range(3000, 3200, 8))


@pytest.mark.parametrize("seed", SEEDS)
def test_a_broken_job_is_mended_by_its_cures(seed: int) -> None:
    cures_hold(broken_job(seed))


def test_the_laws_meet_many_broken_jobs() -> None:
    assert sum(refused(broken_job(seed)) is not None for seed in SEEDS) > len(SEEDS) / 2
