"""Points left out of a line lie on it as near as is allowed, and few are kept."""

import math
from itertools import pairwise

import numpy as np
import pytest

from tapmodel.report.drawings.spared import spared


def _off(point: tuple[float, float], ends: list[tuple[float, float]]) -> float:
    """Distance of a point from the nearest piece of a line."""
    found = []
    for (ax, ay), (bx, by) in pairwise(ends):
        length = (bx - ax) ** 2 + (by - ay) ** 2
        share = (
            ((point[0] - ax) * (bx - ax) + (point[1] - ay) * (by - ay)) / length if length else 0
        )
        share = min(max(share, 0.0), 1.0)
        found.append(math.dist(point, (ax + share * (bx - ax), ay + share * (by - ay))))
    return min(found)


def _circle(count: int, turns: float = 1.0) -> list[tuple[float, float]]:
    angles = [math.tau * turns * n / count for n in range(count + 1)]
    return [(5 * math.cos(a), 5 * math.sin(a)) for a in angles]


def _walk(seed: int) -> list[tuple[float, float]]:
    steps = np.random.default_rng(seed).normal((0.03, 0.0), 0.02, (300, 2))
    return [(float(x), float(y)) for x, y in np.cumsum(steps, axis=0)]


BACK = [(0.0, 0.0), (1.0, 0.0), (2.0, 0.0), (1.0, 0.0), (1.0, 1.0)]
LINES = {
    "circle": _circle(720),
    "three turns": _circle(720, 3.0),
    "back on itself": BACK,
    "closed at once": [(0.0, 0.0), (1.0, 0.0), (0.0, 0.0)],
    **{f"walk {seed}": _walk(seed) for seed in range(20)},
}


@pytest.mark.parametrize("name", LINES)
def test_no_point_lies_farther_off_than_is_allowed(name: str) -> None:
    points = LINES[name]
    kept = spared(points, 0.01)
    assert (kept[0], kept[-1]) == (points[0], points[-1])
    places = iter(points)
    assert all(point in places for point in kept)  # in their order
    assert max(_off(point, kept) for point in points) <= 0.01 * (1 + 1e-9)


def test_a_circle_keeps_what_its_sagitta_wants() -> None:
    # Chords of that sagitta: c = 2 sqrt(2 r s), were any place of the circle a point.
    least = math.pi / math.acos(1 - 0.01 / 5)
    kept = len(spared(_circle(5000), 0.01)) - 1
    assert least / 1.5 < kept < 1.5 * least


def test_a_straight_line_keeps_its_ends_and_a_corner_stays() -> None:
    line = [(n / 7, n / 3) for n in range(50)]
    assert spared(line, 1e-6) == [line[0], line[-1]]
    corner = [*line, *((50 / 7, n / 3) for n in range(50, 0, -1))]
    assert (50 / 7, 50 / 3) in spared(corner, 1e-6)


@pytest.mark.parametrize("points", [[], [(1.0, 2.0)], [(1.0, 2.0), (1.0, 2.0)]])
def test_a_spot_stays_as_it_is(points: list[tuple[float, float]]) -> None:
    assert spared(points, 0.01) == points
