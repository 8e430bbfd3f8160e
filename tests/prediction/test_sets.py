"""Taps that share the work: together they cut the thread, each a larger one than before."""

import math
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from tapmodel.prediction.set_torques import equal_torque_shares
from tapmodel.prediction.sets import (
    CHAMFER_LEADS,
    RINGS,
    SHARES,
    Plan,
    TapOfSet,
    split,
    usual_plan,
)
from tapmodel.prediction.thread_section import section_above
from tapmodel.shape.profile import profile_radius, segments
from tapmodel.tap.tap import Tap, TapThread

Make = Callable[[Tap], TapThread]


def metric(tap: Tap) -> TapThread:
    return replace(tap.thread, pitch=1.0, flank_angle=30.0)


def trapezoidal(tap: Tap) -> TapThread:
    """Tr 16x8 (P4) by its basic sizes."""
    flats = {"pitch": 4.0, "starts": 2, "flank_angle": 15.0}
    return replace(tap.thread, major=16.5, pitch_diameter=14.0, minor=11.6, **flats)


def whitworth(tap: Tap) -> TapThread:
    depth = 0.640327
    return replace(
        tap.thread,
        pitch=1.0,
        flank_angle=27.5,
        major=8.0,
        pitch_diameter=8.0 - depth,
        minor=8.0 - 2 * depth,
        rounded_crest=True,
        rounded_root=True,
    )


CASES = [(metric, 6.95), (trapezoidal, 12.25), (whitworth, 6.9), (whitworth, 6.75)]


def summed(thread: TapThread, bore: float, count: int = 400_000) -> float:
    """Section above the hole by summing the profile over a pitch."""
    w = thread.pitch * (np.arange(count) + 0.5) / count
    above = np.maximum(profile_radius(segments(thread), w) - bore / 2, 0.0)
    return thread.starts * float(np.mean(above)) * thread.pitch


@pytest.mark.parametrize(("make", "bore"), CASES)
def test_the_section_is_that_of_the_profile(small_tap: Tap, make: Make, bore: float) -> None:
    thread = make(small_tap)
    for hole in (bore, thread.pitch_diameter, thread.major - 0.02, thread.minor + 0.01):
        assert section_above(thread, hole) == pytest.approx(summed(thread, hole), rel=1e-6)
    assert section_above(thread, thread.major) == pytest.approx(0, abs=1e-12)


def test_a_sharp_thread_has_the_section_of_its_triangles(small_tap: Tap) -> None:
    """Cut off at both ends the ridge is a trapezoid: mean width times height."""
    thread = metric(small_tap)
    half = math.tan(math.radians(30))
    top, bottom = (0.5 - (d - 7.42) * half for d in (8.05, 6.95))
    assert section_above(thread, 6.95) == pytest.approx((top + bottom) / 2 * 0.55, rel=1e-12)


@pytest.mark.parametrize("count", [2, 3])
@pytest.mark.parametrize(("make", "bore"), CASES)
def test_the_shares_are_cut_and_make_the_thread(
    small_tap: Tap, make: Make, bore: float, count: int
) -> None:
    thread = make(small_tap)
    taps = split(thread, bore, usual_plan(thread, count))
    whole = section_above(thread, bore)
    assert sum(tap.area for tap in taps) == pytest.approx(whole, rel=1e-9)
    assert [tap.share for tap in taps] == pytest.approx(list(SHARES[count]), abs=1e-9)
    assert [tap.area for tap in taps] == pytest.approx(
        [share * whole for share in SHARES[count]], rel=1e-8
    )
    sizes = [tap.major for tap in taps]
    assert sizes == sorted(set(sizes))
    last = taps[-1]
    assert (last.major, last.pitch_diameter) == (thread.major, thread.pitch_diameter)
    assert last.minor == thread.minor
    assert {tap.pitch_diameter for tap in taps[:-1]} == {
        thread.pitch_diameter - 0.02 * thread.pitch
    }
    assert tuple(tap.rings for tap in taps) == RINGS[count]
    assert tuple(tap.chamfer_leads for tap in taps) == CHAMFER_LEADS[count]
    assert [tap.number for tap in taps] == list(range(1, count + 1))


@pytest.mark.parametrize(("make", "bore"), CASES)
def test_each_tap_takes_what_is_left_of_its_profile(
    small_tap: Tap, make: Make, bore: float
) -> None:
    """Areas by summing what stands out of the thread cut before, and nothing of which is gone."""
    thread = make(small_tap)
    w = thread.pitch * (np.arange(200_000) + 0.5) / 200_000
    cut = np.full_like(w, bore / 2)
    for tap in split(thread, bore, replace(usual_plan(thread, 3), flank_allowance=0.03)):
        radii = np.maximum(profile_radius(segments(own(thread, tap)), w), bore / 2)
        assert np.all(radii >= cut - 1e-12)
        chip = thread.starts * float(np.mean(radii - cut)) * thread.pitch
        assert chip == pytest.approx(tap.area, rel=1e-4)
        cut = radii


def own(thread: TapThread, tap: TapOfSet) -> TapThread:
    return replace(
        thread,
        major=tap.major,
        pitch_diameter=tap.pitch_diameter,
        minor=tap.minor,
        rounded_crest=thread.rounded_crest and tap.rings == 0,
    )


def test_without_allowance_the_first_crest_is_where_its_trapezoid_ends(small_tap: Tap) -> None:
    """Half the section: a quadratic in the height of the crest above the hole."""
    thread = metric(small_tap)
    first, _ = split(thread, 6.95, Plan((1.0, 1.0), (7.0, 2.0), (1, 0), 0.0))
    slope = 2 * math.tan(math.radians(30))
    wide = 0.5 - (6.95 - 7.42) * slope / 2
    aim = section_above(thread, 6.95) / 2
    height = (wide - math.sqrt(wide**2 - 2 * slope * aim)) / slope
    assert first.major == pytest.approx(6.95 + 2 * height, abs=1e-9)
    assert first.share == pytest.approx(0.5, abs=1e-12)


def test_the_last_tap_cuts_both_flanks_by_the_allowance(small_tap: Tap) -> None:
    thread = metric(small_tap)
    first, last = split(thread, 6.95, replace(usual_plan(thread, 2), flank_allowance=0.04))
    assert last.pitch_diameter - first.pitch_diameter == pytest.approx(0.04)
    assert thread.minor - first.minor == pytest.approx(0.04)


@pytest.mark.parametrize("leads", [(8.0, 2.0), (8.0, 4.0, 2.0)])
@pytest.mark.parametrize(("make", "bore"), CASES)
def test_equal_torque_is_area_times_lever_times_force(
    small_tap: Tap, make: Make, bore: float, leads: tuple[float, ...]
) -> None:
    thread, exponent, point = make(small_tap), 0.25, bore - 0.1
    plan = replace(usual_plan(thread, len(leads)), chamfer_leads=leads)
    shares = equal_torque_shares(thread, bore, plan, point, exponent)
    assert sum(shares) == pytest.approx(1)
    # A shorter chamfer takes thicker chips, which need less force.
    assert list(shares) == sorted(shares)
    w = thread.pitch * (np.arange(100_000) + 0.5) / 100_000
    cut, torques = np.full_like(w, bore / 2), []
    for tap in split(thread, bore, replace(plan, shares=shares)):
        radii = np.maximum(profile_radius(segments(own(thread, tap)), w), bore / 2)
        moment = float(np.mean(radii**2 - cut**2))
        cut = radii
        sine = math.sin(math.atan((tap.major - point) / 2 / tap.chamfer_leads / thread.lead))
        torques.append(moment * sine**-exponent)
    assert torques == pytest.approx([torques[0]] * len(leads), rel=1e-4)


def test_with_one_force_the_shares_are_nearly_even(small_tap: Tap) -> None:
    thread = metric(small_tap)
    shares = equal_torque_shares(thread, 6.95, usual_plan(thread, 3), 6.85, 0.0)
    assert shares[0] > shares[1] > shares[2]
    assert list(shares) == pytest.approx([1 / 3] * 3, abs=0.03)


@pytest.mark.parametrize(
    ("shares", "leads", "allowance"),
    [
        ((), (), 0.0),
        ((0.5, 0.3, 0.2), (7.0, 2.0), 0.0),
        ((0.5, 0.0), (7.0, 2.0), 0.0),
        ((0.5, 0.5), (7.0, 0.0), 0.0),
        ((0.999, 0.001), (7.0, 2.0), 0.02),
        ((0.9, 0.1), (7.0, 2.0), 0.5),
        ((0.5, 0.5), (7.0, 2.0), -0.01),
    ],
)
def test_what_no_set_can_do_is_refused(
    small_tap: Tap, shares: tuple[float, ...], leads: tuple[float, ...], allowance: float
) -> None:
    plan = Plan(shares, leads, (1, 0), allowance)
    with pytest.raises(ValueError, match="tap"):
        split(metric(small_tap), 6.95, plan)


@pytest.mark.parametrize(("make", "bore"), CASES)
def test_an_earlier_tap_may_do_what_leaves_its_corners_inside(
    small_tap: Tap, make: Make, bore: float
) -> None:
    """The most is a crest whose corners come to the last one's crest, by a search along w."""
    thread = make(small_tap)
    allowance = 0.03
    sunk = replace(
        thread,
        pitch_diameter=thread.pitch_diameter - allowance,
        minor=thread.minor - allowance,
        rounded_crest=False,
    )
    if thread.rounded_crest:
        w = np.linspace(0.0, thread.pitch / 4, 400_001)
        flank = thread.pitch / 4 - w
        height = sunk.pitch_diameter / 2 + flank / math.tan(math.radians(thread.flank_angle))
        inside = height <= profile_radius(segments(thread), w)
        tallest = 2 * float(height[np.argmax(inside)])
    else:
        tallest = thread.major - allowance
    most = section_above(replace(sunk, major=tallest), bore) / section_above(thread, bore)
    assert most < 1
    split(thread, bore, Plan((0.9999 * most, 1 - 0.9999 * most), (7, 2), (1, 0), allowance))
    with pytest.raises(ValueError, match="so much"):
        split(thread, bore, Plan((1.0001 * most, 1 - 1.0001 * most), (7, 2), (1, 0), allowance))


@pytest.mark.parametrize("count", [0, 1, 4])
def test_a_set_is_of_two_or_three(small_tap: Tap, count: int) -> None:
    with pytest.raises(ValueError, match="2 or 3"):
        usual_plan(metric(small_tap), count)
