"""Limits of Unified taps against rows of ASME B94.9; unit: inch, digits as printed.

Read in Machinery's Handbook 31st ed.: H and L numbers pp. 972 and 996 to 1000, cut thread p. 1001.
"""

import pytest

from tapmodel.spec.designation import parse
from tapmodel.standards.families import FAMILIES
from tapmodel.standards.limits import TapLimits
from tapmodel.words import Certainty, Family

RULES = FAMILIES[Family.UNIFIED]
HALF_DIGIT = 0.00005

CUT = {
    "4-40": ("0.1136", "0.0960", "0.0975"),
    "6-32": ("0.1402", "0.1182", "0.1197"),
    "10-24": ("0.1928", "0.1634", "0.1649"),
    "10-32": ("0.1922", "0.1702", "0.1717"),
}

GROUND = {
    ("3/8-16", "H1"): ("0.3344", "0.3349"),
    ("3/8-16", "L2"): ("0.3334", "0.3339"),
    ("7/8-14", "H2"): ("0.8291", "0.8296"),
    ("7/8-14", "H4"): ("0.8301", "0.8306"),
    ("1-14", "H4"): ("0.9551", "0.9556"),
    ("1-8", "H4"): ("0.9203", "0.9208"),
    ("0-80", "H1"): ("0.0519", "0.0524"),
    ("0-80", "H2"): ("0.0524", "0.0529"),
    ("4-40", "H1"): ("0.0958", "0.0963"),
    ("4-40", "H2"): ("0.0963", "0.0968"),
    ("5-40", "H1"): ("0.1088", "0.1093"),
    ("5-40", "H2"): ("0.1093", "0.1098"),
}

GROUND_MAJOR = {
    "0-80": "0.0605",
    "4-40": "0.1134",
    "5-40": "0.1264",
    "7/8-14": "0.8797",
    "1-8": "1.0082",
    "1-12": "1.0054",
    "1-14": "1.0047",
}


def tap(thread: str, tap_class: str) -> TapLimits:
    return RULES.tap_limits(RULES.settle(parse(thread)), tap_class)


def test_cut_thread_is_the_first_choice():
    assert RULES.tap_class(RULES.settle(parse("4-40"))) == "cut"


@pytest.mark.parametrize("thread", CUT)
def test_cut_thread(thread: str):
    found = tap(thread, "cut")
    sizes = [size / 25.4 for size in (found.major_min, found.pitch_min, found.pitch_max)]
    assert sizes == pytest.approx([float(text) for text in CUT[thread]], abs=HALF_DIGIT)
    assert found.tap_class == "cut thread of ASME B94.9"
    assert found.source.certainty is Certainty.READ


@pytest.mark.parametrize(("thread", "tap_class"), GROUND)
def test_ground_pitch_diameter(thread: str, tap_class: str):
    found = tap(thread, tap_class)
    sizes = [found.pitch_min / 25.4, found.pitch_max / 25.4]
    printed = [float(text) for text in GROUND[thread, tap_class]]
    assert sizes == pytest.approx(printed, abs=HALF_DIGIT)
    assert found.tap_class == f"{tap_class} of ASME B94.9"


@pytest.mark.parametrize("thread", GROUND_MAJOR)
def test_ground_major_diameter(thread: str):
    printed = float(GROUND_MAJOR[thread])
    assert tap(thread, "H2").major_min / 25.4 == pytest.approx(printed, abs=HALF_DIGIT)
