"""The STEP file of a tap, read by the kernel and by a reader that shares no code with it."""

import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import cadquery as cq
import pytest
from asked import settled_of
from step_check import StepVerdict, check_step
from step_gaps import widest_gap

from tapmodel.errors import InputError, KernelError
from tapmodel.export.step.read_back import prove_step
from tapmodel.export.step.write import UNCERTAINTY, step_text, write_step
from tapmodel.geometry.kernel.build import build_solid
from tapmodel.geometry.kernel.measure.solid import counts, is_valid, volume
from tapmodel.geometry.kernel.mesh.triangulation import triangulate
from tapmodel.geometry.kernel.step.read import read_step_text

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


def test_a_reader_that_fits_its_own_curves_finds_edges_on_surfaces(
    file: Path, small_solid: cq.Solid
):
    (solid,) = read_step_text(file)
    # 41 nm, were the edges of the run-out circles; 10 nm, were the jumps of the relief in them.
    assert widest_gap(solid.wrapped) < UNCERTAINTY
    assert is_valid(solid)
    assert counts(solid) == counts(small_solid)
    assert volume(solid) == pytest.approx(volume(small_solid), rel=1e-7)


def test_the_same_with_rounded_crests_and_roots(tmp_path: Path):
    design = settled_of("G 1/4", ["flutes.count=3", "blank.thread_length=10"])
    solid, path = build_solid(design.tap), tmp_path / "round.step"
    write_step(solid, path, "round")
    (found,) = read_step_text(path)
    # 1.4 nm on the arcs and 7 nm where the cone grazes them, were they given no more knots.
    assert widest_gap(found.wrapped) < UNCERTAINTY
    assert path.stat().st_size < 3700 * counts(solid).faces


def test_the_file_states_its_closeness(verdict: StepVerdict):
    (stated,) = re.findall(r"LENGTH_MEASURE\(([^)]*)\)", verdict.text)
    assert float(stated) == UNCERTAINTY


def test_file_stays_small(file: Path, verdict: StepVerdict):
    assert file.stat().st_size < 3500 * verdict.faces


def test_the_moment_is_the_only_difference_between_two_files(
    small_solid: cq.Solid, monkeypatch: pytest.MonkeyPatch
):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "86399")
    first = step_text(small_solid, "tap")
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "86400")
    second = step_text(small_solid, "tap")
    assert "1970-01-01T23:59:59" in first
    assert first.replace("1970-01-01T23:59:59", "1970-01-02T00:00:00") == second


@pytest.mark.parametrize("wrong", ["soon", "1e9", "99999999999999999999"])
def test_a_moment_that_is_none_is_refused(wrong: str, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", wrong)
    with pytest.raises(InputError, match=re.escape(wrong)):
        step_text(cq.Solid.makeBox(1, 2, 3), "box")


def test_read_back_finds_the_same_solid(file: Path, small_solid: cq.Solid):
    # Eight decimals of three coordinates.
    assert prove_step(file, small_solid) < 3**0.5 * 5.1e-9


def _changed(pattern: str, new: str, text: str) -> str:
    """The text with the last match of a pattern made new."""
    *_, found = re.finditer(pattern, text)
    return text[: found.start()] + found.expand(new) + text[found.end() :]


@pytest.fixture
def complaint(file: Path, small_solid: cq.Solid, tmp_path: Path) -> Callable[[str], str]:
    """What is said of the file when its text is another."""

    def said(text: str) -> str:
        changed = tmp_path / "changed.step"
        changed.write_text(text)
        with pytest.raises(KernelError) as caught:
            prove_step(changed, small_solid)
        return caught.value.what

    assert prove_step(file, small_solid) >= 0
    return said


@pytest.mark.parametrize(
    ("pattern", "new", "words"),
    [
        (r"(CYLINDRICAL_SURFACE\(.*)\);", r"\g<1>001);", "off"),
        (r"(ADVANCED_FACE\(.*),\.T\.\);", r"\1,.F.);", "looks the other way"),
        (r"(ADVANCED_FACE\(.*),\.F\.\);", r"\1,.T.);", "looks the other way"),
        (r"(ORIENTED_EDGE\(.*),\.T\.\);", r"\1,.F.);", "bounded by other edges"),
        (r"(CLOSED_SHELL\('',\()#\d+,", r"\1", "edges and faces"),
        (r"(MANIFOLD_SOLID_BREP\(.*;)", r"\1\n#999999=\1", "2 solids"),
        (r"(B_SPLINE_SURFACE_WITH_KNOTS\('',\d,1,\(\()(#\d+),(#\d+)", r"\1\3,\2", "other way"),
    ],
)
def test_read_back_notices(
    pattern: str, new: str, words: str, file: Path, complaint: Callable[[str], str]
):
    text = file.read_text()
    *_, found = re.finditer(pattern, text)
    assert words in complaint(text[: found.start()] + found.expand(new) + text[found.end() :])


def test_read_back_notices_a_pole_or_corner_one_nanometre_off(
    file: Path, complaint: Callable[[str], str]
):
    text = file.read_text()
    used = re.compile(r"(?:VERTEX_POINT|B_SPLINE_\w+)\('',[\d,]*\(*(#\d+)")
    poles = sorted({use[1] for use in used.finditer(text)})
    for number in poles[:: len(poles) // 7]:
        (point,) = re.finditer(rf"\n{number}=CARTESIAN_POINT\('',\((-?\d+\.\d*)", text)
        moved = f"{float(point[1]) + 1e-6:.8f}"
        assert complaint(text[: point.start(1)] + moved + text[point.end(1) :])


def test_nothing_is_said_on_the_standard_output(tmp_path: Path):
    # In a process of its own, because the kernel's stream is emptied only when it ends.
    script = f"""
from pathlib import Path
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox
from tapmodel.export.step.read_back import prove_step
from tapmodel.export.step.write import write_step
from tapmodel.geometry.kernel.topology import Solid
path, box = Path({str(tmp_path / "box.step")!r}), Solid(BRepPrimAPI_MakeBox(1, 2, 3).Solid())
write_step(box, path, "box")
prove_step(path, box)
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
    box = cq.Solid.makeBox(1, 2, 3)
    with pytest.raises(InputError, match="No such file"):
        write_step(box, tmp_path / "nowhere" / "box.step", "box")
    broken = tmp_path / "broken.step"
    broken.write_text("not a STEP file")
    with pytest.raises(KernelError, match=r"broken\.step"):
        prove_step(broken, box)


def test_forms_that_no_tap_has_are_refused():
    with pytest.raises(KernelError, match="Toroidal"):
        step_text(cq.Solid.makeTorus(5, 1), "ring")


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


def test_a_cone_between_neck_and_shank_can_be_meshed_by_its_reader(tmp_path: Path) -> None:
    """Its seam and its circles must meet more closely than points are written."""
    solid = build_solid(settled_of("M4x0.7", ["blank.thread_length=6"]).tap)
    write_step(solid, tmp_path / "tap.step", "tap")
    (found,) = read_step_text(tmp_path / "tap.step")
    triangulate(found.wrapped, 0.05, 30.0, roughly=True)
