"""Slits of three sides, as narrow as what the kernel takes for nothing."""

import numpy as np
import pytest

from tapmodel.geometry.slits import WIDEST, slits
from tapmodel.geometry.triangles import open_sides

# A tetrahedron one of whose edges is divided 49 nm from its end, on one of the two faces there.
WIDTH = 4.9e-5
CORNERS = np.array([[0.0, 0, 0], [6, 0, 0], [0, 6, 0], [0, 0, 6], [WIDTH, WIDTH, 0]])
WHOLE = np.array([[0, 2, 1], [0, 1, 3], [1, 2, 3], [2, 0, 3]])


def test_a_slit_is_closed_the_way_its_neighbours_run() -> None:
    divided = np.array([[0, 2, 4], [4, 2, 1], *WHOLE[1:]])
    missing = slits(CORNERS, divided)
    assert missing.tolist() == [[0, 4, 1]]
    assert open_sides(divided) > 0
    assert open_sides(np.vstack([divided, missing])) == 0


def test_a_wider_hole_stays_open() -> None:
    wider = CORNERS.copy()
    wider[4] = [2 * WIDEST, 2 * WIDEST, 0]
    divided = np.array([[0, 2, 4], [4, 2, 1], *WHOLE[1:]])
    assert len(slits(wider, divided)) == 0


@pytest.mark.parametrize("faces", [WHOLE, WHOLE[1:]])
def test_a_closed_mesh_and_a_missing_face_are_left_as_they_are(faces: np.ndarray) -> None:
    assert len(slits(CORNERS, faces)) == 0
