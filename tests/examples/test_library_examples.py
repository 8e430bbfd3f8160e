"""The worked script and the notebook run as they stand."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


def test_the_script_chooses_models_and_writes(tmp_path: Path) -> None:
    script = ROOT / "examples" / "variants.py"
    run = subprocess.run(
        [sys.executable, str(script), str(tmp_path)], capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stderr
    assert "<tap for M18x0.75, 5 flutes>" in run.stdout
    assert {path.suffix for path in (tmp_path / "lens-cell").iterdir()} == {
        *(".step", ".stl", ".json")
    }


def test_every_cell_of_the_notebook_runs(tmp_path: Path) -> None:
    cells = json.loads((ROOT / "examples" / "variants.ipynb").read_text(encoding="utf-8"))["cells"]
    sources = ["".join(cell["source"]) for cell in cells if cell["cell_type"] == "code"]
    # Last lines show something, which only a notebook does.
    script = "\n".join([*sources, "print(solid.Volume(), half.val().Volume())"])
    run = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=False, cwd=tmp_path
    )
    assert run.returncode == 0, run.stderr
    assert "rake_crest" in run.stdout
    whole, half = map(float, run.stdout.splitlines()[-1].split())
    # five flutes: the halves are unlike
    assert half / whole == pytest.approx(0.5, abs=0.02)
    assert half / whole != pytest.approx(0.5, abs=0.002)
    assert all(not cell.get("outputs") for cell in cells)
