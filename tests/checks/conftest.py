"""Fixtures of the checks' tests: the hand-built taps, and points found on their surfaces."""

from collections.abc import Callable

import designs
import numpy as np
import pytest

from tapmodel.checks.ideal.laws import inside
from tapmodel.tap.tap import Tap


@pytest.fixture(params=sorted(designs.ALL))
def tap(request: pytest.FixtureRequest) -> Tap:
    """Each of the hand-built taps in turn."""
    return designs.ALL[request.param]()


@pytest.fixture
def taps() -> dict[str, Tap]:
    """All hand-built taps by name."""
    return {name: build() for name, build in designs.ALL.items()}


@pytest.fixture
def random_points() -> Callable[[Tap, int], np.ndarray]:
    """Function that strews points evenly over a box a little larger than the tap."""

    def strew(tap: Tap, count: int) -> np.ndarray:
        reach = max(tap.thread.major, tap.blank.shank_diameter) / 2 + 0.2
        least, most = [-reach, -reach, -0.5], [reach, reach, tap.blank.overall_length + 0.5]
        return np.random.default_rng(7).uniform(least, most, (count, 3))

    return strew


@pytest.fixture
def boundary_points(
    random_points: Callable[[Tap, int], np.ndarray],
) -> Callable[[Tap], np.ndarray]:
    """Function that finds points of a tap's boundary by halving steps that cross it."""

    def find(tap: Tap) -> np.ndarray:
        near = random_points(tap, 100_000)
        far = near + np.random.default_rng(8).normal(0.0, 0.4, near.shape)
        was_in = inside(tap, near)
        crossing = was_in != inside(tap, far)
        near, far, was_in = near[crossing], far[crossing], was_in[crossing]
        for _ in range(55):
            middle = (near + far) / 2
            same = (inside(tap, middle) == was_in)[:, None]
            near, far = np.where(same, middle, near), np.where(same, far, middle)
        return near

    return find
