"""Laws of Whitworth threads over both series and beyond them."""

import math
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.designing.choose.hole import nearest_drill
from tapmodel.errors import InputError
from tapmodel.spec.designation import canonical, parse
from tapmodel.spec.designations.reading.inches import size_text
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.limits import HoleLimits, Unlisted
from tapmodel.standards.thread_forms import WHITWORTH
from tapmodel.standards.whitworth.hole_limits import effective_tolerance, nut_minor_tolerance
from tapmodel.standards.whitworth.pitches import series_pitches
from tapmodel.standards.whitworth.rules import RULES
from tapmodel.words import Certainty

INCH = 25.4
CLASSES = ("close", "medium", "normal")
LISTED = [
    f"{size_text(Fraction(size))}-{threads:g} {series}"
    for series in ("BSW", "BSF")
    for size, threads in series_pitches(series).items()
]


def settled(text: str) -> Designation:
    return RULES.settle(parse(text))


def limits(text: str) -> HoleLimits:
    return RULES.hole_limits(settled(text)).limits


def assert_sound(text: str) -> None:
    thread = settled(text)
    hole = RULES.hole_limits(thread).limits
    assert 0 < hole.minor_min < hole.minor_max < hole.pitch_min
    assert hole.pitch_min < hole.pitch_max < hole.major_min
    tap = RULES.tap_limits(thread, RULES.tap_class(thread))
    assert hole.pitch_min < tap.pitch_min < tap.pitch_max < hole.pitch_max
    assert tap.major_min > hole.major_min


def test_the_arcs_touch_the_flanks_at_the_depth_of_the_thread():
    lean = math.radians(WHITWORTH.flank_angle)
    assert WHITWORTH.height == pytest.approx(1 / (2 * math.tan(lean)), abs=1e-6)
    cut_off = WHITWORTH.crest_radius * (1 / math.sin(lean) - 1)
    assert cut_off == pytest.approx(WHITWORTH.height / 6, abs=1e-6)
    assert WHITWORTH.height - 2 * cut_off == pytest.approx(WHITWORTH.pitch_drop, abs=2e-6)
    assert WHITWORTH.minor_drop == pytest.approx(2 * WHITWORTH.pitch_drop, abs=1e-6)
    assert WHITWORTH.root_radius == WHITWORTH.crest_radius


@pytest.mark.parametrize("nut_class", CLASSES)
@pytest.mark.parametrize("thread", LISTED)
def test_listed_threads_are_sound_in_every_class(thread: str, nut_class: str):
    assert_sound(f"{thread} {nut_class}")
    assert RULES.hole_limits(settled(f"{thread} {nut_class}")).listed


@given(st.integers(4, 384), st.integers(20, 640), st.sampled_from(CLASSES))
def test_special_pitches_are_sound_or_refused_with_what_fits(size: int, eighths: int, nut: str):
    text = f"{size_text(Fraction(size, 64))}-{eighths / 8:g} Whit {nut}"
    diameter, pitch = size / 64, 8 / eighths
    try:
        assert_sound(text)
    except InputError as error:
        refused = error.allowed
    else:
        refused = ""
    assert not refused or "threads per inch at this diameter" in refused
    # Coarser than half the diameter, or tolerances as wide as the thread is deep.
    wide = 1.5 * effective_tolerance(diameter, 1 / pitch) > 0.64 * pitch - 2e-4
    assert not refused or pitch > diameter / 2 or wide


@pytest.mark.parametrize("thread", [*LISTED, "1/4-40 Whit", "0.3-30 Whit", "2-12 Whit"])
def test_a_closer_class_lies_inside_the_next(thread: str):
    for close, wide in pairwise(limits(f"{thread} {nut}") for nut in CLASSES):
        assert close.pitch_min == wide.pitch_min
        assert close.pitch_max < wide.pitch_max
        assert (close.minor_min, close.minor_max) == (wide.minor_min, wide.minor_max)


def test_the_fraction_of_each_class_is_two_thirds_and_one_and_a_half():
    widths = [h.pitch_max - h.pitch_min for h in (limits(f"6-2.5 BSW {nut}") for nut in CLASSES)]
    t = (0.002 * 6 ** (1 / 3) + 0.003 * math.sqrt(6) + 0.005 * math.sqrt(0.4)) * INCH
    assert widths == pytest.approx([2 / 3 * t, t, 1.5 * t], abs=0.00005 * INCH)


def test_half_inch_worked_by_hand():
    # h = 0.640327 / 12 = 0.05336 -> 0.0534. T = 0.002 x 0.7937 + 0.003 x 0.7071 + 0.005 x 0.2887
    # = 0.005152 -> 0.0052; minor tolerance 0.2 / 12 + 0.007 = 0.02367 -> 0.0237.
    expected = (0.5, 0.4466, 0.4518, 0.3932, 0.4169)
    found = limits("1/2 BSW")
    sizes = (found.major_min, found.pitch_min, found.pitch_max, found.minor_min, found.minor_max)
    assert sizes == pytest.approx([size * INCH for size in expected], abs=1e-9)


@pytest.mark.parametrize(
    ("threads", "constant"), [(40, 4), (26, 4), (25, 4), (24, 5), (22, 5), (21, 5), (20, 7), (4, 7)]
)
def test_minor_tolerance_by_threads_per_inch(threads: int, constant: int):
    assert nut_minor_tolerance(threads) == pytest.approx(0.2 / threads + constant / 1000)


def test_the_tap_is_cut_in_the_lower_half_above_a_reserve_for_wear():
    thread = settled("1/2 BSW normal")
    hole, tap = RULES.hole_limits(thread).limits, RULES.tap_limits(thread, "CUT")
    t = hole.pitch_max - hole.pitch_min
    assert tap.pitch_min - hole.pitch_min == pytest.approx(0.2 * t)
    assert tap.pitch_max - hole.pitch_min == pytest.approx(0.5 * t)
    assert tap.major_min - 12.7 == pytest.approx(0.2 * t)
    assert tap.source.certainty is Certainty.DERIVED
    assert "rule of this program" in tap.source.place
    with pytest.raises(InputError, match="cut, the only class") as caught:
        RULES.tap_limits(thread, "2")
    assert caught.value.field == "thread.tap_class"


@pytest.mark.parametrize("thread", LISTED)
def test_settling_keeps_the_thread_and_reads_back(thread: str):
    size, _, series = thread.replace("-", " ").rpartition(" ")
    short = f"{size.rpartition(' ')[0]} {series}"
    assert settled(short) == settled(thread)
    assert canonical(settled(short)) == thread
    assert settled(canonical(settled(short))) == settled(short)


def test_a_special_pitch_that_a_series_lists_is_of_that_series():
    assert canonical(settled("1/2-16 Whit")) == "1/2-16 BSF"
    assert canonical(settled("1/2-12 Whit")) == "1/2-12 BSW"
    assert canonical(settled("1/4-40 Whit")) == "1/4-40 Whit"
    found = RULES.hole_limits(settled("1/4-40 Whit"))
    assert not found.listed
    assert found.note == {"why": (Unlisted.WHITWORTH_SERIES,), "threads": 40}


@pytest.mark.parametrize(
    ("text", "allowed"),
    [
        ("1/2-13 BSW", "1/2-12 BSW; or 1/2-13 Whit"),
        ("5/16-18 BSF", "5/16-22 BSF; or 5/16-18 Whit"),
        ("3/10 BSW", "1/4-20 BSW and 5/16-18 BSW; any other"),
        ("1/8 BSF", "3/16-32 BSF and 7/32-28 BSF; any other"),
        ("1/32-80 Whit", "1/16 to 6 inches"),
        ("7-4 Whit", "1/16 to 6 inches"),
        ("1/4-7 Whit", "8 to 80 threads per inch at this diameter"),
        ("2-2 Whit", "2.5 to 80 threads per inch at this diameter"),
        ("1/4-81 Whit", "8 to 80 threads per inch at this diameter"),
    ],
)
def test_pairings_outside_a_series_name_what_is_right(text: str, allowed: str):
    with pytest.raises(InputError) as caught:
        settled(text)
    assert (caught.value.field, caught.value.value) == ("designation", text)
    assert allowed in caught.value.allowed


def test_tolerances_wider_than_the_thread_name_the_cure():
    with pytest.raises(InputError, match=r"fewer than 60 threads per inch.*closer class than norm"):
        limits("6-60 Whit normal")


@pytest.mark.parametrize("thread", LISTED)
def test_the_drill_aimed_at_leaves_three_quarters_to_nine_tenths_of_the_depth(thread: str):
    found = settled(thread)
    assert found.pitch is not None
    wanted = found.diameter - RULES.drop_to_drill * found.pitch
    drill = nearest_drill(wanted, found.pitch, limits(thread))
    depth = (found.diameter - drill) / (WHITWORTH.minor_drop * found.pitch)
    assert 0.74 < depth < 0.9
