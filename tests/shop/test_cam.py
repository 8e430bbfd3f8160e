"""The ball's path in the frame of the model, held to the definition of the ideal solid."""

import math

import numpy as np
import pytest

from tapmodel.checks.ideal.deviation import distance_to_ideal
from tapmodel.checks.ideal.laws import blank_radius
from tapmodel.designing.settle import settle
from tapmodel.shop.cam import BallPath, ball_paths, cutter_reach
from tapmodel.spec.job_file import job_for
from tapmodel.tap.tap import Tap

TAPS = ("M18x0.75", "M6 LH", "M10xPh3P1.5 LH", "Tr16x4", "M3")
"""Without and with a neck, of both hands, of shanks thinner and thicker than the thread."""


def _tap(text: str) -> tuple[Tap, float]:
    settled = settle(job_for(text))
    return settled.tap, settled.figures.runout_end


def _distances(tap: Tap, points: list[tuple[float, float, float]]) -> np.ndarray:
    return distance_to_ideal(tap, np.array(points)).distance


@pytest.mark.parametrize("text", TAPS)
def test_the_ball_touches_the_core_of_the_ideal_tap_along_each_flute(text: str) -> None:
    tap, end = _tap(text)
    ball, core = tap.flutes.cutter_diameter / 2, tap.flutes.core_diameter / 2
    paths = ball_paths(tap, end)
    assert len(paths) == tap.flutes.count
    for path in paths:
        x, y, z = path.front
        assert z == 0
        assert math.hypot(x, y) - ball == pytest.approx(core, abs=1e-9)
        share = core / math.hypot(x, y)
        floor = [(share * x, share * y, at * path.last[2]) for at in (0.3, 0.6, 1.0)]
        assert _distances(tap, floor) == pytest.approx([0, 0, 0], abs=1e-9)
        assert path.runout_begin == pytest.approx(floor[-1])
        # the ball's tip, straight below its centre, lies on the flute's floor as well
        turn = math.radians(path.turned)
        tip = (x - ball * math.cos(turn), y - ball * math.sin(turn), 0.5 * path.last[2])
        assert _distances(tap, [tip]) == pytest.approx([0], abs=1e-9)


@pytest.mark.parametrize("text", TAPS)
def test_the_run_out_is_an_arc_about_the_last_centre_from_core_to_blank(text: str) -> None:
    tap, end = _tap(text)
    for path in ball_paths(tap, end):
        assert path.runout_end is not None
        for point in (path.runout_begin, path.runout_end):
            assert math.dist(point, path.last) == pytest.approx(tap.flutes.cutter_diameter / 2)
        x, y, z = path.runout_end
        (surface,) = blank_radius(tap.blank, np.array([z]))
        assert math.hypot(x, y) == pytest.approx(surface, abs=1e-6)
        assert _distances(tap, [path.runout_end]) == pytest.approx([0], abs=1e-6)
        # beyond it along the arc the ball is out of the tap, before it within
        beyond, inside = (
            _on_arc(path, tap.flutes.cutter_diameter / 2, z + step) for step in (0.01, -0.01)
        )
        bounds = blank_radius(tap.blank, np.array([z + 0.01, z - 0.01]))
        assert math.hypot(*beyond) > bounds[0]
        assert math.hypot(*inside) < bounds[1]


def _on_arc(path: BallPath, ball: float, z: float) -> tuple[float, float]:
    x, y, stop = path.last
    share = 1 - math.sqrt(ball**2 - (z - stop) ** 2) / math.hypot(x, y)
    return share * x, share * y


@pytest.mark.parametrize("text", TAPS)
def test_the_way_is_straight_and_ends_where_the_full_depth_does(text: str) -> None:
    tap, end = _tap(text)
    for path in ball_paths(tap, end):
        assert path.last == (*path.front[:2], tap.flutes.full_depth_length)


@pytest.mark.parametrize("text", TAPS)
def test_a_turn_by_the_angle_told_brings_each_flute_to_the_first(text: str) -> None:
    tap, end = _tap(text)
    first, *others = ball_paths(tap, end)
    assert first.turned == 0
    for path in others:
        back = math.radians(-path.turned)
        x, y, _ = path.last
        turned = (
            x * math.cos(back) - y * math.sin(back),
            x * math.sin(back) + y * math.cos(back),
        )
        assert turned == pytest.approx(first.last[:2], abs=1e-9)


@pytest.mark.parametrize("text", TAPS)
def test_the_holder_passes_over_the_thickest_part(text: str) -> None:
    tap, _ = _tap(text)
    reach, blank = cutter_reach(tap), tap.blank
    tip = tap.flutes.centre_radius - tap.flutes.cutter_diameter / 2
    assert tip + reach.over_thread == pytest.approx(tap.thread.major / 2)
    corners = min(blank.square_across_flats * math.sqrt(2), blank.shank_diameter)
    thickest = max(tap.thread.major, blank.shank_diameter, corners) / 2
    assert tip + reach.over_all == pytest.approx(thickest)


def test_a_flute_that_runs_out_before_the_cutter_stops_leaves_no_arc() -> None:
    tap, _ = _tap("M10")
    (path, *_) = ball_paths(tap, tap.flutes.full_depth_length - 1)
    assert path.runout_end is None
