"""The whole design space: every job is refused with a cure, or closes and is proved."""

from collections.abc import Iterator
from itertools import islice

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from listed_jobs import listed_designations, metric_grid
from random_jobs import SAMPLERS, Job, random_job

from tapmodel.checks.proof.mesh import prove_mesh
from tapmodel.checks.proof.solid import prove_solid
from tapmodel.checks.proof.verdict import faults
from tapmodel.designing.settle import settle
from tapmodel.errors import InputError, NoTapError
from tapmodel.findings import Finding
from tapmodel.geometry.kernel.build import build
from tapmodel.geometry.trace.keys import FaceKind
from tapmodel.geometry.trace.skin import first_skin
from tapmodel.spec.job_file import checked
from tapmodel.tap.tap import Tap
from tapmodel.words import Severity

# Of each space so many are proved here; `tests/benchmarks/sweep.py` proves as many as are wanted.
PROVED = 1
# A prime step meets every family, hand and number of starts.
LISTED = [*islice(listed_designations(), 7, None, 263)]
# Pitch 0.05 is refused above 24 mm, where the tolerance would take most of the thread's depth.
GRID = [text for text in islice(metric_grid(), 5, None, 659) if not text.endswith("x0.05")]
MOST_LAND_TURNS = 600


def _admitted(job: Job) -> Tap | None:
    """The tap of a job, or None when it was refused, which must say what to change."""
    try:
        design = settle(checked(job))
    except InputError:
        return None
    except NoTapError as error:
        return _with_levers(error.finding)
    wrong = [finding for finding in design.findings if finding.severity is Severity.ERROR]
    return _with_levers(*wrong) if wrong else design.tap


def _with_levers(*findings: Finding) -> None:
    # What it takes to seek a cure; `tests/design/test_cures.py` applies what is found.
    assert all(finding.levers for finding in findings)


def _closes(tap: Tap) -> None:
    skin = first_skin(tap)
    faces = sum(len(loops) for key, loops in skin.loops.items() if key.kind is not FaceKind.RING)
    # One disc below the joint; a face with holes counts each of its cycles, hence "at least".
    assert len(skin.corners) - len(skin.edges) + faces >= 1


def _is_proved(tap: Tap) -> None:
    chord = 0.002 * tap.thread.major
    built = build(tap, chord)
    assert faults(prove_solid(tap, built.solid, built.facets), prove_mesh(built.mesh, chord)) == []


@settings(max_examples=20)
@given(st.integers(0, 10**9), st.sampled_from(sorted(SAMPLERS)))
def test_every_admitted_design_closes(seed: int, sampler: str) -> None:
    tap = _admitted(SAMPLERS[sampler](seed))
    if tap is not None:
        _closes(tap)


@pytest.mark.parametrize("designation", [*LISTED, *GRID])
def test_what_a_list_names_is_admitted_and_closes(designation: str) -> None:
    tap = _admitted({"designation": designation})
    assert tap is not None
    if tap.flutes.count * tap.blank.thread_length < MOST_LAND_TURNS * tap.thread.pitch:
        _closes(tap)


def _first_admitted(sampler: str) -> Iterator[Tap]:
    taps = (_admitted(SAMPLERS[sampler](seed)) for seed in range(10_000, 20_000))
    return (tap for tap in taps if tap is not None)


@pytest.mark.parametrize("number", range(PROVED))
@pytest.mark.parametrize("sampler", SAMPLERS)
def test_admitted_designs_are_proved(sampler: str, number: int) -> None:
    _is_proved(next(islice(_first_admitted(sampler), number, None)))


# Eight turns instead of sixteen: what meets there does not depend on how many there are.
SHORT = {"thread_length": 12.0}
COINCIDENCES = {
    "the cutter just leaves the shank at its centre": {"blank": {"neck_diameter": 0.0} | SHORT},
    "the neck is as thick as the wall's foot": {"flutes": {"rake": 0.0}, "blank": SHORT},
    "the shoulder begins a nanometre before the full depth": {
        "blank": {"neck_diameter": 8.0, "shank_diameter": 9.0, "neck_length": 1.499999999} | SHORT,
        "flutes": {"full_depth_length": 13.5},
    },
}


@pytest.mark.parametrize("name", COINCIDENCES)
def test_round_numbers_that_bring_edges_together_are_proved(name: str) -> None:
    _is_proved(settle(checked({"designation": "M10"} | COINCIDENCES[name])).tap)


def test_the_same_job_gives_the_same_geometry() -> None:
    tap = settle(checked(random_job(10_000))).tap
    first, second = (first_skin(tap) for _ in range(2))
    assert (first.corners == second.corners).all()
    pairs = zip(first.edges, second.edges, strict=True)
    assert all((a.samples == b.samples).all() for a, b in pairs)
