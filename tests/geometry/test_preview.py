"""The preview against the independent oracle, and without the kernel."""

import subprocess
import sys
from dataclasses import replace

import numpy as np
import pytest

from tapmodel.checks.ideal.deviation import distance_to_ideal
from tapmodel.checks.ideal.expected import solid_volume
from tapmodel.checks.proof.mesh_report import check_mesh
from tapmodel.checks.proof.self_intersection import self_intersections
from tapmodel.designing.settle import settle
from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.shape.figures import figures_of
from tapmodel.spec.job_file import checked
from tapmodel.tap.tap import Tap

VOLUME = 0.002
LARGEST_DISTANCE = 0.02
"""Between a corner of the mesh and the tap [mm]: the chords of the flutes' round parts."""
LEAST_EXACT = 0.8
"""Share of the corners on a turned or threaded surface that lie on it to rounding."""


def _thread(kind: str, applies_to: str) -> dict[str, object]:
    return {"relief": {"thread": {"kind": kind, "applies_to": applies_to}}}


JOBS: dict[str, dict[str, object]] = {
    "reference": {
        "designation": "M20x1.25",
        "flutes": {"count": 5},
        "blank": {"thread_length": 31.25},
        **_thread("con-eccentric", "thread"),
    },
    "left hand, crest relief": {"designation": "M10-LH", **_thread("con-eccentric", "crest")},
    "two starts": {"designation": "M12xPh3.5P1.75", **_thread("eccentric", "thread")},
    "four starts, left hand": {"designation": "M24xPh12P3-LH", **_thread("eccentric", "crest")},
    "no relief": {
        "designation": "M8",
        "relief": {"thread": {"kind": "concentric"}, "chamfer": {"kind": "concentric"}},
    },
    "no neck, thin shank, front centre": {
        "designation": "M16",
        "blank": {"neck_length": 0.0, "shank_diameter": 12.0, "front_centre": 2.0},
    },
    "no neck, shank between root and crest": {
        "designation": "M16",
        "blank": {"neck_length": 0.0, "shank_diameter": 14.8},
    },
    "no neck, thick shank": {
        "designation": "M6",
        "blank": {"neck_length": 0.0, "shank_diameter": 8.0},
    },
    "bottoming, small, two flutes": {
        "designation": "M3",
        "flutes": {"count": 2},
        "chamfer": {"form": "bottoming"},
    },
    "walls that lean forward": {
        "designation": "M24x3",
        "flutes": {"count": 3, "rake": -18.2, "cutter_diameter": 4.8},
        **_thread("eccentric", "thread"),
    },
}


@pytest.fixture(scope="module", params=sorted(JOBS))
def tap(request: pytest.FixtureRequest) -> Tap:
    made = settle(checked(JOBS[request.param]))
    assert not [finding for finding in made.findings if finding.severity == "error"]
    return made.tap


def test_it_is_one_closed_body_of_the_right_volume(tap: Tap):
    mesh = preview_mesh(tap)
    report = check_mesh(mesh.vertices, mesh.triangles)
    assert (report.watertight, report.genus, report.degenerate, report.parts) == (True, 0, 0, 1)
    assert report.volume == pytest.approx(solid_volume(tap), rel=VOLUME)
    assert self_intersections(mesh.vertices, mesh.triangles) == 0


def test_its_corners_lie_on_the_surfaces(tap: Tap):
    deviation = distance_to_ideal(tap, preview_mesh(tap).vertices)
    distance = np.abs(deviation.distance)
    assert np.max(distance) <= LARGEST_DISTANCE
    assert {"flute", "run-out"} <= set(deviation.surface.tolist())
    for surface in ("thread", "chamfer", "blank", "square", "front"):
        # The threaded ones are met by the flutes between two columns now and then.
        exact = distance[deviation.surface == surface] < 1e-9
        assert np.mean(exact) >= LEAST_EXACT, surface


def test_hand_built_tap_is_mirrored_for_the_left_hand(small_tap: Tap, left_tap: Tap):
    right, left = preview_mesh(small_tap), preview_mesh(left_tap)
    assert np.array_equal(left.vertices, right.vertices * [1.0, -1.0, 1.0])
    volumes = [check_mesh(mesh.vertices, mesh.triangles).volume for mesh in (right, left)]
    assert volumes == pytest.approx([solid_volume(small_tap)] * 2, rel=VOLUME)


def test_each_feature_is_there(small_tap: Tap):
    # Either centre is less than a thousandth of the tap, so it is weighed alone.
    whole = preview_mesh(small_tap)
    for field in ("front_centre", "rear_centre"):
        filled = replace(small_tap, blank=replace(small_tap.blank, **{field: 0.0}))
        mesh = preview_mesh(filled)
        gained = check_mesh(mesh.vertices, mesh.triangles).volume
        gained -= check_mesh(whole.vertices, whole.triangles).volume
        assert gained == pytest.approx(solid_volume(filled) - solid_volume(small_tap), rel=0.01)


def test_faces_are_numbered_by_the_part_they_belong_to(small_tap: Tap):
    mesh = preview_mesh(small_tap)
    middle = mesh.vertices[mesh.triangles].mean(axis=1)
    thread_end = small_tap.blank.thread_length
    assert set(mesh.face_of_triangle.tolist()) == {0, 1, 2}
    assert np.all(middle[mesh.face_of_triangle == 0, 2] <= thread_end)
    assert np.all(middle[mesh.face_of_triangle == 1, 2] >= thread_end)
    flutes = mesh.vertices[np.unique(mesh.triangles[mesh.face_of_triangle == 2])]
    assert np.max(flutes[:, 2]) == pytest.approx(figures_of(small_tap).runout_end, abs=0.05)


def test_the_same_tap_gives_the_same_mesh(small_tap: Tap):
    once, again = preview_mesh(small_tap), preview_mesh(small_tap)
    assert np.array_equal(once.vertices, again.vertices)
    assert np.array_equal(once.triangles, again.triangles)
    assert np.array_equal(once.face_of_triangle, again.face_of_triangle)


def test_neither_the_preview_nor_its_file_loads_the_kernel():
    program = """
import sys
import tapmodel.geometry.preview.quick_mesh, tapmodel.export.mesh.stl
print([name for name in ("OCP", "cadquery", "vtkmodules") if name in sys.modules])
"""
    ran = subprocess.run([sys.executable, "-c", program], capture_output=True, check=True)
    assert ran.stdout.strip() == b"[]"
