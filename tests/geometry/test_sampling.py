import cadquery as cq
import numpy as np
import pytest

from tapmodel.checks.ideal.deviation import distance_to_ideal
from tapmodel.geometry.kernel.measure.sampling import Samples, sample_faces
from tapmodel.geometry.kernel.measure.trimmed import TrimmedFaces
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.tap.tap import Tap


def sampled(solid: Solid, per_face: int, spread: int = 0) -> Samples:
    return sample_faces(TrimmedFaces(solid), per_face, spread)


def test_points_lie_on_the_exact_surface_not_on_the_mesh():
    ball = cq.Solid.makeSphere(5, angleDegrees1=-90, angleDegrees2=90)
    found = sampled(ball, 300)
    assert np.linalg.norm(found.points, axis=1) == pytest.approx(np.full(300, 5.0), abs=1e-12)
    assert set(found.faces.tolist()) == {0}


def test_every_face_gets_its_points_and_the_larger_ones_more():
    box = cq.Solid.makeBox(3, 4, 5)
    assert np.bincount(sampled(box, 7).faces).tolist() == [7] * 6
    counts = np.bincount(sampled(box, 1, 940).faces).tolist()
    assert sorted(counts) == [121, 121, 151, 151, 201, 201]  # 10 for each mm², and 1


def test_points_spread_evenly_over_the_face():
    plate = cq.Solid.makeBox(10, 4, 1)
    found = sampled(plate, 400)
    points, faces = found.points, found.faces
    for face in range(6):
        mine = points[faces == face]
        low, high = mine.min(axis=0), mine.max(axis=0)
        assert mine.mean(axis=0) == pytest.approx((low + high) / 2, abs=0.15)
        wide = [n for n, size in enumerate((10, 4, 1)) if high[n] - low[n] > 0.9 * size]
        assert len(wide) == 2


def test_points_keep_inside_holes_borders():
    plate = cq.Workplane().box(10, 10, 1).faces(">Z").workplane().hole(9).val()
    points = sampled(plate, 500).points
    top = points[points[:, 2] > 0.5 - 1e-9]
    assert len(top) == 500
    assert np.hypot(top[:, 0], top[:, 1]).min() > 4.5
    assert np.abs(top[:, :2]).max() < 5


def test_points_of_a_tap_lie_on_its_ideal_boundary(small_tap: Tap, small_solid: cq.Solid):
    found = sampled(small_solid, 5, 2000)
    assert len(found.points) > 5 * len(small_solid.Faces()) + 1900
    assert found.slivers == 0
    assert len(np.unique(found.faces)) == len(small_solid.Faces())
    assert np.abs(distance_to_ideal(small_tap, found.points).distance).max() < 1e-7


def test_the_same_solid_gives_the_same_points(small_solid: cq.Solid):
    first, again = (sampled(small_solid, 3, 100).points for _ in range(2))
    assert np.array_equal(first, again)


def test_the_borders_of_a_sliver_stand_for_it():
    foil = cq.Solid.makeBox(3, 4, 1.5e-7)
    found = sampled(foil, 3)
    assert found.slivers == 4
    assert set(found.faces.tolist()) == set(range(6))
    assert np.abs(found.points).max() == 4.0
