"""Limits of Unified taps against rows of ASME B94.9; unit: inch, digits as printed.

Read in Machinery's Handbook 31st ed.: H and L numbers pp. 972 and 996 to 1000, cut thread p. 1001
table 22 (machine screw sizes) and p. 1002 table 23 (fractional sizes). 1-64 has 0.0739 there as
least major diameter although the pattern of every other row would give 0.0740.
"""

import pytest

from tapmodel.spec.designation import parse
from tapmodel.standards.families import FAMILIES
from tapmodel.standards.limits import TapLimits
from tapmodel.standards.tables import read_table
from tapmodel.words import Certainty, Family

RULES = FAMILIES[Family.UNIFIED]
HALF_DIGIT = 0.00005

# Least major diameter, least and greatest pitch diameter.
CUT = {
    "0-80": ("0.0609", "0.0521", "0.0531"),
    "1-64": ("0.0739", "0.0631", "0.0641"),
    "1-72": ("0.0740", "0.0642", "0.0652"),
    "2-56": ("0.0872", "0.0746", "0.0756"),
    "3-48": ("0.1003", "0.0857", "0.0867"),
    "4-40": ("0.1136", "0.0960", "0.0975"),
    "4-48": ("0.1133", "0.0987", "0.1002"),
    "5-40": ("0.1266", "0.1090", "0.1105"),
    "6-32": ("0.1402", "0.1182", "0.1197"),
    "6-36": ("0.1397", "0.1202", "0.1217"),
    "6-40": ("0.1396", "0.1220", "0.1235"),
    "8-32": ("0.1662", "0.1442", "0.1457"),
    "8-36": ("0.1657", "0.1462", "0.1477"),
    "8-40": ("0.1656", "0.1480", "0.1495"),
    "10-24": ("0.1928", "0.1634", "0.1649"),
    "10-32": ("0.1922", "0.1702", "0.1717"),
    "12-24": ("0.2188", "0.1894", "0.1909"),
    "12-28": ("0.2184", "0.1933", "0.1948"),
    "0.242-24 UNS": ("0.2448", "0.2154", "0.2174"),
    "5/32-32 UNS": ("0.1585", "0.13645", "0.1380"),
    "3/16-24 UNS": ("0.1903", "0.1609", "0.1624"),
    "3/16-32 UNS": ("0.1897", "0.1677", "0.1692"),
    "1/4-20": ("0.2532", "0.2180", "0.2200"),
    "1/4-28": ("0.2524", "0.2273", "0.2288"),
    "5/16-18": ("0.3160", "0.2769", "0.2789"),
    "3/8-16": ("0.3789", "0.3349", "0.3369"),
    "3/8-24": ("0.3778", "0.3484", "0.3499"),
    "7/16-14": ("0.4419", "0.3916", "0.3941"),
    "1/2-13": ("0.5047", "0.4505", "0.4530"),
    "1/2-20": ("0.5032", "0.4680", "0.4700"),
    "5/8-11": ("0.6304", "0.5665", "0.5690"),
    "3/4-10": ("0.7559", "0.6855", "0.6885"),
    "3/4-16": ("0.7539", "0.7099", "0.7124"),
    "7/8-9": ("0.8820", "0.8038", "0.8068"),
    "7/8-14": ("0.8799", "0.8296", "0.8321"),
    "1-8": ("1.0078", "0.9198", "0.9228"),
    "1-12": ("1.0055", "0.9469", "0.9494"),
    "1-14 UNS": ("1.0049", "0.9546", "0.9571"),
    "1 1/8-7": ("1.1337", "1.0332", "1.0367"),
    "1 1/8-12": ("1.1305", "1.0719", "1.0749"),
    "1 1/4-7": ("1.2587", "1.1582", "1.1617"),
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
    # A row that is found is taken as it is printed.
    assert sizes == pytest.approx([float(text) for text in CUT[thread]], abs=1e-9)
    assert found.tap_class == "cut thread of ASME B94.9"
    assert found.source.certainty is Certainty.READ


EXCEPTION = ("1", "64")
"""The one row that the pattern below misses, by 0.0001 in: see above."""


def test_every_row_of_the_tables_follows_one_pattern() -> None:
    """Amounts over basic by pitch and size; the crest moved outwards by as much and H/16."""
    rows = read_table("unified_cut_tap")
    assert len(rows) == 50
    for row in rows:
        major, tpi, least = float(row["major"]), float(row["tpi"]), float(row["pitch_min"])
        over = 0.0010 if major >= 0.875 else 0.0002 if tpi >= 36 else 0.0005
        assert least == pytest.approx(major - 0.6495191 / tpi + over, abs=0.000075)
        if (row["size"], row["tpi"]) != EXCEPTION:
            crest = over + 0.8660254 / 16 / tpi
            assert float(row["major_min"]) - major == pytest.approx(crest, abs=0.00006)
        assert 0.0010 <= round(float(row["pitch_max"]) - least, 5) <= 0.0035


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
