import math
from collections.abc import Callable
from dataclasses import replace

import designs
import numpy as np
import pytest

from tapmodel.checks.ideal.deviation import distance_to_ideal, largest_by_surface
from tapmodel.checks.ideal.laws import inside
from tapmodel.checks.ideal.walls import crest_edge
from tapmodel.shape import relief
from tapmodel.tap.tap import Tap

SURFACES = {"thread", "chamfer", "flute", "run-out", "blank", "square", "front"}


def test_boundary_points_lie_at_no_distance_and_every_surface_is_met(
    tap: Tap, boundary_points: Callable[[Tap], np.ndarray]
):
    deviation = distance_to_ideal(tap, boundary_points(tap))
    assert np.abs(deviation.distance).max() < 1e-12
    assert set(largest_by_surface(deviation)) == SURFACES


def test_sign_tells_inside_from_outside(tap: Tap, random_points: Callable[[Tap, int], np.ndarray]):
    points = random_points(tap, 300_000)
    assert np.array_equal(distance_to_ideal(tap, points).distance <= 0, inside(tap, points))


def test_distance_grows_at_the_rate_of_the_distance(
    tap: Tap, boundary_points: Callable[[Tap], np.ndarray]
):
    points, step = boundary_points(tap), 1e-6
    gradient = [
        distance_to_ideal(tap, points + step * axis).distance
        - distance_to_ideal(tap, points - step * axis).distance
        for axis in np.eye(3)
    ]
    rate = np.linalg.norm(gradient, axis=0) / (2 * step)
    # edges within a step of a point spoil the rate of a few
    assert np.percentile(rate, [1, 99]) == pytest.approx([1.0, 1.0], abs=0.012)


def thread_points(tap: Tap, boundary_points: Callable[[Tap], np.ndarray]):
    points = boundary_points(tap)
    return points[distance_to_ideal(tap, points).surface == "thread"]


def test_wrong_pitch_diameter_shows_square_to_the_flank(
    boundary_points: Callable[[Tap], np.ndarray],
):
    tap = designs.m10()
    points = thread_points(tap, boundary_points)
    thread, thicker = tap.thread, 0.02
    # at the same crest and root, so that the flanks alone are elsewhere
    wrong = replace(thread, pitch_diameter=thread.pitch_diameter + thicker)
    found = distance_to_ideal(replace(tap, thread=wrong), points).distance
    lead_angle = math.atan(thread.lead * math.sqrt(3) / (2 * math.pi * 4.7) / 2)
    assert -found.min() == pytest.approx(0.01 * 0.5 * math.cos(lead_angle), rel=0.01)


@pytest.mark.parametrize(
    ("field", "change", "surface", "expected"),
    [
        ("major", 0.02, "thread", 0.01),
        ("minor", 0.02, "thread", 0.01),
        ("first_z", 0.01, "thread", 0.01 * math.cos(math.radians(30))),
    ],
)
def test_wrong_thread_shows(
    boundary_points: Callable[[Tap], np.ndarray],
    field: str,
    change: float,
    surface: str,
    expected: float,
):
    tap = designs.m10()
    points = boundary_points(tap)
    wrong = replace(tap.thread, **{field: getattr(tap.thread, field) + change})
    found = largest_by_surface(distance_to_ideal(replace(tap, thread=wrong), points))
    assert found[surface] == pytest.approx(expected, rel=0.02)


def test_flute_left_uncut_shows_by_its_depth():
    tap = designs.m10()
    uncut = tap.thread.minor / 2
    point = np.array([[uncut, 0.0, 15.0]])
    found = distance_to_ideal(tap, point)
    assert found.distance[0] == pytest.approx(2.1 - 0.6, rel=1e-12)
    assert found.surface[0] == "flute"


def test_relief_left_out_shows_by_its_drop():
    tap, phi = designs.m18(), 40.0
    theta = crest_edge(tap.flutes, tap.thread.major) + phi
    z = (tap.thread.first_z + tap.thread.lead * theta / 360) % tap.thread.pitch
    cone = 8.5 + z * math.tan(math.radians(tap.chamfer.angle))
    turn = math.radians(theta)
    found = distance_to_ideal(tap, np.array([[cone * math.cos(turn), cone * math.sin(turn), z]]))
    drop = relief.heel_drop(tap.relief.chamfer, tap.thread.major, phi)
    assert drop > 0.1
    assert found.distance[0] == pytest.approx(drop * math.cos(math.radians(tap.chamfer.angle)))
    assert found.surface[0] == "chamfer"


def test_planes_between_thread_and_blank_are_boundary_only_where_one_ends(
    taps: dict[str, Tap],
):
    thin, thick = taps["m10"], taps["no_neck"]
    # in the middle of a land
    out = np.array([math.cos(math.radians(70.0)), math.sin(math.radians(70.0)), 0.0])
    end = np.array([0.0, 0.0, 1.0])
    points = np.array([4.0 * out + 24.0 * end, 3.2 * out + 24.0 * end])  # facing the square
    found = distance_to_ideal(thin, points).distance
    assert found == pytest.approx([0.0, -0.6])
    points = np.array([3.1 * out + 19.0 * end, 2.0 * out + 19.0 * end])  # facing the front
    found = distance_to_ideal(thick, points).distance
    assert found[0] == 0.0
    assert found[1] < -0.3
