import numpy as np

from tapmodel.geometry.trace.coincidence import labels


def sorts(points: list[tuple[float, float, float]]) -> list[list[int]]:
    """Numbers of the points at each place."""
    label = labels(np.array(points), 1.0)
    places = [np.flatnonzero(label == n).tolist() for n in range(label.max() + 1)]
    return sorted(places)


def test_a_chain_of_near_points_is_one_place_in_any_order():
    assert sorts([(2.7, 0, 0), (0, 0, 0), (0.9, 0, 0), (1.8, 0, 0)]) == [[0, 1, 2, 3]]
    assert sorts([(2.7, 0, 0), (0, 0, 0), (0.6, 0, 0), (1.65, 0, 0)]) == [[0], [1, 2], [3]]


def test_points_near_along_two_axes_only_are_apart():
    points = [(0.0, 0.0, 0.0), (0.0, 0.0, 1.01), (0.0, 1.01, 0.0), (1.01, 0.0, 0.0)]
    assert sorts(points) == [[0], [1], [2], [3]]


def test_a_chain_through_points_of_other_places_joins_nothing():
    # Along x the second lies between the others, but elsewhere along z.
    assert sorts([(0, 0, 0), (0.8, 0, 9), (1.6, 0, 0)]) == [[0], [1], [2]]


def test_as_many_places_as_points_were_scattered_about():
    rng = np.random.default_rng(3)
    places = rng.uniform(0, 9, (400, 3))
    which = rng.integers(0, 400, 3000)
    points = places[which] + rng.uniform(-4e-8, 4e-8, (3000, 3))
    label = labels(points, 1e-7)
    assert len(np.unique(label)) == len(np.unique(which)) == label.max() + 1
    assert len(np.unique(np.stack([label, which]), axis=1).T) == len(np.unique(which))
