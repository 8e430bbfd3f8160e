"""Facets too narrow to be seen make no edges, and hide none."""

import numpy as np

from tapmodel.report.pictures.creases import creases

NARROW = 1e-5
RING = ((0, 1), (1, 2), (2, 3), (0, 3))
BOX = {*RING, *((a + 4, b + 4) for a, b in RING), *((a, a + 4) for a in range(4))}


def _edges(middle: tuple[float, float, float]) -> set[tuple[int, ...]]:
    """Edges found on a cube of 1 whose upper face is divided at `middle`, corner 8."""
    top = [(0.0, 0.0, 1.0), (1.0, 0.0, 1.0), (1.0, 1.0, 1.0), (0.0, 1.0, 1.0)]
    points = np.array([*top, *((x, y, 0.0) for x, y, _ in top), middle])
    faces = [(0, 8, 2), (0, 1, 8), (1, 2, 8), (0, 2, 3), (4, 6, 5), (4, 7, 6)]
    for a, b in ((0, 1), (1, 2), (2, 3), (3, 0)):
        faces += [(a, a + 4, b + 4), (a, b + 4, b)]
    found = creases(points, np.array(faces, dtype=np.int64), 25.0)
    return {tuple(sorted(map(int, pair))) for pair in found}


def test_a_narrow_facet_that_stands_askew_in_a_face_makes_no_edge() -> None:
    assert _edges((0.5, 0.5 - NARROW, 1.0 + NARROW)) == BOX


def test_a_facet_wide_enough_makes_edges() -> None:
    assert _edges((0.5, 0.3, 1.2)) == BOX | {(0, 2), (0, 8), (1, 8), (2, 8)}


def test_a_narrow_facet_along_an_edge_does_not_hide_it() -> None:
    # both of its long sides lie where the edge is seen
    assert _edges((0.5, NARROW, 1.0 + NARROW)) == BOX | {(0, 8), (1, 8)}
