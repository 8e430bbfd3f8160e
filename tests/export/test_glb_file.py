import json
import struct
from collections.abc import Callable
from pathlib import Path
from typing import Any

import cadquery as cq
import numpy as np
import pytest
import trimesh

from tapmodel.checks.proof.mesh_report import check_mesh
from tapmodel.errors import InputError, KernelError
from tapmodel.export.mesh.glb import write_glb
from tapmodel.export.mesh.glb_reader import read_glb_part
from tapmodel.export.mesh.read_back import read_glb
from tapmodel.geometry.kernel.mesh.tessellation import tessellate
from tapmodel.geometry.triangles import Mesh

NAME = "tap & <die> 8"


@pytest.fixture(scope="module")
def mesh(small_solid: cq.Solid) -> Mesh:
    return tessellate(small_solid, 0.01)


@pytest.fixture(scope="module")
def file(mesh: Mesh, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("glb") / "tap.glb"
    write_glb(mesh, path, NAME)
    return path


def _rewritten(file: Path, path: Path, change: Callable[[dict[str, Any]], None]) -> Path:
    """The same file with its description changed."""
    old = file.read_bytes()
    (size,) = struct.unpack_from("<I", old, 12)
    scene = json.loads(old[20 : 20 + size])
    change(scene)
    text = json.dumps(scene).encode()
    text += b" " * (-len(text) % 4)
    rest = old[20 + size :]
    head = struct.pack("<5I", 0x46546C67, 2, 20 + len(text) + len(rest), len(text), 0x4E4F534A)
    path.write_bytes(head + text + rest)
    return path


def test_the_file_holds_the_mesh(mesh: Mesh, file: Path):
    content = read_glb(file)
    inside = check_mesh(mesh.vertices, mesh.triangles)
    assert (content.name, content.triangles) == (NAME, len(mesh.triangles))
    assert (content.watertight, content.genus, content.parts) == (True, 0, 1)
    assert content.volume == pytest.approx(inside.volume, rel=1e-6)
    assert content.size == pytest.approx(np.ptp(mesh.vertices, axis=0), abs=1e-5)


def test_every_corner_comes_back_to_its_place(mesh: Mesh, file: Path):
    back = read_glb_part(file)
    corners = back.vertices[back.triangles].reshape(-1, 9)
    there = mesh.vertices[mesh.triangles].reshape(-1, 9)
    assert corners == pytest.approx(there, abs=1e-5)


def test_a_viewer_sees_metres_and_the_tap_standing(mesh: Mesh, file: Path):
    scene = trimesh.load_scene(file, process=False)
    (shown,) = scene.geometry.values()
    assert list(scene.geometry) == [NAME]
    assert len(shown.vertices) == len(mesh.vertices)  # welded
    assert shown.bounds[:, 1] == pytest.approx([0.0, 0.036], abs=1e-8)  # 36 mm long, Y up
    assert shown.volume == pytest.approx(
        check_mesh(mesh.vertices, mesh.triangles).volume * 1e-9, rel=1e-6
    )


def test_the_same_mesh_and_name_give_the_same_bytes(mesh: Mesh, file: Path, tmp_path: Path):
    write_glb(mesh, tmp_path / "again.glb", NAME)
    assert (tmp_path / "again.glb").read_bytes() == file.read_bytes()


def test_an_unwritable_place_is_bad_input(mesh: Mesh, tmp_path: Path):
    with pytest.raises(InputError, match="No such file"):
        write_glb(mesh, tmp_path / "nowhere" / "tap.glb", NAME)


def _moved(scene: dict[str, Any]) -> None:
    scene["nodes"][0]["scale"] = [2, 2, 2]


def _doubled(scene: dict[str, Any]) -> None:
    scene["nodes"] *= 2


def _lines(scene: dict[str, Any]) -> None:
    scene["meshes"][0]["primitives"][0]["mode"] = 1


def _short(scene: dict[str, Any]) -> None:
    scene["accessors"][1]["count"] += 1


@pytest.mark.parametrize("change", [_moved, _doubled, _lines, _short])
def test_a_file_that_says_something_else_is_noticed(
    file: Path, tmp_path: Path, change: Callable[[dict[str, Any]], None]
):
    path = _rewritten(file, tmp_path / "tap.glb", change)
    with pytest.raises(KernelError, match="GLB"):
        read_glb(path)


def test_half_a_file_is_noticed(file: Path, tmp_path: Path):
    path = tmp_path / "tap.glb"
    path.write_bytes(file.read_bytes()[:-100])
    with pytest.raises(KernelError, match="not a whole file"):
        read_glb(path)


def test_a_missing_triangle_is_seen_as_a_hole(file: Path, tmp_path: Path, mesh: Mesh):
    def without_last(scene: dict[str, Any]) -> None:
        scene["accessors"][0]["count"] -= 3

    content = read_glb(_rewritten(file, tmp_path / "tap.glb", without_last))
    assert (content.watertight, content.triangles) == (False, len(mesh.triangles) - 1)
