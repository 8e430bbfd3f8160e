from pathlib import Path

import cadquery as cq
import numpy as np
import pytest
import trimesh

from tapmodel.checks.proof.mesh_report import check_mesh
from tapmodel.errors import InputError, KernelError
from tapmodel.export.mesh.read_back import read_stl
from tapmodel.export.mesh.stl import single_precision, write_stl
from tapmodel.geometry.kernel.measure.solid import volume
from tapmodel.geometry.kernel.mesh.tessellation import Mesh, tessellate

CHORD = 0.01


@pytest.fixture(scope="module")
def mesh(small_solid: cq.Solid) -> Mesh:
    return tessellate(small_solid, CHORD)


def _mesh(vertices: list[list[float]], triangles: list[list[int]]) -> Mesh:
    return Mesh(np.array(vertices), np.array(triangles), np.zeros(len(triangles), dtype=np.intp))


def test_the_file_holds_the_mesh(mesh: Mesh, small_solid: cq.Solid, tmp_path: Path):
    path = tmp_path / "tap.stl"
    write_stl(mesh, path)
    assert path.stat().st_size == 84 + 50 * len(mesh.triangles)
    assert not path.read_bytes().startswith(b"solid")
    content = read_stl(path)
    assert (content.triangles, content.watertight, content.genus) == (len(mesh.triangles), True, 0)
    inside = check_mesh(mesh.vertices, mesh.triangles).volume
    assert content.volume == pytest.approx(inside, rel=1e-6)
    assert content.volume == pytest.approx(volume(small_solid), rel=1e-3)


def test_facets_have_unit_normals_that_look_outwards(mesh: Mesh, tmp_path: Path):
    write_stl(mesh, tmp_path / "tap.stl")
    raw = trimesh.load_mesh(tmp_path / "tap.stl", process=False)
    stored = np.frombuffer(
        (tmp_path / "tap.stl").read_bytes()[84:], dtype=[("n", "<f4", (3,)), ("rest", "V38")]
    )["n"]
    assert np.linalg.norm(stored, axis=1) == pytest.approx(np.ones(len(stored)), abs=1e-6)
    # trimesh leaves a needle without a normal of its own as zero.
    own = np.cross(
        raw.triangles[:, 1] - raw.triangles[:, 0], raw.triangles[:, 2] - raw.triangles[:, 0]
    )
    assert np.all(np.einsum("nk,nk->n", stored, own) > 0)


def test_single_precision_leaves_no_facet_without_area(mesh: Mesh):
    vertices, triangles = single_precision(mesh)
    assert np.array_equal(vertices, vertices.astype(np.float32))
    report = check_mesh(vertices, triangles)
    assert (report.watertight, report.degenerate) == (True, 0)


def test_corners_that_fall_together_become_one():
    # At 100 mm single precision steps by 7.6e-6 mm: vertices 4 and 3 are the same there.
    base = [[0.0, 0, 0], [6, 0, 0], [0, 6, 0], [0, 0, 100], [0, 0, 100.000001]]
    tip = [[0, 2, 1], [0, 1, 4], [0, 4, 3], [1, 2, 4], [2, 3, 4], [2, 0, 3]]
    vertices, triangles = single_precision(_mesh(base, tip))
    report = check_mesh(vertices, triangles)
    assert len(triangles) == 4
    assert report.watertight
    assert report.volume == pytest.approx(600.0, rel=1e-5)


def test_a_mesh_too_fine_for_the_format_is_refused():
    corners = np.array([[0, 0, 0], [1, 0, 0], [0, 1, 0], [0, 0, 1]])
    grain = (100 + 1e-7 * corners).tolist()
    with pytest.raises(KernelError, match="flat triangles"):
        single_precision(_mesh(grain, [[0, 2, 1], [0, 1, 3], [1, 2, 3], [2, 0, 3]]))


def test_an_unwritable_place_is_bad_input(mesh: Mesh, tmp_path: Path):
    with pytest.raises(InputError, match="No such file"):
        write_stl(mesh, tmp_path / "nowhere" / "tap.stl")


def test_an_open_file_is_seen_as_open(tmp_path: Path):
    path = tmp_path / "box.stl"
    write_stl(tessellate(cq.Solid.makeBox(1, 2, 3), 0.1), path)
    data = bytearray(path.read_bytes()[:-50])
    data[80:84] = (11).to_bytes(4, "little")
    path.write_bytes(data)
    content = read_stl(path)
    assert (content.triangles, content.watertight) == (11, False)
