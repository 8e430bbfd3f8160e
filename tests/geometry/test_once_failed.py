"""Every job that ever failed is built and proved."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from tapmodel.checks.proof.mesh import prove_mesh
from tapmodel.checks.proof.solid import prove_solid
from tapmodel.checks.proof.verdict import faults
from tapmodel.design.settle import settle
from tapmodel.geometry.kernel.build import build
from tapmodel.geometry.trace.skin import weave
from tapmodel.spec.job_file import job_for
from tapmodel.design.record import TapDesign
from tapmodel.words import Severity

JOBS: list[dict[str, Any]] = tomllib.loads(
    Path(__file__).with_name("once_failed.toml").read_text(encoding="utf-8")
)["job"]


def _named(job: dict[str, Any]) -> str:
    return " ".join([job["designation"], *job.get("set", ())])


def _design(job: dict[str, Any]) -> TapDesign:
    design = settle(job_for(job["designation"], job.get("set", ())))
    assert not [found for found in design.findings if found.severity is Severity.ERROR]
    return design


@pytest.mark.parametrize("job", [j for j in JOBS if not j.get("edges_only")], ids=_named)
def test_it_is_built_and_proved(job: dict[str, Any]) -> None:
    design = _design(job)
    chord = 0.005 * max(design.thread.major / 10, 0.3)
    built = build(design, chord)
    assert faults(prove_solid(design, built.solid), prove_mesh(built.mesh, chord)) == []


@pytest.mark.parametrize("job", [j for j in JOBS if j.get("edges_only")], ids=_named)
def test_its_edges_close(job: dict[str, Any]) -> None:
    skin = weave(_design(job))
    lands = {key[1] for key in skin.loops if key[0] == "cone"}
    assert lands == set(range(skin.form.lands))
