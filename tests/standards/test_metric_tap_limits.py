"""Laws of the tap's limits against the hole's."""

from itertools import product

import pytest

from tapmodel.errors import InputError
from tapmodel.spec.hole_class import HoleClass, parse_hole_class
from tapmodel.standards.metric.hole_limits import metric_hole_limits
from tapmodel.standards.metric.pitches import listed_pairs
from tapmodel.standards.metric.tap_limits import metric_tap_limits, tap_class_for

CLASSES = {
    1: "4H 5H 4H5H 5H6H",
    2: "6H 6H5H 4G 5G",
    3: "6G 7H 8H 7G 8G",
}

# Class 2 starts at 0.3 t, which for the finest pitches is less than the allowance EI of position G
# (17 or 18 µm against 15 to 17 µm): there a class 2 tap may lie up to 2 µm under a 4G or 5G hole.
# ISO 965-1 prints no TD2 of grade 5 for P 0.2 (from memory), so t is computed there.
TOO_SMALL = {(1.0, 0.25), (1.1, 0.25), (1.2, 0.25)} | {
    (diameter, 0.2) for diameter in (1.0, 1.1, 1.2, 1.4, 1.6, 1.8)
}


@pytest.mark.parametrize(
    ("tap_class", "hole"), [(c, hole) for c, holes in CLASSES.items() for hole in holes.split()]
)
def test_class_for_each_hole_class(tap_class: int, hole: str):
    assert tap_class_for(parse_hole_class(hole)) == tap_class


def test_tap_zone_lies_inside_the_hole_zone_for_every_listed_pair_and_class():
    below = set()
    for (diameter, pitch), grade, position in product(listed_pairs(), (4, 5, 6, 7, 8), "GH"):
        asked = HoleClass(grade, min(grade, 7), position)
        hole = metric_hole_limits(diameter, pitch, asked).limits
        tap = metric_tap_limits(diameter, pitch, tap_class_for(asked))
        assert tap.pitch_min < tap.pitch_max < hole.pitch_max
        assert tap.major_min > hole.major_min
        if tap.pitch_min < hole.pitch_min:
            below.add((diameter, pitch))
            assert (position, grade) in {("G", 4), ("G", 5)}
            assert hole.pitch_min - tap.pitch_min < 0.0021
    assert below == TOO_SMALL


def test_zones_of_the_classes_touch_and_are_a_fifth_of_t_wide():
    for diameter, pitch in listed_pairs():
        hole = metric_hole_limits(diameter, pitch, HoleClass(5, 5, "H")).limits
        t = hole.pitch_max - hole.pitch_min
        taps = [metric_tap_limits(diameter, pitch, tap_class) for tap_class in (1, 2, 3)]
        assert taps[0].pitch_min == pytest.approx(hole.pitch_min + 0.1 * t, abs=1e-9)
        assert taps[0].pitch_max == taps[1].pitch_min
        assert taps[1].pitch_max == taps[2].pitch_min
        for tap in taps:
            assert tap.pitch_max - tap.pitch_min == pytest.approx(0.2 * t, abs=1e-9)
            assert tap.major_min == pytest.approx(diameter + 0.4 * t, abs=1e-9)


def test_unlisted_pair_uses_the_computed_tolerance():
    # M18x0.9: t = 1.06 x 90 x 0.9^0.4 x 15.839^0.1 = 120.6 -> R40 118 or 125: 118 is nearer.
    tap = metric_tap_limits(18, 0.9, 2)
    assert (tap.pitch_min, tap.pitch_max) == (17.4504, 17.474)


def test_bad_class_and_size_are_refused():
    with pytest.raises(InputError, match="1, 2 or 3"):
        metric_tap_limits(10, 1.5, 4)
    with pytest.raises(InputError, match="pitch"):
        metric_tap_limits(10, 0.04, 2)
