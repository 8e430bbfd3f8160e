"""The ball's path in the frame of the model, held to the definition of the ideal solid."""

import math

import numpy as np
import pytest

from tapmodel.checks.ideal.deviation import distance_to_ideal
from tapmodel.designing.settle import settle
from tapmodel.shop.cam import BEFORE, ball_paths, cutter_reach
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
    tap, _ = _tap(text)
    ball, core = tap.flutes.cutter_diameter / 2, tap.flutes.core_diameter / 2
    paths = ball_paths(tap)
    assert len(paths) == tap.flutes.count
    for path in paths:
        x, y, z = path.front
        assert z == pytest.approx(-ball - BEFORE)
        assert math.hypot(x, y) - ball == pytest.approx(core, abs=1e-9)
        share = core / math.hypot(x, y)
        floor = [(share * x, share * y, at * path.last[2]) for at in (0.3, 0.6, 1.0)]
        assert _distances(tap, floor) == pytest.approx([0, 0, 0], abs=1e-9)
        # the ball's tip, straight below its centre, lies on the flute's floor as well
        turn = math.radians(path.turned)
        tip = (x - ball * math.cos(turn), y - ball * math.sin(turn), 0.5 * path.last[2])
        assert _distances(tap, [tip]) == pytest.approx([0], abs=1e-9)


@pytest.mark.parametrize("text", TAPS)
def test_the_run_out_is_the_balls_arc_about_its_last_centre(text: str) -> None:
    tap, end = _tap(text)
    ball = tap.flutes.cutter_diameter / 2
    for path in ball_paths(tap):
        x, y, stop = path.last
        share = 1 - math.sqrt(ball**2 - (end - stop) ** 2) / math.hypot(x, y)
        assert _distances(tap, [(share * x, share * y, end)]) == pytest.approx([0], abs=1e-6)


@pytest.mark.parametrize("text", TAPS)
def test_lifted_the_ball_just_clears_the_tap_on_the_cutters_axis(text: str) -> None:
    tap, _ = _tap(text)
    for path in ball_paths(tap):
        turn = math.radians(path.turned)
        out = [path.lifted[n] - path.last[n] for n in range(3)]
        assert out[2] == 0
        assert out[0] * math.sin(turn) == pytest.approx(out[1] * math.cos(turn), abs=1e-9)
        tip = path.lifted[0] * math.cos(turn) + path.lifted[1] * math.sin(turn)
        tip -= tap.flutes.cutter_diameter / 2
        assert tip == pytest.approx(max(tap.thread.major, tap.blank.shank_diameter) / 2)


@pytest.mark.parametrize("text", TAPS)
def test_the_way_is_straight_and_ends_where_the_full_depth_does(text: str) -> None:
    tap, _ = _tap(text)
    for path in ball_paths(tap):
        assert path.last == (*path.front[:2], tap.flutes.full_depth_length)


@pytest.mark.parametrize("text", TAPS)
def test_a_turn_by_the_angle_told_brings_each_flute_to_the_first(text: str) -> None:
    tap, _ = _tap(text)
    first, *others = ball_paths(tap)
    turned = [path.turned for path in others]
    assert turned == sorted(turned)
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
