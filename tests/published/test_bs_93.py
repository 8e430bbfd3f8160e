"""British Association threads against printed rows.

A chart of BA threads on the web (read for 4 BA to 14 BA): sizes in inches, threads per inch,
tapping drills in mm. It rounds a pitch in inches to four places before
it counts threads, so that the counts of 12 BA and smaller are off by up to 0.5.
"""

import pytest

from tapmodel.designing.choose.hole import nearest_drill
from tapmodel.spec.designation import parse
from tapmodel.standards.thread_forms import BA
from tapmodel.standards.whitworth.ba import RULES, ba_sizes

INCH = 25.4


def half_digit(printed: str) -> float:
    return 0.5 * 10.0 ** -len(printed.partition(".")[2])


# number: diameter [inch], threads per inch
CHART = {
    "14": ("0.039", "109.9"),
    "13": ("0.047", "102"),
    "12": ("0.051", "90.9"),
    "11": ("0.059", "81.9"),
    "10": ("0.067", "72.6"),
    "9": ("0.075", "65.1"),
    "8": ("0.086", "59.1"),
    "7": ("0.0982", "52.9"),
    "6": ("0.11", "47.9"),
    "5": ("0.126", "43"),
    "4": ("0.1420", "38.5"),
}
# Counted from the rounded pitch; and diameters that are not the rounded ones: 8 BA 0.0866, 7 BA
# 0.0984, 4 BA 0.1417 inch.
LOOSE_THREADS = {"14": 0.6, "13": 0.5, "12": 0.2}
LOOSE_DIAMETERS = {"8": 0.00065, "7": 0.00025, "4": 0.0003}


@pytest.mark.parametrize("number", CHART)
def test_sizes(number: str):
    printed, threads = CHART[number]
    diameter, pitch = ba_sizes()[number]
    near = LOOSE_DIAMETERS.get(number, half_digit(printed))
    assert diameter / INCH == pytest.approx(float(printed), abs=near)
    near = LOOSE_THREADS.get(number, half_digit(threads))
    assert INCH / pitch == pytest.approx(float(threads), abs=near)


# Tapping drill [mm] as printed, and the program's own: 75 % of the depth on the next step.
DRILLS = {
    "10": (1.40, 1.4),
    "9": (1.55, 1.55),
    "8": (1.80, 1.8),
    "7": (2.05, 2.05),
    "6": (2.30, 2.3),
    "5": (2.65, 2.65),
    "4": (3.00, 3.0),
}


@pytest.mark.parametrize("number", DRILLS)
def test_tap_drills(number: str):
    printed, own = DRILLS[number]
    thread = RULES.settle(parse(f"{number} BA"))
    assert thread.pitch is not None
    hole = RULES.hole_limits(thread).limits
    assert hole.minor_min < printed < hole.minor_max
    wanted = thread.diameter - RULES.drop_to_drill * thread.pitch
    assert nearest_drill(wanted, thread.pitch, hole) == own


def test_form():
    # Printed on another page on the web: depth 0.6 p, radius 0.1808346 p; on a third: radius 2p/11.
    assert pytest.approx(0.6) == BA.pitch_drop
    assert BA.crest_radius == pytest.approx(0.1808346, abs=1e-6)
