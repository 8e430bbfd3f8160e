"""The general plan of diameters and pitches."""

import math

import pytest

from tapmodel.errors import InputError
from tapmodel.standards.metric.pitches import (
    check_size,
    coarse_pitch,
    coarse_pitches,
    is_listed,
    listed_pairs,
)
from tapmodel.standards.metric.tolerances import pitch_tolerance

# ISO 262:1998, coarse and fine, read in FreeCAD_FastenersWB iso262def.csv
# commit 703a495 (M1 to M64).
ISO_262 = """
1 0.25|1.2 0.25|1.4 0.3|1.6 0.35|1.8 0.35|2 0.4|2.5 0.45|3 0.5|3.5 0.6|4 0.7|5 0.8|6 1|7 1|8 1.25 1
10 1.5 1.25 1|12 1.75 1.5 1.25|14 2 1.5|16 2 1.5|18 2.5 2 1.5|20 2.5 2 1.5|22 2.5 2 1.5|24 3 2
27 3 2|30 3.5 2|33 3.5 2|36 4 3|39 4 3|42 4.5 3|45 4.5 3|48 5 3|52 5 4|56 5.5 4|60 5.5 4|64 6 4
"""
SELECTED = [
    [float(number) for number in row.split()]
    for row in ISO_262.strip().replace("\n", "|").split("|")
]


@pytest.mark.parametrize("row", SELECTED, ids=lambda row: f"M{row[0]:g}")
def test_selected_sizes_are_listed(row: list[float]):
    diameter, coarse, *fine = row
    assert coarse_pitch(diameter) == coarse
    assert all(is_listed(diameter, pitch) for pitch in (coarse, *fine))


def test_unlisted_pairs_are_told_apart():
    assert not is_listed(18, 0.75)
    assert not is_listed(18, 0.9)
    assert not is_listed(13, 1.5)
    assert is_listed(72, 6)


def test_the_coarse_pitch_is_the_coarsest_of_its_diameter():
    for diameter, coarse in coarse_pitches().items():
        assert coarse == max(pitch for size, pitch in listed_pairs() if size == diameter)


def test_every_listed_pair_has_a_printed_tolerance_in_grade_4():
    assert all(pitch_tolerance(*pair, 4).printed for pair in listed_pairs())
    assert len(listed_pairs()) > 300


def test_missing_coarse_pitch_names_the_nearest_sizes():
    with pytest.raises(InputError, match=r"M13x1.75.*M12 \(pitch 1.75\) and M14 \(pitch 2\)"):
        coarse_pitch(13)


@pytest.mark.parametrize(
    ("diameter", "pitch", "field"),
    [
        (0.29, 0.08, "diameter"),
        (301, 4, "diameter"),
        (math.nan, 1, "diameter"),
        (10, 0.049, "pitch"),
        (10, 5.1, "pitch"),
        (100, 8.1, "pitch"),
        (10, math.nan, "pitch"),
    ],
)
def test_sizes_out_of_range_are_refused(diameter: float, pitch: float, field: str):
    with pytest.raises(InputError, match=r"mm") as caught:
        check_size(diameter, pitch)
    assert caught.value.field == field
