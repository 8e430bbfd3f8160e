"""Every example job is built as a user builds it, and its record is judged from outside."""

import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import trimesh
from sweeps import in_part

from tapmodel.designing.design import settled_tap
from tapmodel.run.record.compose import design_record
from tapmodel.spec.job_file import read_job

ROOT = Path(__file__).parents[2]
EXAMPLES = sorted((ROOT / "examples").glob("*.toml"))
UNLIKE = [ROOT / "examples" / f"{name}.toml" for name in ("balance-cock", "gas-lamp")]
BUILT = in_part(UNLIKE)
"""Each takes some seconds; `examples/pictures.py` builds all."""

Built = Callable[[Path], tuple[dict[str, Any], Path]]


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """Build an example once and hand out its record and folder."""
    out = tmp_path_factory.mktemp("out")
    done: dict[Path, tuple[dict[str, Any], Path]] = {}

    def build(job: Path) -> tuple[dict[str, Any], Path]:
        if job not in done:
            command = [
                sys.executable,
                "-m",
                "tapmodel.cli.start",
                "build",
                str(job),
                "--out",
                str(out),
            ]
            result = subprocess.run(command, capture_output=True, text=True, check=False)
            assert result.returncode == 0, result.stderr
            folder = out / job.stem
            done[job] = json.loads((folder / "record.json").read_text()), folder
        return done[job]

    return build


@pytest.mark.parametrize("job", BUILT, ids=lambda job: job.stem)
def test_the_model_is_proved(job: Path, built: Built) -> None:
    model = built(job)[0]["model"]
    assert model["solids"] == 1
    assert model["valid"] is True
    assert model["genus"] == 0
    assert model["self_intersecting"] is False
    assert model["volume"] == pytest.approx(model["volume_expected"], rel=1e-5)
    assert len(model["stations"]) >= 7
    for station in model["stations"]:
        assert station["area"] == pytest.approx(station["area_expected"], rel=1e-4)
    assert model["deviation_points"] >= 2000
    assert model["deviation_um_max"] <= 1.0
    assert model["deviation_um_by_surface"]["thread"] <= 0.5


@pytest.mark.parametrize("job", BUILT, ids=lambda job: job.stem)
def test_the_files_are_what_the_record_says(job: Path, built: Built) -> None:
    record, folder = built(job)
    names = {file["path"] for file in record["files"]}
    models = (".step", ".stl", ".3mf", ".glb", "-section.dxf", "-profile.dxf")
    pictures = (".png", "-end.png", "-chamfer.png", "-land.png")
    papers = ("-sheet.pdf", ".html")
    flat = {job.stem + ending for ending in (*models, *pictures, *papers)}
    assert {name for name in names if "/" not in name} == flat
    written = {p.relative_to(folder).as_posix() for p in folder.rglob("*") if p.is_file()}
    assert written == names | {"record.json"}
    for file in record["files"]:
        assert (folder / file["path"]).stat().st_size == file["bytes"]
    mesh = trimesh.load_mesh(folder / f"{job.stem}.stl")
    assert mesh.is_watertight
    assert mesh.volume == pytest.approx(record["model"]["volume"], rel=2e-3)
    assert mesh.bounds[:, 2].tolist() == pytest.approx(
        [0.0, record["blank"]["overall_length"]], abs=1e-4
    )


def test_the_examples_span_what_they_are_there_for() -> None:
    records = [design_record(settled_tap(read_job(job, []))) for job in EXAMPLES]
    assert len(records) >= 6
    assert {record["flutes"]["count"] for record in records} >= {3, 4, 5, 6}
    assert {record["thread"]["hand"] for record in records} == {"left", "right"}
    kinds = {record["relief"]["thread"]["kind"] for record in records}
    assert kinds == {"concentric", "con-eccentric", "eccentric"}
    assert any(record["blank"]["neck_length"] == 0 for record in records)
    flanks = {record["thread"]["flank_angle"] for record in records}
    assert flanks == {30.0, 27.5, 23.75, 15.0, 14.5}
    assert any(record["thread"]["starts"] > 1 for record in records)
    majors = [record["thread"]["major"] for record in records]
    assert min(majors) < 7
    assert max(majors) > 29
