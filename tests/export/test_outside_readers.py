"""The mesh files, judged by programs that share no code with those that wrote them."""

import re
import shutil
import subprocess
from pathlib import Path

import cadquery as cq
import pytest

from tapmodel.checks.proof.mesh_report import check_mesh
from tapmodel.export.mesh.glb import write_glb
from tapmodel.export.mesh.stl import write_stl
from tapmodel.export.mesh.threemf import write_3mf
from tapmodel.geometry.kernel.mesh.tessellation import tessellate
from tapmodel.geometry.triangles import Mesh

NAME = "small tap"
# The files and these programs count in single precision.
VOLUME = 1e-6


@pytest.fixture(scope="module")
def mesh(small_solid: cq.Solid) -> Mesh:
    return tessellate(small_solid, 0.01)


@pytest.fixture(scope="module")
def folder(mesh: Mesh, tmp_path_factory: pytest.TempPathFactory) -> Path:
    place = tmp_path_factory.mktemp("outside")
    write_stl(mesh, place / "tap.stl")
    write_3mf(mesh, place / "tap.3mf", NAME)
    write_glb(mesh, place / "tap.glb", NAME)
    return place


def _volume(mesh: Mesh) -> float:
    return check_mesh(mesh.vertices, mesh.triangles).volume


def _said(*command: str) -> str:
    """What a program prints, or a skip when it is not there."""
    if shutil.which(command[0]) is None:
        pytest.skip(f"{command[0]} is not installed")
    done = subprocess.run(command, capture_output=True, text=True, timeout=60, check=True)
    return done.stdout


def _number(text: str, label: str) -> float:
    """The first number after a label and its colon or equals sign."""
    found = re.search(rf"{label}\s*[:=]\s*(-?[\d.]+)", text)
    assert found, f"{label} is not in:\n{text}"
    return float(found[1])


def test_admesh_finds_every_facet_of_the_stl_joined(folder: Path, mesh: Mesh):
    said = _said("admesh", "--exact", str(folder / "tap.stl"))
    for label in ("Degenerate facets", "Total disconnected facets", "Backwards edges"):
        assert _number(said, label) == 0
    for label in ("Edges fixed", "Facets removed", "Facets added", "Normals fixed"):
        assert _number(said, label) == 0
    assert _number(said, "Number of facets") == len(mesh.triangles)
    assert _number(said, "Volume") == pytest.approx(_volume(mesh), rel=VOLUME)


@pytest.mark.parametrize("suffix", ["stl", "3mf"])
def test_a_slicer_takes_the_file_for_one_manifold_part(folder: Path, mesh: Mesh, suffix: str):
    said = _said("prusa-slicer", "--info", str(folder / f"tap.{suffix}"))
    assert re.search(r"^manifold = yes$", said, re.MULTILINE)
    assert _number(said, "number_of_parts") == 1
    assert _number(said, "number_of_facets") == len(mesh.triangles)
    assert _number(said, "size_z") == pytest.approx(36.0, abs=1e-4)
    assert _number(said, "volume") == pytest.approx(_volume(mesh), rel=VOLUME)


def test_a_viewer_s_importer_sees_the_glb_welded_and_in_metres(folder: Path, mesh: Mesh):
    said = _said("assimp", "info", str(folder / "tap.glb"))
    assert _number(said, "Meshes") == 1
    assert _number(said, "Vertices") == len(mesh.vertices)
    assert _number(said, "Faces") == len(mesh.triangles)
    assert NAME in said
    corners = re.findall(r"(?:Minimum|Maximum) point\s+\((\S+) (\S+) (\S+)\)", said)
    (_, low, _), (_, high, _) = corners
    assert (float(low), float(high)) == pytest.approx((0.0, 0.036), abs=1e-6)


def test_admesh_would_tell_of_a_missing_facet(folder: Path, tmp_path: Path, mesh: Mesh):
    torn = bytearray((folder / "tap.stl").read_bytes()[:-50])
    torn[80:84] = (len(mesh.triangles) - 1).to_bytes(4, "little")
    path = tmp_path / "torn.stl"
    path.write_bytes(torn)
    assert _number(_said("admesh", "--exact", str(path)), "Total disconnected facets") == 3
