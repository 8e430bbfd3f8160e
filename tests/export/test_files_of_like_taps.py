"""Files of like taps: of another size, turned by a flute or moved by a pitch, of the other hand."""

import math
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import ezdxf
import numpy as np
import pytest
import trimesh
from ezdxf.entities import DXFEntity
from numpy.typing import NDArray
from scipy.spatial import cKDTree

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from asked import settled_of
from like_taps import left_handed, scaled, scaled_design, shifted, turned, with_tap
from rounded import rounded

from tapmodel.checks.proof.mesh_report import check_mesh
from tapmodel.designing.record import TapDesign
from tapmodel.export.dxf.write import write_profile_dxf, write_section_dxf
from tapmodel.export.mesh.glb import write_glb
from tapmodel.export.mesh.glb_reader import read_glb_part
from tapmodel.export.mesh.stl import write_stl
from tapmodel.export.mesh.threemf import write_3mf
from tapmodel.export.mesh.threemf_reader import read_3mf_part
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.geometry.triangles import Mesh
from tapmodel.shape.outlines import section_tops
from tapmodel.tap.tap import Tap

Floats = NDArray[np.float64]

EXACT = 1e-9
"""Of a place on the tap [mm]."""
MIRROR = np.array([1.0, -1.0])
JOBS = {
    "M18x0.75": (),
    "Tr16x6P3": (),
    "1/2 BSW": (),
    "M10": ("flutes.count=2", "relief.thread.kind=eccentric"),
}


@pytest.fixture(scope="module", params=JOBS)
def design(request: pytest.FixtureRequest) -> TapDesign:
    return settled_of(request.param, JOBS[request.param])


# --- outlines for CAD and CAM programs ------------------------------------------------------------

Write = Callable[[TapDesign, Path], None]


def _drawn(write: Write, design: TapDesign, path: Path) -> Floats:
    """Start, middle and end of every piece of a file, an arc counter-clockwise; (n, 3, 2) [mm].

    Middles tell arcs from lines and from each other, and are known better than flat arcs' centres.
    """
    write(design, path)
    drawn = ezdxf.readfile(path).modelspace().query('*[layer!="TEXT"]')
    return np.array([_piece(entity) for entity in drawn])


def _piece(entity: DXFEntity) -> list[tuple[float, float]]:
    if entity.dxftype() == "LINE":
        ends = entity.dxf.start, entity.dxf.end
        places = [ends[0], (ends[0] + ends[1]) / 2, ends[1]]
    else:
        start, end = entity.dxf.start_angle, entity.dxf.end_angle
        middle = start + (end - start) % 360 / 2
        places = list(entity.vertices([start, middle, end]))
    return [(place.x, place.y) for place in places]


def _apart(one: Floats, other: Floats) -> float:
    """How far pieces of one file are from those of another, in whatever order [mm]."""
    assert one.shape == other.shape
    flat = [pieces.reshape(len(pieces), -1) for pieces in (one, other)]
    distance, partner = cKDTree(flat[0]).query(flat[1])
    return float(distance.max()) if len(set(partner.tolist())) == len(one) else math.inf


@pytest.mark.parametrize("times", [2.0, 10.0, 0.5])
@pytest.mark.parametrize("write", [write_section_dxf, write_profile_dxf])
def test_outlines_of_a_larger_tap_are_larger(
    write: Write,
    times: float,
    design: TapDesign,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    first = _drawn(write, design, tmp_path / "first.dxf")
    # How closely arcs follow a relieved top is a length like any other.
    monkeypatch.setattr(section_tops, "ARC_DEVIATION", times * section_tops.ARC_DEVIATION)
    second = _drawn(write, scaled_design(design, times), tmp_path / "second.dxf")
    assert _apart(times * first, second) < EXACT * times


@pytest.mark.parametrize("flutes", [1, -1, 2])
def test_the_section_turns_with_the_tap(flutes: int, design: TapDesign, tmp_path: Path) -> None:
    first = _drawn(write_section_dxf, design, tmp_path / "first.dxf")
    other = with_tap(design, turned(design.tap, flutes))
    second = _drawn(write_section_dxf, other, tmp_path / "second.dxf")
    angle = 2 * np.pi * flutes / design.tap.flutes.count
    assert _apart(first @ _turn(angle), second) < EXACT


def _turn(angle: float) -> Floats:
    """Turns points that stand in rows [rad]."""
    cosine, sine = np.cos(angle), np.sin(angle)
    return np.array([[cosine, sine], [-sine, cosine]])


@pytest.mark.parametrize("pitches", [1, -1])
def test_a_thread_a_pitch_on_has_the_same_section(
    pitches: int, design: TapDesign, tmp_path: Path
) -> None:
    first = _drawn(write_section_dxf, design, tmp_path / "first.dxf")
    other = with_tap(design, shifted(design.tap, pitches * design.tap.thread.pitch))
    assert _apart(first, _drawn(write_section_dxf, other, tmp_path / "second.dxf")) < EXACT


def test_the_section_of_the_other_hand_is_the_mirror_image(
    design: TapDesign, tmp_path: Path
) -> None:
    first = _drawn(write_section_dxf, design, tmp_path / "first.dxf")
    left = with_tap(design, left_handed(design.tap))
    second = _drawn(write_section_dxf, left, tmp_path / "second.dxf")
    assert _apart(first[:, ::-1] * MIRROR, second) < EXACT
    # No tap is its own mirror image.
    assert _apart(first, second) > 0.01


def test_the_profile_is_that_of_the_other_hand(design: TapDesign, tmp_path: Path) -> None:
    first = _drawn(write_profile_dxf, design, tmp_path / "first.dxf")
    left = with_tap(design, left_handed(design.tap))
    assert np.array_equal(first, _drawn(write_profile_dxf, left, tmp_path / "second.dxf"))


# --- meshes ---------------------------------------------------------------------------------------


def _off(one: Floats, other: Floats) -> float:
    """Largest distance from a corner of a mesh to the nearest of another, both ways [mm]."""
    ways = (cKDTree(one).query(other)[0], cKDTree(other).query(one)[0])
    return float(max(way.max() for way in ways))


def _volume(mesh: Mesh) -> float:
    return check_mesh(mesh.vertices, mesh.triangles).volume


@pytest.mark.parametrize("times", [2.0, 0.5])
def test_the_preview_of_a_larger_tap_has_the_cube_of_its_volume(
    design: TapDesign, times: float
) -> None:
    first, second = (preview_mesh(tap) for tap in (design.tap, scaled(design.tap, times)))
    assert len(second.triangles) == len(first.triangles)
    assert _volume(second) == pytest.approx(times**3 * _volume(first), rel=1e-11)


# Three flutes leave the columns of a preview upright; where they have to lean, their place hangs on
# lengths that do not grow with the tap.
UPRIGHT: dict[str, Callable[[Tap], Tap]] = {
    "as it is": lambda tap: tap,
    "left hand, two starts": lambda tap: left_handed(_with_starts(tap, 2)),
    "rounded": rounded,
}


def _with_starts(tap: Tap, starts: int) -> Tap:
    return replace(tap, thread=replace(tap.thread, starts=starts))


@pytest.mark.parametrize("times", [2.0, 10.0, 0.5])
@pytest.mark.parametrize("name", UPRIGHT)
def test_every_corner_of_the_preview_grows_with_the_tap(
    name: str, times: float, small_tap: Tap
) -> None:
    tap = UPRIGHT[name](small_tap)
    first, second = (preview_mesh(of) for of in (tap, scaled(tap, times)))
    assert _off(times * first.vertices, second.vertices) < EXACT * times


def test_a_thread_a_pitch_on_has_the_same_preview(design: TapDesign) -> None:
    tap = design.tap
    first, second = (preview_mesh(t) for t in (tap, shifted(tap, tap.thread.pitch)))
    assert _off(first.vertices, second.vertices) < EXACT
    assert _volume(second) == pytest.approx(_volume(first), rel=1e-11)


def test_the_preview_turns_with_the_tap_up_to_the_end_of_its_thread(design: TapDesign) -> None:
    # Behind it the square stays where it is.
    tap = design.tap
    first, second = (
        mesh.vertices[mesh.vertices[:, 2] < tap.blank.thread_length - EXACT]
        for mesh in map(preview_mesh, (tap, turned(tap, 1)))
    )
    assert len(first) > 1000
    about = first[:, :2] @ _turn(2 * np.pi / tap.flutes.count)
    assert _off(np.column_stack([about, first[:, 2]]), second) < EXACT


# --- files of triangles ---------------------------------------------------------------------------


def _stl(mesh: Mesh, path: Path) -> tuple[Floats, NDArray[np.intp]]:
    write_stl(mesh, path)
    read = trimesh.load_mesh(path, file_type="stl", process=False)
    read.merge_vertices(digits_vertex=9)
    return read.vertices, read.faces


def _threemf(mesh: Mesh, path: Path) -> tuple[Floats, NDArray[np.intp]]:
    write_3mf(mesh, path, "tap")
    part = read_3mf_part(path)
    return part.vertices, part.triangles


def _glb(mesh: Mesh, path: Path) -> tuple[Floats, NDArray[np.intp]]:
    write_glb(mesh, path, "tap")
    part = read_glb_part(path)
    return part.vertices, part.triangles


WRITERS = {"stl": _stl, "3mf": _threemf, "glb": _glb}


def _in_order(vertices: Floats) -> Floats:
    return np.unique(vertices, axis=0)


@pytest.mark.parametrize("kind", WRITERS)
def test_a_file_of_a_larger_mesh_is_larger(kind: str, small_tap: Tap, tmp_path: Path) -> None:
    mesh = preview_mesh(small_tap)
    first, _ = WRITERS[kind](mesh, tmp_path / "first")
    double = replace(mesh, vertices=2 * mesh.vertices)
    second, triangles = WRITERS[kind](double, tmp_path / "second")
    # 3MF keeps six decimals.
    assert _off(2 * first, second) < (3e-6 if kind == "3mf" else 1e-12)
    assert check_mesh(second, triangles).volume == pytest.approx(8 * _volume(mesh), rel=1e-6)


@pytest.mark.parametrize("kind", WRITERS)
def test_a_file_of_the_other_hand_is_the_mirror_image(
    kind: str, small_tap: Tap, left_tap: Tap, tmp_path: Path
) -> None:
    first, _ = WRITERS[kind](preview_mesh(small_tap), tmp_path / "first")
    second, triangles = WRITERS[kind](preview_mesh(left_tap), tmp_path / "second")
    assert np.array_equal(_in_order(first * [1.0, -1.0, 1.0]), _in_order(second))
    # Faces that looked inwards would count negative.
    report = check_mesh(second, triangles)
    assert report.watertight
    assert report.volume == pytest.approx(_volume(preview_mesh(small_tap)), rel=1e-6)
