"""Allowed wires and choosing from a set, on the small M8x1 tap and on a rounded 55-degree form."""

import math
from dataclasses import replace

import pytest

from tapmodel.shop.wires.choice import (
    WireRange,
    air_for,
    nearest_to_best,
    wire_range,
    zone_range,
)
from tapmodel.shop.wires.groove import Groove
from tapmodel.shop.wires.over_wires import at_pitch_diameter, measurement, seated
from tapmodel.tap.tap import Tap, TapThread
from tapmodel.words import Units

# Wires of a common inch set (neme-s.org/images/PDF_Files/3WIRE.htm, read).
INCH_SET = (
    0.018, 0.024, 0.029, 0.032, 0.040, 0.045, 0.055, 0.063,
    0.072, 0.081, 0.092, 0.108, 0.120, 0.127, 0.143, 0.185,
)  # fmt: skip


# Depth of the Whitworth thread and its roundings, in pitches (BS 84, from memory).
DEPTH, ROUNDING = 0.640327, 0.137329


def groove_of(thread: TapThread) -> Groove:
    return Groove(thread.flank_angle, thread.pitch, thread.lead, thread.pitch_diameter)


def whitworth(small_tap: Tap) -> TapThread:
    """20 mm over the pitch line, pitch 1, crests and roots rounded."""
    return replace(
        small_tap.thread,
        flank_angle=27.5,
        major=20.0 + DEPTH,
        pitch_diameter=20.0,
        minor=20.0 - DEPTH,
        rounded_crest=True,
        rounded_root=True,
    )


def test_ends_of_the_range(small_tap: Tap):
    thread = small_tap.thread
    groove = groove_of(thread)
    found = wire_range(groove, thread)
    assert measurement(groove, found.least) == pytest.approx(thread.major, abs=1e-9)
    assert 2 * seated(groove, found.greatest).contact_radius == pytest.approx(thread.major)
    assert found.least < found.best < found.greatest
    assert found.best == pytest.approx(0.57735, abs=0.001)


def test_root_that_a_thin_wire_would_touch(small_tap: Tap):
    """A root filled up to just below the pitch line: the wire has to clear it."""
    shallow = replace(small_tap.thread, minor=7.3)
    groove = groove_of(shallow)
    least = wire_range(groove, shallow).least
    assert 2 * seated(groove, least).axis_radius - least == pytest.approx(7.3, abs=1e-9)


def test_rounded_crests_and_roots_shorten_the_flank(small_tap: Tap):
    """The thickest wire touches where the crest's rounding begins, twice its height lower."""
    thread = whitworth(small_tap)
    ring = replace(groove_of(thread), lead=0.0)
    found = wire_range(ring, thread)
    sine, cosine = math.sin(math.radians(27.5)), math.cos(math.radians(27.5))
    straight = DEPTH / 2 - ROUNDING * (1 - sine)
    thickest = (0.5 + 2 * straight * sine / cosine) / cosine
    flush = (DEPTH + 0.960491) / (1 + 1 / sine)
    assert found.greatest == pytest.approx(thickest, abs=1e-6)
    assert found.least == pytest.approx(flush, abs=1e-6)


def test_rounded_root_that_a_thin_wire_would_fall_into(small_tap: Tap):
    """In a ring groove the wire that touches where the rounding begins is the rounding itself."""
    thread = small_tap.thread
    sharp = thread.pitch_diameter / 2 - thread.pitch / 4 * math.sqrt(3)
    bottom = sharp + 0.3 / math.sin(math.radians(30)) - 0.3
    rounded = replace(thread, minor=2 * bottom, rounded_root=True)
    assert rounded.root_radius == pytest.approx(0.3, abs=1e-12)
    least = wire_range(replace(groove_of(thread), lead=0.0), rounded).least
    assert least == pytest.approx(2 * 0.3, abs=1e-9)


def test_range_of_a_zone_has_air_below_and_straight_flank_above(small_tap: Tap):
    thread = small_tap.thread
    groove = groove_of(thread)
    found = zone_range(groove, thread, 7.38, 7.45)
    low, high = at_pitch_diameter(groove, 7.38), at_pitch_diameter(groove, 7.45)
    assert measurement(low, found.least) == pytest.approx(thread.major + 0.1, abs=1e-9)
    assert 2 * seated(high, found.greatest).contact_radius == pytest.approx(thread.major)
    assert found.best == wire_range(groove, thread).best


def test_range_holds_for_an_aim_outside_the_zone(small_tap: Tap):
    thread = small_tap.thread
    groove = groove_of(thread)
    assert zone_range(groove, thread, 7.43, 7.45) == zone_range(groove, thread, 7.42, 7.45)
    assert zone_range(groove, thread, 7.38, 7.41) == zone_range(groove, thread, 7.38, 7.42)


@pytest.mark.parametrize(("pitch", "air"), [(0.05, 0.005), (0.5, 0.05), (1.0, 0.1), (6.0, 0.1)])
def test_air_over_the_crests(pitch: float, air: float):
    assert air_for(pitch) == pytest.approx(air)


@pytest.mark.parametrize(
    ("found", "pitch", "wire"),
    [
        (WireRange(0.40, 0.577, 1.0), 1.0, 0.577),
        # Too thin a best wire: up to the next hundredth, for a fine pitch to a finer step.
        (WireRange(0.613, 0.577, 1.0), 1.0, 0.62),
        (WireRange(0.0613, 0.0577, 0.1), 0.1, 0.062),
        # A size that just reaches the end, or one of a step, would be printed outside.
        (WireRange(0.6198, 0.577, 1.0), 1.0, 0.63),
        (WireRange(0.613, 0.577, 0.6172), 1.0, 0.6151),
        # The best beyond the corner of the crest, or all but there: the middle of the range.
        (WireRange(0.40, 1.2, 1.0), 1.0, 0.70),
        (WireRange(0.40, 0.96, 1.0), 1.0, 0.70),
        (WireRange(0.40, 0.93, 1.0), 1.0, 0.93),
        (WireRange(0.0613, 0.0800, 0.0673), 0.1, 0.064),
    ],
)
def test_wire_offered(found: WireRange, pitch: float, wire: float):
    assert found.offered(pitch) == pytest.approx(wire, abs=1e-9)


def test_range_in_words_is_rounded_into_itself_in_both_units():
    text = WireRange(0.41266, 0.43301, 0.76026).told(Units.MM)
    # 0.41266 and 0.76026 mm are 0.0162465 and 0.0299315 in.
    assert "0.4127 to 0.7602 mm (0.01625 to 0.02993 in)" in text
    assert "the best being 0.4330 mm" in text


def test_nearest_on_hand():
    """7/16-14 by the set's page: it takes 0.045, the next above its best of 0.041.

    Disagreement, standing: 0.040 is nearer to the best and inside the range, so it is chosen here.
    """
    allowed = WireRange(0.505 / 14, 0.57735 / 14, 1.010 / 14)
    assert nearest_to_best(INCH_SET, allowed) == 0.040
    assert nearest_to_best([wire for wire in INCH_SET if wire != 0.040], allowed) == 0.045
    assert nearest_to_best((0.018, 0.185), allowed) is None
