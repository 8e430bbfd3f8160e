"""Blanks in inch sizes. Status: length, shank and square of No. 4 to 1 in read, the rest not.

Machinery's Handbook 31st ed. p. 986 (read; its columns were read as lists in order of size). Rows
apart are from memory, like every length of thread, so they guard the table against slips alone.
"""

import pytest

from tapmodel.standards.inch_blanks import inch_blank_for, inch_square_for

# diameter: overall length, shank, square across flats, its length [in]
READ = {
    0.1120: (1.88, 0.141, 0.110, 0.19),
    0.1250: (1.94, 0.141, 0.110, 0.19),
    0.1380: (2.00, 0.141, 0.110, 0.19),
    0.1640: (2.13, 0.168, 0.131, 0.25),
    0.1900: (2.38, 0.194, 0.152, 0.25),
    0.2160: (2.38, 0.220, 0.165, 0.28),
    0.2500: (2.50, 0.255, 0.191, 0.31),
    0.3125: (2.72, 0.318, 0.238, 0.38),
    0.3750: (2.94, 0.381, 0.286, 0.44),
    0.4375: (3.16, 0.323, 0.242, 0.41),
    0.5000: (3.38, 0.367, 0.275, 0.44),
    0.5625: (3.59, 0.429, 0.322, 0.50),
    0.6250: (3.81, 0.480, 0.360, 0.56),
    0.6875: (4.03, 0.542, 0.406, 0.63),
    0.7500: (4.25, 0.590, 0.442, 0.69),
    0.8125: (4.47, 0.652, 0.489, 0.69),
    0.8750: (4.69, 0.697, 0.523, 0.75),
    0.9375: (4.91, 0.760, 0.570, 0.75),
    1.0000: (5.13, 0.800, 0.600, 0.75),
}

# diameter: overall length, shank, square across flats, its length [in], from memory
REMEMBERED = {
    0.0600: (1.63, 0.141, 0.110, 0.19),
    0.0990: (1.81, 0.141, 0.110, 0.19),
    1.1250: (5.44, 0.896, 0.672, 0.88),
    1.5000: (6.38, 1.233, 0.925, 1.13),
}


@pytest.mark.parametrize("size", [*READ, *REMEMBERED])
def test_blank_of_an_inch_size(size: float):
    row = inch_blank_for(25.4 * size)
    assert row is not None
    found = (row.overall_length, row.shank, row.square_across_flats, row.square_length)
    expected = (READ | REMEMBERED)[size]
    assert [mm / 25.4 for mm in found] == pytest.approx(expected, abs=1e-6)
    assert row.listed
    assert row.source.certainty == ("read" if size in READ else "from memory")
    assert row.thread_source.certainty == "from memory"
    assert inch_square_for(row.shank) == (row.square_across_flats, row.square_length)


def test_every_square_is_three_quarters_of_its_shank():
    # as printed: 0.748 to 0.784 in all rows
    for size in (*READ, *REMEMBERED):
        row = inch_blank_for(25.4 * size)
        assert row is not None
        assert 0.747 <= row.square_across_flats / row.shank <= 0.785


def test_between_and_beyond_the_rows():
    between = inch_blank_for(25.4 * 1.0625)  # 1 1/16 in
    assert between is not None
    assert (between.shank, between.overall_length) == pytest.approx((25.4 * 0.8, 25.4 * 5.44))
    assert between.source.certainty == "derived here"
    assert inch_blank_for(25.4 * 0.05) is None
    assert inch_blank_for(25.4 * 1.6) is None
