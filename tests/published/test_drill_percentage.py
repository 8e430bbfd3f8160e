"""Percentages of thread and drills against printed rows.

Machinery's Handbook 31st ed. p. 2155 (read): 0-80 and 1-64. Tap drills of the Unified threads by
number, letter and fraction: the handbook's table for 75 % of thread, from memory; each row ties a
size of the drill tables to its percentage. Drills in mm: FreeCAD FeatureHole.cpp commit 003e239
(read), there ISO 2306 for metric threads.
"""

import pytest
from asked import settled_of

from tapmodel.designing.choose.drill import nearest_drill, percentage_left, thread_percentage
from tapmodel.spec.designation import parse
from tapmodel.standards.drill_sets import INCH_SETS, inch_drills
from tapmodel.standards.thread_forms import METRIC, UNIFIED, WHITWORTH
from tapmodel.standards.unified.rules import RULES

DRILLS = {drill.name: drill.diameter for name in INCH_SETS for drill in inch_drills(name)}

HALF_A_PER_CENT = 0.5


def full_thread(thread: str, drill: float) -> float:
    settled = RULES.settle(parse(thread))
    assert settled.pitch is not None
    found = thread_percentage(settled.diameter, drill, settled.pitch, UNIFIED).of_full_thread
    assert found is not None
    return found


def test_0_80_with_1_30_mm():
    assert full_thread("0-80 UNF", 1.30) == pytest.approx(54, abs=HALF_A_PER_CENT)


def test_1_64_with_a_sixteenth():
    # Printed 51; the formula gives 51.7, so that this cell was cut off, not rounded.
    assert int(full_thread("1-64 UNC", DRILLS["1/16"])) == 51


@pytest.mark.parametrize(
    ("thread", "name", "printed"),
    [
        ("0-80 UNF", "3/64", 81),
        ("2-56 UNC", "#50", 69),
        ("4-40 UNC", "#43", 71),
        ("6-32 UNC", "#36", 78),
        ("8-32 UNC", "#29", 69),
        ("10-24 UNC", "#25", 75),
        ("10-32 UNF", "#21", 76),
        ("12-24 UNC", "#16", 72),
        ("1/4-20 UNC", "#7", 75),
        ("1/4-28 UNF", "#3", 80),
        ("5/16-18 UNC", "F", 77),
        ("5/16-24 UNF", "I", 75),
        ("3/8-16 UNC", "5/16", 77),
        ("3/8-24 UNF", "Q", 79),
        ("7/16-14 UNC", "U", 75),
        ("1/2-13 UNC", "27/64", 78),
        ("3/4-10 UNC", "21/32", 72),
        ("1-8 UNC", "7/8", 77),
    ],
)
def test_tap_drills_of_the_handbook(thread: str, name: str, printed: float):
    assert full_thread(thread, DRILLS[name]) == pytest.approx(printed, abs=HALF_A_PER_CENT)


@pytest.mark.parametrize(
    ("thread", "name"),
    [
        ("1/4-20 UNC", "#7"),
        ("10-24 UNC", "#25"),
        ("5/16-24 UNF", "I"),
        ("7/16-14 UNC", "U"),
        ("6-32 UNC", "#36"),
    ],
)
def test_three_quarters_of_full_thread_find_the_drill_of_the_handbook(thread: str, name: str):
    # 75 % of 1.299038 P are 90 % of 1.082532 P.
    sets = ["hole.engagement=90", 'shop.drills=["fraction", "number", "letter"]']
    assert settled_of(thread, sets).drill == DRILLS[name]


@pytest.mark.parametrize("thread", ["M3", "M6", "M10", "M16", "M24", "M10x1"])
def test_one_pitch_less_leaves_77_and_92_per_cent(thread: str):
    design = settled_of(thread)
    left = percentage_left(design)
    printed = {"M3": 2.5, "M6": 5.0, "M10": 8.5, "M16": 14.0, "M24": 21.0, "M10x1": 9.0}
    assert design.drill == printed[thread]
    assert left.of_full_thread == pytest.approx(76.98, abs=0.005)
    assert left.of_engagement == pytest.approx(92.38, abs=0.005)


# Printed drill [mm] and the program's own: nominal less one pitch. They differ by up to 0.15 mm,
# and the printed ones lie inside the minor limits of class 2B as well.
MILLIMETRES = {
    "1/4-20 UNC": (5.10, 5.1),
    "5/16-18 UNC": (6.60, 6.5),
    "3/8-16 UNC": (8.00, 7.9),
    "1/2-13 UNC": (10.80, 10.7),
    "3/4-10 UNC": (16.50, 16.5),
    "1-8 UNC": (22.25, 22.25),
    "1/4-28 UNF": (5.50, 5.45),
    "3/8-24 UNF": (8.50, 8.5),
    "1/2-20 UNF": (11.50, 11.4),
    "1-12 UNF": (23.25, 23.25),
}


@pytest.mark.parametrize("thread", MILLIMETRES)
def test_drills_in_mm_for_unified_threads(thread: str):
    printed, own = MILLIMETRES[thread]
    settled = RULES.settle(parse(thread))
    assert settled.pitch is not None
    hole = RULES.hole_limits(settled).limits
    assert hole.minor_min < printed < hole.minor_max
    wanted = settled.diameter - RULES.drop_to_drill * settled.pitch
    assert nearest_drill(wanted, settled.pitch, hole) == own


def test_a_whitworth_drill_of_bs_1157():
    # 3/16-24 BSW with 3.70 mm (a web chart that quotes BS 1157:1975, 77 to 87 % of thread; read).
    left = thread_percentage(3 / 16 * 25.4, 3.70, 25.4 / 24, WHITWORTH)
    assert left.of_full_thread is None
    assert 77 < left.of_engagement < 87
    assert left.of_engagement == pytest.approx(78.39, abs=0.01)


def test_the_two_conventions_differ_by_six_fifths():
    left = thread_percentage(12, 10.2, 1.75, METRIC)
    assert left.of_full_thread is not None
    assert left.of_engagement / left.of_full_thread == pytest.approx(6 / 5, rel=1e-5)


# Sizes that bd_warehouse 0.4.0 drill_sizes.csv prints with three places or fewer.
@pytest.mark.parametrize(
    ("name", "printed"),
    [
        ("#5", 0.205),
        ("#10", 0.193),
        ("#18", 0.17),
        ("#25", 0.15),
        ("#28", 0.14),
        ("#69", 0.029),
    ],
)
def test_sizes_that_a_shorter_table_rounds(name: str, printed: float):
    assert DRILLS[name] / 25.4 == pytest.approx(printed, abs=0.0005 + 1e-9)
