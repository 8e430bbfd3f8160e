"""Least and greatest wires against printed ones.

Disagreement, standing: for 60 degrees one society's page (neme-s.org, read) prints 0.560/n to
0.900/n where H28 has 0.505 P to 1.010 P (from memory). The latter are the geometric limits, which
the program keeps; the former lie inside them and are its author's advice.
"""

import math
from dataclasses import replace

import pytest

from tapmodel.shop.wires.choice import WireRange, wire_range
from tapmodel.shop.wires.groove import Groove
from tapmodel.tap.tap import Tap


def printed_range(small_tap: Tap, flank_angle: float, pitch: float, height: float) -> WireRange:
    """Wires of the basic profile without regard to the lead, as the tables have them.

    Crests and roots lie `height` off the pitch line of a screw 40 pitches thick.
    """
    diameter = 40 * pitch
    thread = replace(
        small_tap.thread,
        pitch=pitch,
        flank_angle=flank_angle,
        major=diameter + 2 * height,
        pitch_diameter=diameter,
        minor=diameter - 2 * height,
    )
    root_flat = pitch / 2 - 2 * height * math.tan(math.radians(flank_angle))
    assert thread.root_flat == pytest.approx(root_flat, abs=1e-12)
    return wire_range(Groove(flank_angle, pitch, 0.0, diameter), thread)


# Machinery's Handbook 31st ed. p. 2135 (read): threads per inch, best, greatest, least.
ACME = [
    (1, "0.51645", "0.65001", "0.48726"),
    (4 / 3, "0.38734", "0.48751", "0.36545"),
    (1.5, "0.34430", "0.43334", "0.32484"),
    (2, "0.25822", "0.32501", "0.24363"),
    (2.5, "0.20658", "0.26001", "0.19491"),
    (3, "0.17215", "0.21667", "0.16242"),
    (4, "0.12911", "0.16250", "0.12182"),
    (5, "0.10329", "0.13000", "0.09745"),
    (6, "0.08608", "0.10834", "0.08121"),
    (8, "0.06456", "0.08125", "0.06091"),
    (10, "0.05164", "0.06500", "0.04873"),
    (12, "0.04304", "0.05417", "0.04061"),
    (14, "0.03689", "0.04643", "0.03480"),
    (16, "0.03228", "0.04063", "0.03045"),
]
# The print multiplies a best size that is itself rounded to five digits.
ROUNDED_FACTOR = 0.00001


@pytest.mark.parametrize(("per_inch", "best", "greatest", "least"), ACME)
def test_acme_wires(small_tap: Tap, per_inch: float, best: str, greatest: str, least: str):
    found = printed_range(small_tap, 14.5, 1 / per_inch, 0.25 / per_inch)
    assert found.best == pytest.approx(float(best), abs=ROUNDED_FACTOR)
    assert found.greatest == pytest.approx(float(greatest), abs=ROUNDED_FACTOR)
    assert found.least == pytest.approx(float(least), abs=ROUNDED_FACTOR)


def test_acme_factors(small_tap: Tap):
    found = printed_range(small_tap, 14.5, 1.0, 0.25)
    assert found.greatest == pytest.approx(0.650013, abs=0.0000005)
    assert found.least == pytest.approx(0.487263, abs=0.0000005)


def test_sixty_degree_factors(small_tap: Tap):
    """NBS Handbook H28, from memory to three decimals; the society's advice lies inside."""
    found = printed_range(small_tap, 30.0, 1.0, 0.32475953)
    assert found.least == pytest.approx(0.505, abs=0.0005)
    assert found.greatest == pytest.approx(1.010, abs=0.0005)
    assert found.least < 0.560
    assert found.greatest > 0.900
