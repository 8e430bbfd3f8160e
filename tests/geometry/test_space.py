"""The whole design space: every job is refused with a cure, or closes and is proved."""

from collections.abc import Iterator
from itertools import islice

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from random_jobs import random_job

from tapmodel.checks.mesh_proof import prove_mesh
from tapmodel.checks.verdict import faults
from tapmodel.checks.verify import prove_solid
from tapmodel.design.settle import settle
from tapmodel.design.tap_design import TapDesign
from tapmodel.errors import InputError, RefusedError
from tapmodel.geometry.build import build_solid
from tapmodel.geometry.mesh import tessellate
from tapmodel.geometry.skin import weave
from tapmodel.spec.job_file import checked
from tapmodel.words import Severity

PROVED = 6


def _admitted(seed: int) -> TapDesign | None:
    """The design of a seed, or None when it was refused, which must say what to change."""
    try:
        design = settle(checked(random_job(seed)))
    except (InputError, RefusedError) as error:
        refusal = str(error)
    else:
        refusal = ""
    if refusal:
        assert "set " in refusal or "allowed" in refusal
        return None
    wrong = [finding for finding in design.findings if finding.severity is Severity.ERROR]
    for finding in wrong:
        # What it takes to seek a cure; `tests/design/test_cures.py` applies what is found.
        assert finding.levers
    return None if wrong else design


@settings(max_examples=60, deadline=None, derandomize=True, database=None)
@given(st.integers(0, 10**9))
def test_every_admitted_design_closes(seed: int) -> None:
    design = _admitted(seed)
    if design is None:
        return
    skin = weave(design)
    faces = sum(len(loops) for key, loops in skin.loops.items() if key[0] != "ring")
    # One disc below the joint; a face with holes counts each of its cycles, hence "at least".
    assert len(skin.corners) - len(skin.edges) + faces >= 1


def _first_admitted() -> Iterator[int]:
    return (seed for seed in range(10_000, 20_000) if _admitted(seed) is not None)


@pytest.mark.parametrize("number", range(PROVED))
def test_admitted_designs_are_proved(number: int) -> None:
    seed = next(islice(_first_admitted(), number, None))
    design = settle(checked(random_job(seed)))
    solid = build_solid(design)
    mesh = prove_mesh(tessellate(solid, 0.02), 0.02)
    assert faults(prove_solid(design, solid), mesh) == [], seed


COINCIDENCES = {
    "the cutter just leaves the shank at its centre": {"blank": {"neck_diameter": 0.0}},
    "the neck is as thick as the wall's foot": {"flutes": {"rake": 0.0}},
    "the shoulder begins a nanometre before the full depth": {
        "blank": {"neck_diameter": 8.0, "shank_diameter": 9.0, "neck_length": 1.499999999},
        "flutes": {"full_depth_length": 25.5},
    },
}


@pytest.mark.parametrize("name", COINCIDENCES)
def test_round_numbers_that_bring_edges_together_are_proved(name: str) -> None:
    design = settle(checked({"designation": "M10"} | COINCIDENCES[name]))
    solid = build_solid(design)
    mesh = prove_mesh(tessellate(solid, 0.02), 0.02)
    assert faults(prove_solid(design, solid), mesh) == []


def test_the_same_job_gives_the_same_geometry() -> None:
    seed = next(_first_admitted())
    design = settle(checked(random_job(seed)))
    first, second = (weave(design) for _ in range(2))
    assert (first.corners == second.corners).all()
    pairs = zip(first.edges, second.edges, strict=True)
    assert all((a.samples == b.samples).all() for a, b in pairs)
