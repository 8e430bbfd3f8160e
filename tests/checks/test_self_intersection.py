import numpy as np
import pytest
import trimesh

from tapmodel.checks.proof.box_pairs import overlapping_pairs
from tapmodel.checks.proof.self_intersection import self_intersections

Triple = tuple[float, float, float]
TILTED = trimesh.transformations.rotation_matrix(0.7, [1.0, 2.0, 3.0])


def count(*meshes: trimesh.Trimesh, turn: np.ndarray | None = None):
    whole = trimesh.util.concatenate(list(meshes))
    if turn is not None:
        whole.apply_transform(turn)
    return self_intersections(whole.vertices, whole.faces)


def box(size: Triple = (1.0, 1.0, 1.0), at: Triple = (0.0, 0.0, 0.0)):
    made = trimesh.creation.box(size)
    made.apply_translation(at)
    return made


def triangles(*corners: object):
    """A mesh of separate triangles from their corners."""
    points = np.array(corners, dtype=float).reshape(-1, 3)
    return points, np.arange(len(points)).reshape(-1, 3)


@pytest.mark.parametrize("turn", [None, TILTED], ids=["square", "tilted"])
@pytest.mark.parametrize(
    "mesh",
    [
        box(),
        trimesh.creation.icosphere(subdivisions=4),
        trimesh.creation.torus(5.0, 1.0, 60, 30),
        trimesh.creation.cylinder(2.0, 40.0, sections=300),
    ],
    ids=["box", "sphere", "torus", "long-slivers"],
)
def test_sound_meshes_do_not_intersect(mesh: trimesh.Trimesh, turn: np.ndarray | None):
    assert count(mesh, turn=turn) == 0


@pytest.mark.parametrize("turn", [None, TILTED], ids=["square", "tilted"])
def test_boxes_apart_and_one_within_the_other_do_not_intersect(turn: np.ndarray | None):
    assert count(box(), box(at=(1.5, 0, 0)), turn=turn) == 0
    assert count(box(), box((0.5, 0.5, 0.5)), turn=turn) == 0


@pytest.mark.parametrize("turn", [None, TILTED], ids=["square", "tilted"])
def test_boxes_run_into_each_other(turn: np.ndarray | None):
    assert count(box(), box(at=(0.5, 0.4, 0.3)), turn=turn) > 0


def test_shallow_intersection_is_found_and_a_narrow_gap_is_none():
    assert count(box(), box((0.2, 0.2, 0.2), at=(0.6 - 1e-6, 0, 0))) > 0
    assert count(box(), box((0.2, 0.2, 0.2), at=(0.6 + 1e-6, 0, 0))) == 0


def test_number_of_pairs_equals_that_of_all_pairs_tried():
    one, other = trimesh.creation.icosphere(1), trimesh.creation.icosphere(1)
    other.apply_translation((1.1, 0.2, 0.3))
    whole = trimesh.util.concatenate([one, other])
    corners = np.asarray(whole.triangles)
    found = 0
    for i in range(len(corners)):
        for j in np.flatnonzero((corners[i].min(0) <= corners.max(1)).all(1)):
            if j > i and crossing(corners[i], corners[j]):
                found += 1
    assert found > 20
    assert self_intersections(whole.vertices, whole.faces) == found


def crossing(one: np.ndarray, other: np.ndarray):
    """Whether a side of one triangle passes through the inside of the other."""
    return any(
        pierces(a[k], a[(k + 1) % 3], b) for a, b in ((one, other), (other, one)) for k in range(3)
    )


def pierces(start: np.ndarray, end: np.ndarray, triangle: np.ndarray):
    matrix = np.array([triangle[1] - triangle[0], triangle[2] - triangle[0], start - end]).T
    if abs(np.linalg.det(matrix)) < 1e-14:
        return False
    s, t, along = np.linalg.solve(matrix, start - triangle[0])
    return min(s, t, along, 1 - s - t, 1 - along) > 1e-9


def test_fin_through_a_wall():
    fin = triangles(
        [[0, 0, 0], [4, 0, 0], [0, 4, 0]],
        [[1, 1, -1], [1.2, 1, 1], [1, 1.3, 1]],
    )
    assert self_intersections(*fin) == 1


def test_fold_back_over_a_shared_side():
    points = np.array([[0.0, 0, 0], [1, 0, 0], [0, 1, 0], [0.2, 0.5, 0], [0.2, -0.5, 0]])
    assert self_intersections(points, np.array([[0, 1, 2], [1, 0, 3]])) == 1
    assert self_intersections(points, np.array([[0, 1, 2], [1, 0, 4]])) == 0


def test_sharp_fold_that_does_not_touch_is_sound():
    points = np.array([[0.0, 0, 0], [1, 0, 0], [0, 1, 0], [0.2, 0.5, 1e-4]])
    assert self_intersections(points, np.array([[0, 1, 2], [1, 0, 3]])) == 0


def test_triangles_sharing_one_corner_may_still_run_through_each_other():
    points = np.array(
        [[0.0, 0, 0], [2, 0, 0], [0, 2, 0], [1, 1, 0.5], [1, 0.5, -0.5], [-1, 0, 1], [-1, -1, 1]]
    )
    assert self_intersections(points, np.array([[0, 1, 2], [0, 3, 4]])) == 1
    assert self_intersections(points, np.array([[0, 1, 2], [0, 5, 6]])) == 0


def test_overlap_within_a_plane():
    apart, over = [3.0, 3.0, 0.0], [0.2, 0.2, 0.0]
    base = np.array([[0.0, 0, 0], [1, 0, 0], [0, 1, 0]])
    assert self_intersections(*triangles(base, base + over)) == 1
    assert self_intersections(*triangles(base, base + apart)) == 0
    assert self_intersections(*triangles(base, base)) == 1


def test_pairs_of_boxes_are_those_found_one_by_one():
    rng = np.random.default_rng(3)
    low = rng.uniform(0.0, 1.0, (300, 3))
    high = low + rng.uniform(0.0, 0.3, (300, 3))
    meet = (low[:, None] <= high[None]) & (low[None] <= high[:, None])
    expected = {(i, j) for i, j in np.argwhere(meet.all(axis=2)).tolist() if i < j}
    batches = list(overlapping_pairs(low, high))
    found = [pair for i, j in batches for pair in zip(i.tolist(), j.tolist(), strict=True)]
    assert len(found) == len(set(found))
    assert set(found) == expected


def test_in_a_plane_a_side_of_either_triangle_may_part_them():
    small = np.array([[0.0, 0, 0], [1, 0, 0], [0, 1, 0]])
    large = np.array([[-4.0, 1.9, 0], [-4, -4, 0], [4, -2.1, 0]])  # x + 2y <= -0.2
    assert self_intersections(*triangles(small, large)) == 0
    assert self_intersections(*triangles(large, small)) == 0
    assert self_intersections(*triangles(large + np.array([0.0, 0.2, 0.0]), small)) == 1
