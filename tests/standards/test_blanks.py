"""Laws of the blanks from 1 to 300 mm."""

import math
from itertools import pairwise

import pytest

from tapmodel.errors import InputError
from tapmodel.standards.blanks import blank_for, square_for
from tapmodel.standards.metric.pitches import coarse_pitches
from tapmodel.standards.tables import read_table
from tapmodel.standards.thread_forms import METRIC

DIAMETERS = [1 + 0.1 * i for i in range(2991)]


def test_lengths_never_shrink_as_the_thread_grows():
    blanks = [blank_for(diameter) for diameter in DIAMETERS]
    for one, other in pairwise(blanks):
        assert one.overall_length <= other.overall_length
        assert one.thread_length <= other.thread_length


def test_thread_shank_and_square_fit_into_the_overall_length():
    for diameter in DIAMETERS:
        blank = blank_for(diameter)
        assert blank.thread_length + blank.square_length < 0.75 * blank.overall_length
        assert blank.thread_length > diameter
        assert blank.square_across_flats < blank.shank
        assert blank.square_across_flats * math.sqrt(2) > blank.shank


def test_shank_above_ten_millimetres_passes_the_coarse_hole():
    sizes = coarse_pitches()
    for diameter in [d for d in DIAMETERS if d > 10.05]:
        coarser = max(pitch for size, pitch in sizes.items() if size <= diameter)
        assert blank_for(diameter).shank < METRIC.minor_diameter(diameter, coarser)


def test_shank_up_to_ten_millimetres_is_as_thick_as_the_thread():
    for diameter in [d for d in DIAMETERS if d <= 10]:
        assert blank_for(diameter).shank >= diameter


@pytest.mark.parametrize(
    ("diameter", "shank", "overall"), [(9.5, 10, 80), (10.5, 8, 85), (13, 9, 95), (17, 12.5, 112)]
)
def test_between_two_rows(diameter: float, shank: float, overall: float):
    blank = blank_for(diameter)
    assert (blank.shank, blank.overall_length) == (shank, overall)
    assert not blank.listed
    assert blank.source.certainty == "derived here"


def test_beyond_the_last_row_sizes_are_in_proportion():
    blank, last = blank_for(120), blank_for(60)
    assert blank.shank == 2 * last.shank
    assert blank.overall_length == 2 * last.overall_length
    assert blank.square_across_flats == pytest.approx(0.8 * blank.shank)
    assert not blank.listed


def test_printed_squares_are_about_eight_tenths_of_the_preferred_shank():
    # A tenth of the R20 series down: 10^(-2/20) = 0.794, both numbers rounded.
    for row in read_table("iso_237"):
        ratio = float(row["across_flats"]) / float(row["shank"])
        assert 0.777 <= ratio <= 0.804
        assert float(row["over"]) < float(row["shank"]) < float(row["to"])
    assert square_for(10.6) == (8, 11)
    assert square_for(10.61) == (9, 12)


def test_ranges_of_shanks_leave_no_gap():
    for one, other in pairwise(read_table("iso_237")):
        assert one["to"] == other["over"]


@pytest.mark.parametrize("shank", [0, -1, math.nan, math.inf])
def test_no_square_on_a_nonsense_shank(shank: float):
    with pytest.raises(InputError, match="shank"):
        square_for(shank)


@pytest.mark.parametrize("diameter", [0.29, 300.1, math.nan])
def test_diameter_out_of_range_is_refused(diameter: float):
    with pytest.raises(InputError, match=r"0\.3 to 300 mm"):
        blank_for(diameter)
