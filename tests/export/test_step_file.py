"""The STEP file of a tap, read by a reader that shares no code with the kernel."""

import re
import subprocess
import sys
from pathlib import Path

import cadquery as cq
import pytest
from step_check import StepVerdict, check_step

from tapmodel.errors import InputError, KernelError
from tapmodel.export.read_back_step import read_step
from tapmodel.export.step import write_step
from tapmodel.geometry.measure import counts, volume

# The kernel's own tolerance, ten times what the geometry keeps [mm].
GAP = 1e-7


@pytest.fixture(scope="module")
def file(small_solid: cq.Solid, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("step") / "small.step"
    write_step(small_solid, path, "clock tap é")
    return path


@pytest.fixture(scope="module")
def verdict(file: Path) -> StepVerdict:
    return check_step(file)


def test_one_closed_solid_of_genus_zero(verdict: StepVerdict, small_solid: cq.Solid):
    known = counts(small_solid)
    assert (verdict.solids, verdict.faces, verdict.edges) == (1, known.faces, known.edges)
    assert (verdict.edges_amiss, verdict.loops_amiss, verdict.genus) == (0, 0, 0)


def test_corners_lie_on_edges_and_edges_on_surfaces(verdict: StepVerdict):
    assert verdict.vertex_gap < GAP
    assert verdict.edge_gap < GAP


def test_one_named_part_of_ap214_in_millimetres_without_parameter_curves(verdict: StepVerdict):
    assert verdict.products == ["clock tap é"]
    assert "AUTOMOTIVE_DESIGN" in verdict.text
    assert "SI_UNIT(.MILLI.,.METRE.)" in verdict.text
    assert "CONVERSION_BASED_UNIT" not in verdict.entities
    assert "PCURVE" not in verdict.entities


def test_numbers_are_written_to_the_twelfth_decimal(verdict: StepVerdict):
    digits = re.findall(r"\d\.(\d+)[,)]", verdict.text)
    assert max(len(number) for number in digits) >= 12


def test_file_stays_small(file: Path, verdict: StepVerdict):
    assert file.stat().st_size < 7500 * verdict.faces


def test_read_back_measures_the_same_solid(file: Path, small_solid: cq.Solid):
    content = read_step(file)
    assert (content.solids, content.faces, content.valid) == (1, counts(small_solid).faces, True)
    assert content.volume == pytest.approx(volume(small_solid), rel=1e-7)


def test_nothing_is_said_on_the_standard_output(tmp_path: Path):
    # In a process of its own, because the kernel's stream is emptied only when it ends.
    script = f"""
from pathlib import Path
import cadquery as cq
from tapmodel.export.read_back_step import read_step
from tapmodel.export.step import write_step
path = Path({str(tmp_path / "box.step")!r})
write_step(cq.Solid.makeBox(1, 2, 3), path, "box")
read_step(path)
"""
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, check=True)
    assert done.stdout == b""


def test_names_of_any_letters_survive(tmp_path: Path):
    name = "d'Arcy \\ µ 螺 \U0001d6fc"
    write_step(cq.Solid.makeBox(1, 2, 3), tmp_path / "box.step", name)
    text = (tmp_path / "box.step").read_text("ascii").replace("\n", "")
    written = re.search(r"PRODUCT\('((?:[^']|'')*)'", text)
    assert written is not None
    assert written[1] == "d''Arcy \\\\ \\X2\\00B5\\X0\\ \\X2\\87BA\\X0\\ \\X4\\0001D6FC\\X0\\"


def test_a_folder_that_is_missing_or_a_file_that_is_no_step(tmp_path: Path):
    with pytest.raises(InputError, match="No such file"):
        write_step(cq.Solid.makeBox(1, 2, 3), tmp_path / "nowhere" / "box.step", "box")
    broken = tmp_path / "broken.step"
    broken.write_text("not a STEP file")
    with pytest.raises(KernelError, match=r"broken\.step"):
        read_step(broken)


def test_the_reader_sees_a_moved_corner(file: Path, tmp_path: Path):
    text = file.read_text()
    # Curves share the corner's point, so the corner gets one of its own, elsewhere.
    corner = re.search(r"VERTEX_POINT\('',(#\d+)\);\n", text)
    assert corner is not None
    apart = "VERTEX_POINT('',#999999);\n#999999=CARTESIAN_POINT('',(1.23,0.,0.));\n"
    moved = text.replace(corner[0], apart, 1)
    (tmp_path / "moved.step").write_text(moved)
    assert check_step(tmp_path / "moved.step").vertex_gap > 1e-3


def test_the_reader_sees_a_missing_face(file: Path, tmp_path: Path):
    text = file.read_text()
    face = re.search(r"(#\d+)=ADVANCED_FACE", text)
    assert face is not None
    opened = re.sub(rf"{face[1]}=ADVANCED_FACE\([^;]*;\n", "", text)
    opened = opened.replace(f"({face[1]},", "(")
    (tmp_path / "opened.step").write_text(opened)
    verdict = check_step(tmp_path / "opened.step")
    assert verdict.edges_amiss >= 2
    assert verdict.genus != 0
