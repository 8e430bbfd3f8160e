from dataclasses import replace
from itertools import product

import designs
import numpy as np
import pytest

from tapmodel.checks.ideal.land_tops import flat_halves
from tapmodel.checks.ideal.laws import from_crest, inside, right_hand
from tapmodel.checks.ideal.points.all import ideal_points
from tapmodel.checks.ideal.walls import crest_edge
from tapmodel.tap.tap import Tap

ALWAYS = {"thread", "profile corners", "cutting edges", "heel edges", "chamfer", "flute"}
ALWAYS |= {"flute rim", "run-out", "run-out rim", "front", "thread end", "shank", "square"}
ALWAYS |= {"corners of the square", "square shoulder", "rear chamfer", "rear face"}


def test_points_part_inside_from_outside(tap: Tap):
    step = 1e-6
    for feature, points in ideal_points(tap).items():
        ways = np.array([way for way in product((-1, 0, 1), repeat=3) if any(way)])
        around = inside(tap, (points[:, None] + step * ways).reshape(-1, 3))
        around = around.reshape(len(points), -1)
        assert around.any(axis=1).all(), feature
        assert not around.all(axis=1).any(), feature


def test_every_feature_of_a_tap_has_points(tap: Tap):
    blank = tap.blank
    expected = set(ALWAYS)
    for feature, size in {
        "front centre": blank.front_centre,
        "rear centre": blank.rear_centre,
        "neck": blank.neck_length,
        "shoulder": blank.neck_length * abs(blank.neck_diameter - blank.shank_diameter),
    }.items():
        expected |= {feature} if size else set()
    found = ideal_points(tap)
    assert set(found) == expected
    assert min(map(len, found.values())) >= 8


def test_each_part_of_each_tooth_on_each_land_has_points(tap: Tap):
    thread, flutes = tap.thread, tap.flutes
    points = right_hand(tap, ideal_points(tap)["thread"])
    theta = np.degrees(np.arctan2(points[:, 1], points[:, 0]))
    crest, root = flat_halves(thread)
    for angle in flutes.angles:
        edge = angle + crest_edge(flutes, thread.major)
        behind = (theta - edge + 90.0) % 360.0 - 90.0
        mine = behind < min(360.0 / flutes.count, 80.0) * 0.8
        w = from_crest(thread, edge + behind, points[:, 2])
        along = points[:, 2] - thread.lead * (edge + behind) / 360.0 - w - thread.first_z
        turn = np.round(along / thread.pitch)
        part = np.where(np.abs(w) < crest, 0, np.where(w > 0, 1, 2))
        part = np.where(np.abs(w) > thread.pitch / 2 - root, 3, part)
        met = set(zip(turn[mine].tolist(), part[mine].tolist(), strict=True))
        assert len(met) >= 4 * (tap.blank.thread_length // thread.pitch - 1)


@pytest.mark.parametrize(
    "feature", ["front_centre", "rear_centre", "rear_chamfer"], ids=lambda name: name
)
def test_the_smallest_feature_has_as_many_points_as_a_large_one(feature: str):
    def count(size: float) -> int:
        tap = designs.m20()
        blank = replace(tap.blank, **{feature: size})
        return len(ideal_points(replace(tap, blank=blank))[feature.replace("_", " ")])

    assert count(0.002) >= count(0.5) >= 40


def test_edges_reach_from_root_to_crest():
    tap = designs.m10()
    found = ideal_points(tap)
    for edges in ("cutting edges", "heel edges"):
        points = found[edges][found[edges][:, 2] > tap.chamfer_length]
        radius = np.hypot(points[:, 0], points[:, 1])
        assert radius.max() == pytest.approx(tap.thread.major / 2, abs=1e-9)
        assert radius.min() == pytest.approx(tap.thread.minor / 2, abs=1e-9)
