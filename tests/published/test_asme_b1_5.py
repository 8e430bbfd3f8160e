"""Basic sizes of Acme threads, read in Machinery's Handbook 27th ed. p. 1831 (ASME B1.5); inches.

The tolerances were not read anywhere: no published row holds them (see tests/standards).
"""

import math

import pytest

from tapmodel.spec.designation import parse
from tapmodel.standards.families import FAMILIES
from tapmodel.standards.family_rules import settled_pitch
from tapmodel.standards.thread_forms import ACME
from tapmodel.words import Family

RULES = FAMILIES[Family.ACME]
HALF_DIGIT = 0.00005 + 1e-9
HALF_MINUTE = 0.5 / 60

# D2 = D - h, D1 = D - 2h, crest flat 0.3707 P, lead angle at D2 (degrees, minutes).
BASIC = {
    "1/4-16": ("0.2188", "0.1875", "0.0232", (5, 12)),
    "5/16-14": ("0.2768", "0.2411", "0.0265", (4, 42)),
    "3/8-12": ("0.3333", "0.2917", "0.0309", (4, 33)),
    "1/2-10": ("0.4500", "0.4000", "0.0371", (4, 3)),
    "5/8-8": ("0.5625", "0.5000", "0.0463", (4, 3)),
    "3/4-6": ("0.6667", "0.5833", "0.0618", (4, 33)),
    "1-5": ("0.9000", "0.8000", "0.0741", (4, 3)),
}


@pytest.mark.parametrize("thread", BASIC)
def test_basic_sizes(thread: str):
    settled = RULES.settle(parse(f"{thread} ACME"))
    found = RULES.hole_limits(settled)
    pitch = settled_pitch(settled) / 25.4
    pitch_diameter, minor, flat, (degrees, minutes) = BASIC[thread]
    assert found.limits.pitch_min / 25.4 == pytest.approx(float(pitch_diameter), abs=HALF_DIGIT)
    assert found.limits.minor_min / 25.4 == pytest.approx(float(minor), abs=HALF_DIGIT)
    assert ACME.crest_flat * pitch == pytest.approx(float(flat), abs=HALF_DIGIT)
    lead_angle = math.degrees(math.atan(pitch * 25.4 / math.pi / found.limits.pitch_min))
    assert lead_angle == pytest.approx(degrees + minutes / 60, abs=HALF_MINUTE)
    assert found.listed
