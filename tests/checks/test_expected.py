import math
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import designs
import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "geometry"))

from like_taps import scaled

from tapmodel.checks.ideal.expected import section_area, solid_volume
from tapmodel.checks.ideal.laws import inside
from tapmodel.shape import relief
from tapmodel.tap.tap import Reliefs, Tap, TapThread
from tapmodel.words import Hand, ReliefPlace


def without_flutes(tap: Tap):
    """The same tap with the cutter kept far away, a cone that touches nothing and no relief."""
    away = replace(tap.flutes, centre_radius=200.0)
    cylinder = replace(tap.chamfer, point_diameter=tap.thread.major + 1)
    none = relief.concentric(ReliefPlace.THREAD)
    return replace(tap, flutes=away, chamfer=cylinder, relief=Reliefs(none, none))


def profile_mean_square(thread: TapThread):
    """Mean of radius squared over a pitch: flats and two frusta, in closed form."""
    R, r = thread.major / 2, thread.minor / 2
    flank = (thread.pitch - thread.crest_flat - thread.root_flat) / 2
    total = R**2 * thread.crest_flat + r**2 * thread.root_flat
    return (total + 2 * flank * (R**2 + R * r + r**2) / 3) / thread.pitch


def chord_area(tap: Tap, z: float, lines: int = 1200) -> float:
    """Area from the points alone: sum of the chords on slanting lines, their ends by halving."""
    reach = max(tap.thread.major, tap.blank.shank_diameter) * 0.55
    across = (np.arange(lines) + 0.5) / lines * 2 * reach - reach
    along = np.linspace(-reach, reach, 240)
    c, s = math.cos(0.3), math.sin(0.3)

    def solid(x: np.ndarray, y: np.ndarray) -> np.ndarray:
        x, y = (part.ravel() for part in np.broadcast_arrays(x, y))
        return inside(tap, np.stack([c * x - s * y, s * x + c * y, np.full_like(x, z)], axis=1))

    met = solid(across[:, None], along).reshape(lines, -1)
    line, step = np.nonzero(met[:, :-1] != met[:, 1:])
    low, high, starts_in = along[step], along[step + 1], met[line, step]
    for _ in range(30):
        middle = (low + high) / 2
        same = solid(across[line], middle) == starts_in
        low, high = np.where(same, middle, low), np.where(same, high, middle)
    return float(np.where(starts_in, low, -low).sum() * 2 * reach / lines)


@pytest.mark.parametrize("name", ["m10", "two_starts"])
def test_plain_thread_has_the_mean_square_of_its_profile(taps: dict[str, Tap], name: str):
    tap = without_flutes(taps[name])
    z = np.linspace(4.0, tap.blank.thread_length - 0.1, 23)
    area = math.pi * profile_mean_square(tap.thread)
    assert section_area(tap, z) == pytest.approx(np.full(23, area), rel=1e-12)


def test_volume_without_flutes_is_thread_neck_shoulder_shank_and_square():
    tap = without_flutes(designs.m10())
    blank = replace(tap.blank, front_centre=0.0, rear_centre=0.0, rear_chamfer=0.0)
    neck, shank, side = blank.neck_diameter / 2, blank.shank_diameter / 2, 6.3
    shoulder = (shank - neck) / math.tan(math.radians(30))
    shank_length = 90.0 - 39.0 - shoulder
    corner = 8 * (math.pi / 8 - math.acos(side / 2 / shank) / 2) * shank**2
    square = corner + 2 * side * math.sqrt(shank**2 - side**2 / 4)
    expected = (
        math.pi * profile_mean_square(tap.thread) * 24.0
        + math.pi * neck**2 * 15.0
        + math.pi * shoulder * (neck**2 + neck * shank + shank**2) / 3
        + math.pi * shank**2 * shank_length
        + square * 10.0
    )
    assert solid_volume(replace(tap, blank=blank)) == pytest.approx(expected, rel=1e-10)


def test_centres_and_rear_chamfer_take_off_their_own_volumes():
    tap = without_flutes(designs.no_neck())
    with_all = replace(tap.blank, front_centre=2.0, rear_centre=1.5, square_length=0.0)
    bare = replace(with_all, front_centre=0.0, rear_centre=0.0, rear_chamfer=0.0)
    centres = math.pi * (1.0**3 + 0.75**3) / 3 * math.sqrt(3)
    shank, width = 3.15, 0.4
    ring = math.pi * (shank * width**2 - width**3 / 3)
    lost = solid_volume(replace(tap, blank=bare)) - solid_volume(replace(tap, blank=with_all))
    assert lost == pytest.approx(centres + ring, rel=1e-8)


def test_deep_flutes_in_the_shank_are_capsules_cut_by_its_circle():
    tap = designs.m10()
    c, e, h, R = 2.9, 0.6, 2.1, 4.0  # both corners of the strip lie within the shank
    z = np.array([39.5])

    def under_circle(t: float) -> float:
        return (t * math.sqrt(R**2 - t**2) + R**2 * math.asin(t / R)) / 2

    void = under_circle(e + h) - under_circle(e - h) - 2 * c * h + math.pi * h**2 / 2
    tap = replace(
        tap,
        flutes=replace(tap.flutes, centre_radius=c),
        blank=replace(tap.blank, neck_length=0.0),
    )
    assert section_area(tap, z) == pytest.approx([math.pi * R**2 - 3 * void], rel=1e-12)


def test_shallow_flutes_and_their_run_out_are_lenses_of_two_circles():
    tap = designs.m18()
    reach, R = math.hypot(8.8, 1.4), 7.8
    z = np.array([25.0, 30.5, 31.3, 32.2])
    expected = []
    for h in np.sqrt(3.5**2 - np.maximum(z - 30.0, 0.0) ** 2):
        a = math.acos((reach**2 + R**2 - h**2) / (2 * reach * R))
        b = math.acos((reach**2 + h**2 - R**2) / (2 * reach * h))
        lens = R**2 * (a - math.sin(2 * a) / 2) + h**2 * (b - math.sin(2 * b) / 2)
        expected.append(math.pi * R**2 - 4 * lens)
    assert section_area(tap, z) == pytest.approx(expected, rel=1e-12)


def test_sections_agree_with_the_chords_of_points_inside(tap: Tap):
    blank, runout = tap.blank, tap.flutes.full_depth_length
    z = [0.3, tap.chamfer_length - 0.4, blank.thread_length - 1.1, blank.thread_length + 0.4]
    z += [runout + 0.5, blank.square_start + 1, blank.overall_length - 0.2]
    chords = [chord_area(tap, height) for height in z]
    assert section_area(tap, np.array(z)) == pytest.approx(chords, rel=1e-4)


def test_volume_agrees_with_counted_points(
    tap: Tap, random_points: Callable[[Tap, int], np.ndarray]
):
    points = random_points(tap, 400_000)
    box = np.prod(points.max(axis=0) - points.min(axis=0))
    share = np.mean([inside(tap, part).mean() for part in np.array_split(points, 2)])
    deviation = math.sqrt(share * (1 - share) / len(points))
    assert solid_volume(tap) / box == pytest.approx(share, abs=3.5 * deviation)


def test_volume_has_converged(tap: Tap):
    assert solid_volume(tap) == pytest.approx(solid_volume(tap, refinement=3), rel=5e-8)


def test_volume_is_the_sum_of_evenly_spaced_sections():
    tap = designs.m20()
    heights = (np.arange(40_000) + 0.5) / 40_000 * tap.blank.overall_length
    summed = section_area(tap, heights).mean() * tap.blank.overall_length
    assert solid_volume(tap) == pytest.approx(summed, rel=2e-7)


def test_scaling_all_lengths_scales_the_volume_by_the_cube(tap: Tap):
    # By a power of two nothing is rounded otherwise, and there are as many panels.
    assert solid_volume(scaled(tap, 4.0)) == pytest.approx(4.0**3 * solid_volume(tap), rel=1e-12)


def test_the_other_hand_has_the_same_volume(tap: Tap):
    hand = Hand.RIGHT if tap.thread.hand is Hand.LEFT else Hand.LEFT
    other = replace(tap, thread=replace(tap.thread, hand=hand))
    assert solid_volume(other) == solid_volume(tap)


def test_turning_the_helix_by_a_land_changes_no_section(tap: Tap):
    z = np.linspace(0.1, tap.blank.thread_length - 0.1, 40)
    thread, land = tap.thread, 360.0 / tap.flutes.count

    def areas(turn: float) -> np.ndarray:
        rise = thread.lead * turn / 360.0
        return section_area(replace(tap, thread=replace(thread, first_z=thread.first_z + rise)), z)

    assert areas(land) == pytest.approx(areas(0.0), rel=1e-10)
    assert abs(areas(1.01 * land) - areas(0.0)).max() > 1e-4


def test_flutes_that_run_into_the_square_still_count():
    tap = designs.m10()
    tap = replace(tap, flutes=replace(tap.flutes, full_depth_length=91.0, centre_radius=3.2))
    z = np.array([90.4, 92.0])
    chords = [chord_area(tap, height) for height in z]
    assert section_area(tap, z) == pytest.approx(chords, rel=1e-4)


def test_sections_keep_their_shape_and_vanish_outside(tap: Tap):
    z = np.array([[-0.01, 1.0], [5.0, tap.blank.overall_length + 0.01]])
    area = section_area(tap, z)
    assert area.shape == (2, 2)
    assert list(np.flatnonzero(area)) == [1, 2]
