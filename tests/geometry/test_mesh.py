from math import pi

import cadquery as cq
import numpy as np
import pytest
import trimesh
from rounded import rounded

from tapmodel.checks.proof.mesh_report import check_mesh
from tapmodel.geometry.kernel.build import build_solid
from tapmodel.geometry.kernel.measure.sampling import sample_faces
from tapmodel.geometry.kernel.measure.solid import volume
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.geometry.kernel.mesh.tessellation import Mesh, open_sides, tessellate
from tapmodel.tap.tap import Tap

CHORDS = (0.04, 0.02, 0.01, 0.005)


@pytest.fixture(scope="module", params=["flat", "rounded"])
def solid(request: pytest.FixtureRequest, small_tap: Tap, small_solid: cq.Solid) -> cq.Solid:
    return small_solid if request.param == "flat" else build_solid(rounded(small_tap))


@pytest.fixture(scope="module")
def meshes(solid: cq.Solid) -> dict[float, Mesh]:
    return {chord: tessellate(solid, chord) for chord in CHORDS}


def test_tap_mesh_is_one_closed_body_at_every_chord(meshes: dict[float, Mesh]):
    for mesh in meshes.values():
        report = check_mesh(mesh.vertices, mesh.triangles)
        assert (report.watertight, report.genus, report.degenerate, report.parts) == (True, 0, 0, 1)


def test_volume_tends_to_the_solids_at_second_order(meshes: dict[float, Mesh], solid: cq.Solid):
    exact = volume(solid)
    errors = [
        abs(check_mesh(mesh.vertices, mesh.triangles).volume - exact) for mesh in meshes.values()
    ]
    # A side s long leaves a chord of s²/8r: second order in the side is first in the chord.
    slope = np.polyfit(np.log(CHORDS), np.log(errors), 1)[0]
    assert 0.75 < slope < 1.15
    assert errors[-1] < 5e-4 * exact


def test_no_triangle_strays_from_its_face_by_more_than_the_chord(
    meshes: dict[float, Mesh], solid: cq.Solid
):
    found = sample_faces(TrimmedFaces(solid), 60, 1)
    points, faces = found.points, found.faces
    for chord, mesh in meshes.items():
        corners = mesh.vertices[mesh.triangles]
        farthest = 0.0
        for face in np.unique(faces):
            mine, near = points[faces == face], corners[mesh.face_of_triangle == face]
            pairs = np.repeat(near[None], len(mine), axis=0).reshape(-1, 3, 3)
            away = np.repeat(mine, len(near), axis=0)
            foot = trimesh.triangles.closest_point(pairs, away)
            gap = np.linalg.norm(foot - away, axis=1).reshape(len(mine), -1).min(axis=1)
            farthest = max(farthest, float(gap.max()))
        assert 0.2 * chord < farthest <= chord


def test_a_coarse_mesh_after_a_fine_one_is_coarse(meshes: dict[float, Mesh], solid: cq.Solid):
    again = tessellate(solid, CHORDS[0])
    assert len(again.triangles) == len(meshes[CHORDS[0]].triangles)
    assert len(meshes[CHORDS[0]].triangles) < len(meshes[CHORDS[-1]].triangles) / 2


def test_the_angle_does_not_decide_on_the_number_of_triangles(small_solid: cq.Solid):
    # On flats and flanks; an arc of a few chords bends by more than the angle in one step.
    usual, free = tessellate(small_solid, 0.01), tessellate(small_solid, 0.01, angle=80.0)
    assert len(free.triangles) == pytest.approx(len(usual.triangles), rel=0.02)


def test_seams_and_poles_are_welded():
    ball = tessellate(cq.Solid.makeSphere(5, angleDegrees1=-90, angleDegrees2=90), 0.01)
    report = check_mesh(ball.vertices, ball.triangles)
    assert (report.watertight, report.genus, report.degenerate) == (True, 0, 0)
    assert report.volume == pytest.approx(4 / 3 * pi * 125, rel=5e-3)
    ring = tessellate(cq.Solid.makeTorus(10, 3), 0.01)
    assert check_mesh(ring.vertices, ring.triangles).genus == 1


def test_every_vertex_is_used_and_every_triangle_knows_its_face():
    box = tessellate(cq.Solid.makeBox(3, 4, 5), 0.1)
    assert (len(box.vertices), len(box.triangles)) == (8, 12)
    corners = box.vertices[box.triangles]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    for face in range(6):
        pair = normals[box.face_of_triangle == face]
        assert len(pair) == 2
        assert np.allclose(np.cross(pair[0], pair[1]), 0)


def test_open_sides_are_counted():
    closed = np.array([[0, 2, 1], [0, 1, 3], [1, 2, 3], [2, 0, 3]])
    assert open_sides(closed) == 0
    assert open_sides(closed[:3]) == 3
    turned = closed.copy()
    turned[3] = turned[3][::-1]
    assert open_sides(turned) > 0
