import math

import numpy as np
import pytest
import trimesh

from tapmodel.checks.proof.mesh_report import check_mesh


def test_box():
    box = trimesh.creation.box((2.0, 3.0, 4.0))
    report = check_mesh(box.vertices, box.faces)
    assert report.volume == pytest.approx(24.0, rel=1e-12)
    assert (report.triangles, report.watertight, report.genus) == (12, True, 0)
    assert (report.degenerate, report.parts) == (0, 1)


def test_torus_has_one_handle():
    torus = trimesh.creation.torus(5.0, 1.0, 200, 100)
    report = check_mesh(torus.vertices, torus.faces)
    assert (report.watertight, report.genus, report.parts) == (True, 1, 1)
    assert report.volume == pytest.approx(2 * math.pi**2 * 5.0, rel=2e-3)


def test_two_parts_add_up():
    box = trimesh.creation.box((1.0, 1.0, 1.0))
    torus = trimesh.creation.torus(5.0, 1.0)
    both = trimesh.util.concatenate([box, torus])
    report = check_mesh(both.vertices, both.faces)
    assert (report.watertight, report.genus, report.parts) == (True, 1, 2)


def test_missing_triangle_is_a_leak():
    box = trimesh.creation.box((1.0, 1.0, 1.0))
    assert not check_mesh(box.vertices, box.faces[1:]).watertight


def test_triangle_turned_over_is_no_sound_surface():
    box = trimesh.creation.box((1.0, 1.0, 1.0))
    faces = np.array(box.faces)
    faces[0] = faces[0][::-1]
    assert not check_mesh(box.vertices, faces).watertight


def test_inside_out_has_negative_volume():
    box = trimesh.creation.box((1.0, 1.0, 1.0))
    assert check_mesh(box.vertices, box.faces[:, ::-1]).volume == pytest.approx(-1.0)


def test_needles_without_area_are_counted():
    vertices = np.array([[0.0, 0, 0], [1, 0, 0], [2, 0, 0], [0, 1, 0]])
    faces = np.array([[0, 1, 2], [0, 1, 3], [0, 0, 3]])
    assert check_mesh(vertices, faces).degenerate == 2


def test_two_boxes_hinged_on_a_common_edge_are_no_sound_surface():
    box = trimesh.creation.box((1.0, 1.0, 1.0))
    other = box.copy()
    other.apply_translation((1.0, 1.0, 0.0))
    hinged = trimesh.util.concatenate([box, other])
    hinged.merge_vertices()
    assert len(hinged.vertices) == 14
    assert not check_mesh(hinged.vertices, hinged.faces).watertight


def test_corner_that_is_no_number_is_no_sound_surface():
    box = trimesh.creation.box((1.0, 1.0, 1.0))
    vertices = np.array(box.vertices)
    vertices[0, 0] = np.nan
    assert not check_mesh(vertices, box.faces).watertight
