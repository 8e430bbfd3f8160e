"""Every job that ever failed is proved; of those that failed alike one is, and the others close."""

import tomllib
from pathlib import Path
from typing import Any

import pytest
from sweeps import whole

from tapmodel.checks.proof.mesh import prove_mesh
from tapmodel.checks.proof.solid import prove_solid
from tapmodel.checks.proof.verdict import faults
from tapmodel.designing.settle import settle
from tapmodel.geometry.kernel.build import build
from tapmodel.geometry.trace.keys import FaceKind
from tapmodel.geometry.trace.skin import first_skin
from tapmodel.precision import mesh_chord
from tapmodel.spec.job_file import job_for
from tapmodel.tap.tap import Tap
from tapmodel.words import Severity

JOBS: list[dict[str, Any]] = tomllib.loads(
    Path(__file__).with_name("once_failed.toml").read_text(encoding="utf-8")
)["job"]


def _is_proved(job: dict[str, Any]) -> bool:
    """Of those that failed alike the first; all of them where sweeps are wanted whole."""
    alike = job["why"].startswith("the same")
    return not job.get("edges_only") and (not alike or whole())


PROVED = [job for job in JOBS if _is_proved(job)]


def _named(job: dict[str, Any]) -> str:
    return f"{job['designation']}: {job['why']}"


def _tap(job: dict[str, Any]) -> Tap:
    design = settle(job_for(job["designation"], job.get("set", ())))
    assert not [found for found in design.findings if found.severity is Severity.ERROR]
    return design.tap


@pytest.mark.parametrize("job", PROVED, ids=_named)
def test_it_is_built_and_proved(job: dict[str, Any]) -> None:
    tap = _tap(job)
    chord = mesh_chord(tap.thread.pitch, tap.thread.major)
    built = build(tap, chord)
    assert faults(prove_solid(tap, built.solid, built.facets), prove_mesh(built.mesh, chord)) == []


@pytest.mark.parametrize("job", [job for job in JOBS if job not in PROVED], ids=_named)
def test_its_edges_close(job: dict[str, Any]) -> None:
    skin = first_skin(_tap(job))
    lands = {key.land for key in skin.loops if key.kind is FaceKind.CONE}
    assert lands == set(range(skin.form.lands))
