"""Cures applied one after the other, on jobs over the whole design space that the rules refuse."""

import sys
from pathlib import Path

import pytest
from fix_laws import cures_hold, refused
from sweeps import in_part

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from random_jobs import SAMPLERS

from tapmodel.designing.cures.fix import errors_of, fixed
from tapmodel.spec.job_file import job_for

# `tests/benchmarks/fixes.py` takes as many as are wanted.
SEEDS = in_part(range(2000, 2065, 8))


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("sampler", SAMPLERS)
def test_a_refused_job_is_mended_by_its_cures(sampler: str, seed: int) -> None:
    cures_hold(SAMPLERS[sampler](seed))


def test_the_laws_meet_many_refused_jobs() -> None:
    drawn = [draw(seed) for draw in SAMPLERS.values() for seed in SEEDS]
    assert sum(refused(table) is not None for table in drawn) > 0.4 * len(drawn)


def test_a_good_job_is_handed_back_as_it_is() -> None:
    job = job_for("M18x0.75", ["flutes.count=5"])
    assert fixed(job) == (job, ())


def test_errors_that_know_nothing_of_each_other_are_mended_one_after_the_other() -> None:
    sets = ["thread.root_flat=0.17", "flutes.full_depth_length=30", "blank.front_centre=8.5"]
    job = job_for("M18x0.75", ["thread.tap_class=2", *sets])
    assert {f.code for f in errors_of(job)} == {"root-clearance", "flute-length", "front-centre"}
    mended, applied = fixed(job)
    assert errors_of(mended) == ()
    values = {setting.field: setting.value for cure in applied for setting in cure.settings}
    # By hand: the web of 0.45 x 18 mm less 0.1 mm on each side; 0.1 mm behind the thread of 37 mm;
    # 0.75 / 2 - (17.5578 - 17.188) tan(30 deg) = 0.16150, rounded to the legal side.
    assert values == {
        "blank.front_centre": 7.9,
        "flutes.full_depth_length": 37.1,
        "thread.root_flat": 0.1614,
    }
    assert mended.blank.front_centre == 7.9
    assert mended.flutes.full_depth_length == 37.1


def test_a_job_that_leaves_no_tap_is_mended_too() -> None:
    mended, (cure,) = fixed(job_for("M18x0.75", ["flutes.core_diameter=17.2"]))
    assert errors_of(mended) == ()
    assert cure.settings[0].field == "flutes.core_diameter"
    assert mended.flutes.core_diameter == cure.settings[0].value


def test_a_cure_that_would_be_asked_back_is_applied_with_its_unit() -> None:
    """A rear chamfer of 0.02 mm is 0.5 mm as inches, which the rules would make."""
    mended, (cure,) = fixed(job_for("M18x0.75", ["blank.rear_chamfer=1e-5"]))
    assert errors_of(mended) == ()
    assert mended.blank.rear_chamfer == cure.settings[0].value == 0.02
    assert mended.typed()["blank.rear_chamfer"] == "0.02mm"
