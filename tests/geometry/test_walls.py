import math

import numpy as np
import pytest

from tapmodel.shape.walls import FACE, HEEL, Walls

WALLS = Walls(6.0, -0.75, np.asarray(2.0))


@pytest.mark.parametrize("side", [FACE, HEEL])
def test_on_the_straight_wall_the_distance_from_the_plane_is_that_of_the_cutter(side: int) -> None:
    radius = np.array([6.7, 7.5, 9.0])
    angle = WALLS.angle(side, radius)
    assert radius * np.sin(angle) == pytest.approx([-0.75 + side * 2.0] * 3, abs=1e-14)
    assert np.all(radius * np.cos(angle) > 6.0)


@pytest.mark.parametrize("side", [FACE, HEEL])
def test_below_its_centre_the_wall_lies_on_the_ball(side: int) -> None:
    core = math.hypot(6.0, 0.75) - 2.0
    radius = np.array([core + 1e-6, 4.5, 5.5, 6.0])
    angle = WALLS.angle(side, radius)
    u, t = radius * np.cos(angle), radius * np.sin(angle)
    assert np.hypot(u - 6.0, t + 0.75) == pytest.approx([2.0] * 4, abs=1e-12)


def test_the_two_walls_meet_at_the_core() -> None:
    core = np.asarray(math.hypot(6.0, 0.75) - 2.0)
    assert WALLS.angle(FACE, core) == pytest.approx(float(WALLS.angle(HEEL, core)), abs=1e-6)


def test_an_offset_to_the_rear_turns_the_cutting_face_to_the_rear() -> None:
    centred, back = Walls(6.0, 0.0, np.asarray(2.0)), Walls(6.0, 0.5, np.asarray(2.0))
    radius = np.asarray(8.0)
    assert math.sin(float(centred.angle(FACE, radius))) == pytest.approx(2.0 / 8.0)
    assert math.sin(float(back.angle(FACE, radius))) == pytest.approx(2.5 / 8.0)
