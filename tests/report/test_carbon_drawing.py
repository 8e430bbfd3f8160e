"""Lines of equal carbon: where they lie, and the files of them."""

import json
import sys
from pathlib import Path

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "hostile"))

from asked import settled_of
from entry import refusal_faults, run

from tapmodel.prediction.heat.carburising import carburised
from tapmodel.prediction.heat.record import Carburised, Carburising, Tooth
from tapmodel.report.drawings.charts.carbon_lines import carbon_lines, surface_of
from tapmodel.report.drawings.views.carbon import draw


def found(size: str, hours: float) -> tuple[Carburised, Tooth]:
    thread = settled_of(size, []).tap.thread
    answer = carburised(Carburising(0.18, 1.10, 925.0, hours), thread)
    assert answer.tooth
    return answer, answer.tooth


@pytest.mark.parametrize(("size", "hours"), [("M10", 0.5), ("1/2 BSW", 0.5), ("Tr16x4", 1.0)])
def test_lines_lie_where_the_carbon_is_so(size: str, hours: float) -> None:
    _, tooth = found(size, hours)
    (line,) = (line for line in carbon_lines(tooth) if line.share == 0.4)
    # They end in the middle of the root at the depth of the case, and are mirrored.
    left, right = line.points[[0, -1]]
    assert tooth.under_root.case == pytest.approx(-right[1], abs=5e-3)
    assert right[0] == pytest.approx(tooth.pitch / 2)
    assert left == pytest.approx(right * [-1.0, 1.0])
    # On the middle of the tooth as far below the crest as its profile says.
    middle = float(line.points[np.argmin(np.abs(line.points[:, 0])), 1])
    assert tooth.height - middle == pytest.approx(tooth.under_crest.case, abs=0.02)


@pytest.mark.parametrize("size", ["M10", "1/2 BSW", "Tr16x4"])
def test_the_surface_is_the_thread(size: str) -> None:
    _, tooth = found(size, 0.1)
    surface = surface_of(tooth)
    assert np.all(np.diff(surface[:, 0]) > 0)
    assert np.ptp(surface[:, 0]) == pytest.approx(tooth.pitch)
    assert np.ptp(surface[:, 1]) == pytest.approx(tooth.height)


@pytest.mark.parametrize(("size", "hours"), [("M0.3", 50.0), ("M3", 0.5), ("Tr16x4", 0.1)])
def test_every_line_has_its_number(size: str, hours: float) -> None:
    answer, tooth = found(size, hours)
    picture = draw(answer, tooth, size)
    told = {text.dxf.text for text in picture.document.modelspace().query("TEXT")}
    assert {f"{line.share:.1f}" for line in carbon_lines(tooth)} <= told
    assert any(size in text for text in told)


def test_the_files_are_delivered_where_they_are_wanted(tmp_path: Path) -> None:
    words = ["heat", "--carburise", "--hours=0.5", "M6", "--out", str(tmp_path)]
    ended = run([*words, "--json"])
    assert ended.code == 0
    folder = tmp_path / "M6x1-heat"
    assert sorted(file.name for file in folder.iterdir()) == [
        *("M6x1-carbon.dxf", "M6x1-carbon.svg", "record.json")
    ]
    filed = json.loads((folder / "record.json").read_text())
    assert filed["tooth"] == json.loads(ended.out)["tooth"]
    assert filed["schema"] == "tapmodel.carburising/1"


def test_no_drawing_without_a_tooth(tmp_path: Path) -> None:
    for words in (["--carburise", "--hours=1"], ["O1"]):
        ended = run(["heat", *words, "--out", str(tmp_path)])
        assert refusal_faults(ended, "--out") == []
    assert list(tmp_path.iterdir()) == []
