"""Whitworth threads against printed rows.

Form: Machinery's Handbook 31st ed. p. 2087 (read). Row 3/16-24 BSW: a web chart of Whitworth
threads that quotes BS 1157:1975 for its drills (read). Tap drills of the other rows: FreeCAD
FeatureHole.cpp commit 003e239 (read). Basic diameters of the other rows: from memory of BS 84;
they are those with the depth of thread rounded first. The direct formula D - 2h gives 0.0001 inch
more or less in some of them (5/16-18 0.2414, 1/2-12 0.3933, 3/4-10 0.6219, 1-8 0.8399).
"""

from fractions import Fraction

import pytest

from tapmodel.designing.choose.hole import nearest_drill
from tapmodel.spec.designation import parse
from tapmodel.standards.thread_forms import WHITWORTH
from tapmodel.standards.whitworth.pitches import series_pitches
from tapmodel.standards.whitworth.rules import RULES

INCH = 25.4


def half_digit(printed: str) -> float:
    return 0.5 * 10.0 ** -len(printed.partition(".")[2])


@pytest.mark.parametrize(
    ("threads", "height", "depth"),
    [(20, "0.048025", "0.032016"), (12, "0.080041", "0.053361"), (8, "0.120061", "0.080041")],
)
def test_form(threads: int, height: str, depth: str):
    assert WHITWORTH.height / threads == pytest.approx(float(height), abs=half_digit(height))
    assert WHITWORTH.pitch_drop / threads == pytest.approx(float(depth), abs=half_digit(depth))


# thread: effective, minor diameter [inch]; the first row read, the others from memory
BASIC = {
    "3/16 BSW": ("0.1608", "0.1341"),
    "1/4 BSW": ("0.2180", "0.1860"),
    "5/16 BSW": ("0.2769", "0.2413"),
    "3/8 BSW": ("0.3350", "0.2950"),
    "7/16 BSW": ("0.3918", "0.3461"),
    "1/2 BSW": ("0.4466", "0.3932"),
    "5/8 BSW": ("0.5668", "0.5086"),
    "3/4 BSW": ("0.6860", "0.6220"),
    "7/8 BSW": ("0.8039", "0.7328"),
    "1 BSW": ("0.9200", "0.8400"),
}


@pytest.mark.parametrize("thread", BASIC)
def test_basic_sizes(thread: str):
    effective, minor = BASIC[thread]
    hole = RULES.hole_limits(RULES.settle(parse(thread))).limits
    assert hole.pitch_min / INCH == pytest.approx(float(effective), abs=half_digit(effective))
    assert hole.minor_min / INCH == pytest.approx(float(minor), abs=half_digit(minor))


# Tap drills [mm] of BS 1157, all inside the minor limits, and beside them the program's own: 80 %
# of the depth on the next step inside the limits. They differ by up to 0.15 mm.
DRILLS = {
    "3/16 BSW": (3.70, 3.7),
    "1/4 BSW": (5.10, 5.1),
    "5/16 BSW": (6.50, 6.5),
    "3/8 BSW": (7.90, 7.9),
    "1/2 BSW": (10.50, 10.5),
    "3/4 BSW": (16.25, 16.25),
    "1 BSW": (22.00, 22.0),
    "1/4 BSF": (5.30, 5.35),
    "5/16 BSF": (6.80, 6.8),
    "3/8 BSF": (8.30, 8.2),
    "1/2 BSF": (11.10, 11.1),
    "1 BSF": (22.75, 22.75),
}


@pytest.mark.parametrize("thread", DRILLS)
def test_tap_drills(thread: str):
    printed, own = DRILLS[thread]
    settled = RULES.settle(parse(thread))
    assert settled.pitch is not None
    hole = RULES.hole_limits(settled).limits
    assert hole.minor_min < printed < hole.minor_max
    wanted = settled.diameter - RULES.drop_to_drill * settled.pitch
    assert nearest_drill(wanted, settled.pitch, hole) == own


def test_medium_tolerance_covers_the_drills_of_the_finest_and_the_coarsest_listed_thread():
    # BS 1157: 1/8 BSW 2.55 mm, 2 BSW 44.50 mm (read as above).
    for thread, drill in (("1/8 BSW", 2.55), ("2 BSW", 44.50)):
        hole = RULES.hole_limits(RULES.settle(parse(thread))).limits
        assert hole.minor_min < drill < hole.minor_max


# Pitches [mm] as printed for the basic sizes of BS 84 (read as the drills); some are cut off, not
# rounded, after the third digit.
PITCHES = {
    "BSW": """1/8 0.635|3/16 1.058|1/4 1.270|5/16 1.411|3/8 1.588|7/16 1.814|1/2 2.117|9/16 2.117
5/8 2.309|11/16 2.309|3/4 2.540|7/8 2.822|1 3.175|1.125 3.629|1.25 3.629|1.5 4.233|1.75 5.080
2 5.644|2.25 6.350|2.5 6.350|2.75 7.257|3 7.257|3.25 7.815|3.5 7.815|3.75 8.467|4 8.467|4.5 8.835
5 9.236|5.5 9.676|6 10.16""",
    "BSF": """3/16 0.794|7/32 0.907|1/4 0.977|9/32 0.977|5/16 1.154|3/8 1.270|7/16 1.411|1/2 1.588
9/16 1.588|5/8 1.814|11/16 1.814|3/4 2.116|7/8 2.309|1 2.540|1.125 2.822|1.25 2.822|1.375 3.175
1.5 3.175|1.625 3.175|1.75 3.629|2 3.629|2.25 4.233|2.5 4.233|2.75 4.233|3 5.080|3.25 5.080
3.5 5.644|3.75 5.644|4 5.644|4.25 6.350""",
}
FROM_MEMORY = {"BSW": {1 / 16: 60, 3 / 32: 48, 5 / 32: 32}, "BSF": {}}


@pytest.mark.parametrize("series", ["BSW", "BSF"])
def test_pitches_of_the_series(series: str):
    rows = [row.split() for row in PITCHES[series].replace("\n", "|").split("|")]
    printed = {float(Fraction(size)): float(pitch) for size, pitch in rows}
    listed = dict(series_pitches(series))
    assert FROM_MEMORY[series].items() <= listed.items()
    read = {size: INCH / listed[size] for size in listed if size not in FROM_MEMORY[series]}
    assert read == pytest.approx(printed, abs=0.001)
