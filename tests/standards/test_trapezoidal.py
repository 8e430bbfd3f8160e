"""Laws of ISO trapezoidal threads over the listed pairs and beyond them."""

import math
from itertools import pairwise, product

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tapmodel.errors import InputError
from tapmodel.spec.designation import canonical, parse
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.limits import HoleLimits, Unlisted
from tapmodel.standards.thread_forms import TRAPEZOIDAL
from tapmodel.standards.trapezoidal.pitches import listed_pairs
from tapmodel.standards.trapezoidal.rules import RULES
from tapmodel.standards.trapezoidal.tolerances import clearance, pitch_tolerance
from tapmodel.words import Certainty

GRADES = (7, 8, 9)


def settled(text: str) -> Designation:
    return RULES.settle(parse(text))


def limits(text: str) -> HoleLimits:
    return RULES.hole_limits(settled(text)).limits


def assert_sound(text: str) -> None:
    thread = settled(text)
    hole = RULES.hole_limits(thread).limits
    assert 0 < hole.minor_min < hole.minor_max < hole.pitch_min
    assert hole.pitch_min < hole.pitch_max < thread.diameter < hole.major_min
    tap = RULES.tap_limits(thread, RULES.tap_class(thread))
    assert hole.pitch_min < tap.pitch_min < tap.pitch_max < hole.pitch_max
    assert tap.major_min > hole.major_min


def test_drops_follow_from_the_flats_and_the_flank_angle():
    slope = math.tan(math.radians(TRAPEZOIDAL.flank_angle))
    assert TRAPEZOIDAL.height == pytest.approx(1 / (2 * slope), abs=1e-6)
    assert TRAPEZOIDAL.pitch_drop == pytest.approx((0.5 - TRAPEZOIDAL.crest_flat) / slope, abs=2e-6)
    below = TRAPEZOIDAL.minor_drop - TRAPEZOIDAL.pitch_drop
    assert below == pytest.approx((0.5 - TRAPEZOIDAL.root_flat) / slope, abs=2e-6)


def test_every_listed_pair_is_sound_in_every_class_and_needs_no_note():
    assert len(listed_pairs()) == 1 + 8 * 2 + 56 * 3
    for (diameter, pitch), grade in product(listed_pairs(), GRADES):
        assert_sound(f"Tr{diameter:g}x{pitch:g}-{grade}H")
        found = RULES.hole_limits(settled(f"Tr{diameter:g}x{pitch:g}-{grade}H"))
        assert (found.listed, found.note) == (True, {})


@given(st.integers(80, 3000), st.integers(15, 440), st.integers(1, 8), st.sampled_from(GRADES))
def test_unlisted_pairs_are_sound_or_their_coarse_classes_refused(
    tenths: int, pitch_tenths: int, starts: int, grade: int
):
    diameter, pitch = tenths / 10, pitch_tenths / 10
    assume(pitch <= 0.4 * diameter)
    text = f"Tr{diameter:g}x{starts * pitch:g}(P{pitch:g})-{grade}H"
    try:
        assert_sound(text)
    except InputError as error:
        refused = error.allowed
    else:
        refused = ""
    assert not refused or f"closer class than {grade}H" in refused
    assert not refused or (pitch < 3 and starts > 1 and diameter > 45)


def test_a_tighter_class_lies_inside_the_next_and_more_starts_are_wider():
    for diameter, pitch in listed_pairs():
        names = [f"Tr{diameter:g}x{pitch:g}-{grade}H" for grade in GRADES]
        for tight, wide in pairwise(limits(name) for name in names):
            assert tight.pitch_min == wide.pitch_min
            assert tight.pitch_max < wide.pitch_max
            assert (tight.minor_min, tight.minor_max) == (wide.minor_min, wide.minor_max)
    widths = [limits(f"Tr100x{12 * n}(P12)").pitch_max - 94 for n in range(1, 9)]
    # 0.670 x 1, 1.12, 1.25, 1.4, 1.6 in whole micrometres, then no more.
    assert widths == pytest.approx([0.670, 0.750, 0.838, 0.938, *4 * [1.072]], abs=6e-4)


def test_unlisted_pair_worked_by_hand():
    # d = sqrt(22.4 x 45) = 31.749; TD2 = 1.7 x 90 x 4^0.4 x d^0.1 = 376.3 -> 375; x 1.12 = 420.
    # a_c = 0.25; TD1 is printed for P 4: 375.
    found = RULES.hole_limits(settled("Tr30x8(P4)"))
    assert found.limits == HoleLimits(30.5, 28.0, 28.42, 26.0, 26.375)
    assert not found.listed
    why = (Unlisted.TRAPEZOIDAL_PITCH, Unlisted.TRAPEZOIDAL_TOLERANCES)
    assert found.note == {"why": why, "diameter": 30, "pitch": 4}
    assert pitch_tolerance(30, 4, 7).source.certainty is Certainty.MEMORY


@pytest.mark.parametrize(
    ("pitch", "gap"),
    [(1.5, 0.15), (2, 0.25), (5, 0.25), (5.5, 0.5), (6, 0.5), (12, 0.5), (14, 1.0), (44, 1.0)],
)
def test_clearance_by_pitch(pitch: float, gap: float):
    assert clearance(pitch) == gap
    thread = settled(f"Tr120x{pitch:g}")
    assert RULES.hole_limits(thread).limits.major_min == pytest.approx(120 + 2 * gap, abs=1e-9)


def test_the_tap_is_cut_in_the_lower_half_above_a_reserve_for_wear():
    # Tr20x4: zone 18 to 18.355, D4 20.5.
    tap = RULES.tap_limits(settled("Tr20x4"), "cut")
    assert (tap.pitch_min, tap.pitch_max) == pytest.approx((18.071, 18.1775))
    assert tap.major_min == pytest.approx(20.571)
    with pytest.raises(InputError, match="cut, the only class"):
        RULES.tap_limits(settled("Tr20x4"), "7H")


@pytest.mark.parametrize("text", ["Tr14x3 LH", "Tr16x6(P3)", "Tr40x14(P7) LH-8H", "Tr8x1.5-9H"])
def test_a_settled_thread_reads_back(text: str):
    assert canonical(settled(text)) == text
    assert settled(canonical(settled(text))) == settled(text)


@pytest.mark.parametrize(
    ("text", "allowed"),
    [
        ("Tr7x1.5", "8 to 300 mm diameter"),
        ("Tr301x4", "8 to 300 mm diameter"),
        ("Tr8x1.4", "1.5 to 3.2 mm at this diameter"),
        ("Tr20x8.1", "1.5 to 8 mm at this diameter"),
        ("Tr300x45", "1.5 to 44 mm at this diameter"),
        ("Tr300x12(P1.5)-9H", "a coarser pitch at this diameter, or a closer class than 9H"),
    ],
)
def test_sizes_out_of_range_are_refused(text: str, allowed: str):
    with pytest.raises(InputError) as caught:
        limits(text)
    assert (caught.value.field, caught.value.value) == ("designation", text)
    assert allowed in caught.value.allowed
