import cadquery as cq
import numpy as np
import pytest

from tapmodel.checks.proof.box_pairs import boxes_around
from tapmodel.checks.proof.coverage import largest_by_feature
from tapmodel.checks.proof.nearest import near_triangles
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.geometry.kernel.topology import Solid


def largest(solid: Solid, *points: tuple[float, float, float]) -> float:
    return largest_by_feature({"it": np.array(points)}, TrimmedFaces(solid))["it"]


def plate() -> Solid:
    return cq.Workplane().box(10, 10, 1).faces(">Z").workplane().hole(4).val()


def test_points_of_faces_edges_and_corners_are_found():
    box = cq.Solid.makeBox(3, 4, 5)
    assert largest(box, (1, 1, 0), (3, 2, 5), (3, 4, 5), (0, 0, 2.5)) < 1e-9
    ball = cq.Solid.makeSphere(5, angleDegrees1=-90, angleDegrees2=90)
    seam = [(-5 * np.cos(t), 5 * np.sin(t), 0.0) for t in np.linspace(-1e-9, 1e-9, 5)]
    assert largest(ball, (5, 0, 0), (0, 3, 4), (3, 0, -4), *seam) < 1e-9


def test_a_point_off_every_face_has_its_distance():
    box = cq.Solid.makeBox(3, 4, 5)
    assert largest(box, (1, 1, 0), (1, 1, 0.02)) == pytest.approx(0.02, abs=1e-12)
    assert largest(box, (4, 5, 6)) == pytest.approx(3**0.5, rel=1e-12)
    assert largest(box, (1.5, 2, 2.5)) == pytest.approx(1.5, rel=1e-12)


def test_a_point_on_the_plane_of_a_face_but_in_its_hole_is_off():
    assert largest(plate(), (0, 0, 0.5)) == pytest.approx(2.0, rel=1e-12)
    assert largest(plate(), (1.98, 0, 0.5)) == pytest.approx(0.02, abs=1e-9)
    assert largest(plate(), (2, 0, 0.5), (2, 0, 0), (2.001, 0, 0.5)) < 1e-9


def test_a_point_that_the_search_misses_is_measured_exactly():
    far = TrimmedFaces(plate())
    far.corners += 100.0  # no triangle is near any point any more
    found = largest_by_feature(
        {"on": np.array([[3.0, 0, 0.5]]), "off": np.array([[0.0, 0, 0.5]])}, far
    )
    assert found == pytest.approx({"on": 0.0, "off": 2.0}, abs=1e-9)


def test_boxes_around_points_are_those_found_one_by_one():
    rng = np.random.default_rng(5)
    points, low = rng.uniform(0.0, 1.0, (70, 3)), rng.uniform(0.0, 1.0, (300, 3))
    high = low + rng.uniform(0.0, 0.4, (300, 3))
    hold = (points[:, None] >= low).all(axis=2) & (points[:, None] <= high).all(axis=2)
    point, box = boxes_around(points, low, high)
    assert len(point) == hold.sum()
    assert hold[point, box].all()
    assert boxes_around(points + 9, low, high)[0].size == 0


def test_places_near_points_lie_on_their_triangles():
    corners = np.array([[[0.0, 0, 0], [4, 0, 0], [0, 4, 0]], [[0, 0, 0], [1, 0, 0], [2, 0, 0]]])
    near = near_triangles(np.array([[1.0, 1.0, 0.2], [3.0, 3.0, 0.0]]), corners, 0.5)
    assert near.point.tolist() == [0, 1]
    assert near.triangle.tolist() == [0, 0]
    assert near.weights == pytest.approx(np.array([[0.5, 0.25, 0.25], [0.0, 0.5, 0.5]]))
    assert near.distance == pytest.approx([0.2, 2**0.5])
