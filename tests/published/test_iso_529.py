"""Blanks and driving squares. Status: every row from memory of ISO 529 and ISO 237.

Only the tolerances of ISO 529:2017 (shank h9, square h11 or h12, length h16) were seen in print,
none of these sizes. M30 and the sizes set apart are less sure than the rest; those set apart repeat
the recollection in the program's own table, so they guard it against slips and confirm nothing.
"""

import pytest

from tapmodel.standards.blanks import blank_for, square_for

# diameter: shank, thread length, overall length, square across flats, square length [mm]
ISO_529 = {
    3: (3.15, 11, 48, 2.5, 5),
    4: (4, 13, 53, 3.15, 6),
    5: (5, 16, 58, 4, 7),
    6: (6.3, 19, 66, 5, 8),
    8: (8, 22, 72, 6.3, 9),
    10: (10, 24, 80, 8, 11),
    12: (9, 29, 89, 7.1, 10),
    14: (11.2, 30, 95, 9, 12),
    16: (12.5, 32, 102, 10, 13),
    20: (14, 37, 112, 11.2, 14),
    24: (18, 45, 130, 14, 18),
    30: (20, 48, 138, 16, 20),
    # Set apart: the same recollection as the program's table, medium confidence.
    1: (2.5, 5.5, 38.5, 2, 4),
    1.1: (2.5, 5.5, 38.5, 2, 4),
    1.2: (2.5, 5.5, 38.5, 2, 4),
    1.4: (2.5, 7, 40, 2, 4),
    1.6: (2.5, 8, 41, 2, 4),
    1.8: (2.5, 8, 41, 2, 4),
    2: (2.5, 8, 41, 2, 4),
    2.2: (2.8, 9.5, 44.5, 2.24, 5),
    2.5: (2.8, 9.5, 44.5, 2.24, 5),
    3.5: (3.55, 13, 50, 2.8, 5),
    4.5: (4.5, 13, 53, 3.55, 6),
    7: (7.1, 19, 66, 5.6, 8),
    9: (9, 22, 72, 7.1, 10),
    11: (8, 25, 85, 6.3, 9),
    18: (14, 37, 112, 11.2, 14),
    22: (16, 38, 118, 12.5, 16),
    27: (20, 45, 135, 16, 20),
    33: (22.4, 51, 151, 18, 22),
    36: (25, 57, 162, 20, 24),
    39: (28, 60, 170, 22.4, 26),
    42: (28, 60, 170, 22.4, 26),
    45: (31.5, 67, 187, 25, 28),
    48: (31.5, 67, 187, 25, 28),
    52: (35.5, 70, 200, 28, 31),
    56: (35.5, 70, 200, 28, 31),
    60: (40, 76, 221, 31.5, 34),
}

# shank: across flats, length [mm]
ISO_237 = {
    2.5: (2, 4),
    2.8: (2.24, 5),
    3.15: (2.5, 5),
    3.55: (2.8, 5),
    4: (3.15, 6),
    4.5: (3.55, 6),
    5: (4, 7),
    5.6: (4.5, 7),
    6.3: (5, 8),
    7.1: (5.6, 8),
    8: (6.3, 9),
    9: (7.1, 10),
    10: (8, 11),
    11.2: (9, 12),
    12.5: (10, 13),
    14: (11.2, 14),
    16: (12.5, 16),
    18: (14, 18),
    20: (16, 20),
    # Set apart: the same recollection as the program's table, medium confidence.
    1.12: (0.9, 4),
    1.25: (1, 4),
    1.4: (1.12, 4),
    1.6: (1.25, 4),
    1.8: (1.4, 4),
    2: (1.6, 4),
    2.24: (1.8, 4),
    22.4: (18, 22),
    25: (20, 24),
    28: (22.4, 26),
    31.5: (25, 28),
    35.5: (28, 31),
    40: (31.5, 34),
    45: (35.5, 38),
    50: (40, 42),
    56: (45, 46),
    63: (50, 51),
}


@pytest.mark.parametrize("diameter", ISO_529)
def test_hand_tap_blank(diameter: float):
    row = blank_for(diameter)
    assert ISO_529[diameter] == (
        row.shank,
        row.thread_length,
        row.overall_length,
        row.square_across_flats,
        row.square_length,
    )
    assert row.listed
    assert row.source.certainty == "from memory"


@pytest.mark.parametrize("shank", ISO_237)
def test_driving_square(shank: float):
    assert square_for(shank) == ISO_237[shank]
