import numpy as np
import pytest

from tapmodel.checks.proof.mesh_report import check_mesh
from tapmodel.errors import KernelError
from tapmodel.geometry.flat_triangles import heights, without_flat

CORNERS = np.array([[0.0, 0, 0], [6, 0, 0], [0, 6, 0], [0, 0, 6]])
FACES = [[0, 2, 1], [0, 1, 3], [1, 2, 3], [2, 0, 3]]


def test_heights_over_the_longest_side():
    triangles = np.array([[0, 1, 2], [0, 1, 1]])
    assert heights(CORNERS, triangles) == pytest.approx([0.5, 0.0])


def test_a_triangle_along_a_line_is_turned_with_its_neighbour():
    # Vertex 4 lies on the side 0-1: one face is divided there, the other kept whole, and a flat
    # triangle fills the slit between them.
    vertices = np.vstack([CORNERS, [[2.0, 0, 0]]])
    triangles = np.array([[0, 2, 1], [0, 4, 3], [4, 1, 3], *FACES[2:], [0, 1, 4]])
    kept, rows = without_flat(vertices, triangles)
    report = check_mesh(vertices, kept)
    assert report.watertight
    assert report.volume == pytest.approx(36.0)
    assert len(kept) == len(triangles) == len(rows)
    assert heights(vertices, kept).min() > 0.1


def test_a_triangle_with_a_repeated_corner_is_left_out():
    triangles = np.array([FACES[0], [1, 3, 3], *FACES[1:]])
    kept, rows = without_flat(CORNERS, triangles)
    assert kept.tolist() == FACES
    assert rows.tolist() == [0, 2, 3, 4]


def test_two_flat_triangles_back_to_back_vanish():
    # Vertex 4 lies on the side 0-1; both faces there are whole, and a fin fills the slit.
    vertices = np.vstack([CORNERS, [[2.0, 0, 0]]])
    fin = np.array([*FACES, [0, 1, 4], [1, 0, 4]])
    kept, rows = without_flat(vertices, fin)
    assert kept.tolist() == FACES
    assert rows.tolist() == [0, 1, 2, 3]


def test_a_mesh_folded_flat_is_refused():
    flat = CORNERS * [1.0, 0.0, 0.0]
    with pytest.raises(KernelError, match="flat triangles"):
        without_flat(flat, np.array(FACES))
