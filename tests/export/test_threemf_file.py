import zipfile
from collections.abc import Callable
from pathlib import Path

import cadquery as cq
import lib3mf
import numpy as np
import pytest

from tapmodel.checks.proof.mesh_report import check_mesh
from tapmodel.errors import InputError, KernelError
from tapmodel.export.mesh.read_back import read_3mf
from tapmodel.export.mesh.threemf import write_3mf
from tapmodel.geometry.kernel.mesh.tessellation import tessellate
from tapmodel.geometry.triangles import Mesh

NAME = "tap & <die> 8"
MODEL = "3D/3dmodel.model"


@pytest.fixture(scope="module")
def mesh(small_solid: cq.Solid) -> Mesh:
    return tessellate(small_solid, 0.01)


@pytest.fixture(scope="module")
def file(mesh: Mesh, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("3mf") / "tap.3mf"
    write_3mf(mesh, path, NAME)
    return path


def _rewritten(file: Path, path: Path, change: Callable[[str], str]) -> Path:
    """The same package with its model changed."""
    with zipfile.ZipFile(file) as old, zipfile.ZipFile(path, "w") as new:
        for member in old.namelist():
            text = old.read(member).decode()
            new.writestr(member, change(text) if member == MODEL else text)
    return path


def test_the_file_holds_the_mesh(mesh: Mesh, file: Path):
    content = read_3mf(file)
    inside = check_mesh(mesh.vertices, mesh.triangles)
    assert (content.name, content.triangles) == (NAME, len(mesh.triangles))
    assert (content.watertight, content.genus, content.parts) == (True, 0, 1)
    assert content.volume == pytest.approx(inside.volume, rel=1e-6)
    assert content.size == pytest.approx(np.ptp(mesh.vertices, axis=0), abs=1e-5)


def test_the_strict_reader_has_nothing_to_complain_about(mesh: Mesh, file: Path):
    model = lib3mf.get_wrapper().CreateModel()
    reader = model.QueryReader("3mf")
    reader.SetStrictModeActive(True)
    reader.ReadFromFile(str(file))
    assert reader.GetWarningCount() == 0
    assert model.GetUnit() == lib3mf.ModelUnit.MilliMeter
    parts = model.GetMeshObjects()
    assert parts.Count() == 1
    assert parts.MoveNext()
    part = parts.GetCurrentMeshObject()
    assert part.IsManifoldAndOriented()
    assert part.GetName() == NAME
    assert part.GetTriangleCount() == len(mesh.triangles)


def test_the_same_mesh_and_name_give_the_same_bytes(mesh: Mesh, file: Path, tmp_path: Path):
    again, other = tmp_path / "again.3mf", tmp_path / "other.3mf"
    write_3mf(mesh, again, NAME)
    write_3mf(mesh, other, "another")
    assert again.read_bytes() == file.read_bytes()
    identity = [
        zipfile.ZipFile(path).read(MODEL).decode().split('UUID="')[1:] for path in (file, other)
    ]
    assert len(identity[0]) == 3
    assert not {text[:36] for text in identity[0]} & {text[:36] for text in identity[1]}


def test_an_open_mesh_is_not_written(mesh: Mesh, tmp_path: Path):
    torn = Mesh(mesh.vertices, mesh.triangles[1:], mesh.face_of_triangle[1:])
    with pytest.raises(KernelError):
        write_3mf(torn, tmp_path / "tap.3mf", NAME)
    assert not list(tmp_path.iterdir())


def test_an_unwritable_place_is_bad_input(mesh: Mesh, tmp_path: Path):
    with pytest.raises(InputError, match="No such file"):
        write_3mf(mesh, tmp_path / "nowhere" / "tap.3mf", NAME)


@pytest.mark.parametrize(
    ("old", "new", "complaint"),
    [
        ('unit="millimeter"', 'unit="inch"', "unit inch"),
        ('<item objectid="1"', '<item objectid="2"', "1 parts and builds 1"),
        ("</build>", '<item objectid="1"/></build>', "builds 2"),
        ('<item objectid="1"', '<item transform="2 0 0 0 2 0 0 0 2 0 0 0" objectid="1"', "moves"),
        ("</model>", "", "cannot be read"),
    ],
)
def test_a_file_that_says_something_else_is_noticed(
    file: Path, tmp_path: Path, old: str, new: str, complaint: str
):
    path = _rewritten(file, tmp_path / "tap.3mf", lambda text: text.replace(old, new))
    with pytest.raises(KernelError, match=complaint):
        read_3mf(path)


def test_a_missing_triangle_is_seen_as_a_hole(file: Path, tmp_path: Path, mesh: Mesh):
    def without_first(text: str) -> str:
        start = text.index("<triangle ")
        return text[:start] + text[text.index("/>", start) + 2 :]

    content = read_3mf(_rewritten(file, tmp_path / "tap.3mf", without_first))
    assert (content.watertight, content.triangles) == (False, len(mesh.triangles) - 1)


def test_something_else_is_no_3mf(tmp_path: Path):
    path = tmp_path / "tap.3mf"
    path.write_text("solid")
    with pytest.raises(KernelError, match="cannot be read"):
        read_3mf(path)
