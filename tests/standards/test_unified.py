"""Laws of the limits of Unified threads: series, hole, tap."""

from itertools import pairwise, product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.errors import InputError
from tapmodel.spec.designation import canonical, parse
from tapmodel.standards.families import FAMILIES
from tapmodel.standards.limits import HoleLimits, TapLimits, Unlisted
from tapmodel.standards.unified.hole_limits import UnifiedThread, unified_hole_limits
from tapmodel.standards.unified.series import constant_pitch_sizes, named_pitches, series_of
from tapmodel.standards.unified.tap_limits import GROUND_LARGE, unified_tap_limits
from tapmodel.standards.unified.tolerances import engagement, minor_tolerance
from tapmodel.words import Certainty, Family

RULES = FAMILIES[Family.UNIFIED]
UN_PITCHES = (4, 6, 8, 12, 16, 20, 28, 32)
NAMED = {(size, tpi) for size, series in named_pitches().items() for tpi in series.values()}
CONSTANT = {(size, float(tpi)) for tpi in UN_PITCHES for size in constant_pitch_sizes(tpi)}
LISTED = sorted(NAMED | CONSTANT)


def limits_of(thread: UnifiedThread, hole_class: str) -> HoleLimits:
    return unified_hole_limits(thread, hole_class).limits


@st.composite
def threads(draw: st.DrawFn) -> UnifiedThread:
    diameter = draw(st.integers(600, 60000)) / 10000
    coarsest = max(4.0, 2 / diameter)
    tpi = draw(st.floats(coarsest, 80)) if draw(st.booleans()) else draw(st.integers(4, 80))
    tpi = max(round(tpi, 4), round(coarsest + 0.0001, 4))
    return UnifiedThread(diameter, tpi, series_of(diameter, tpi))


def assert_laws(thread: UnifiedThread) -> None:
    """Limits nest; a closer class is nowhere wider; the cut tap fits into every class."""
    found = {name: limits_of(thread, name) for name in ("1B", "2B", "3B")}
    tap = unified_tap_limits(thread, "cut")
    for hole in found.values():
        sizes = [hole.minor_min, hole.minor_max, hole.pitch_min, hole.pitch_max, hole.major_min]
        assert all(small < large for small, large in pairwise(sizes))
        assert hole.pitch_min + 0.005 < tap.pitch_min < tap.pitch_max < hole.pitch_max
        assert tap.major_min > hole.major_min
    assert found["1B"].pitch_max >= found["2B"].pitch_max >= found["3B"].pitch_max
    # Class 2B prints the minor diameter to 0.001 in, which may cost it half of that.
    assert found["1B"].minor_max == found["2B"].minor_max
    # The standard's two formulas cross on threads less than 2.5 pitches thick.
    if thread.diameter * thread.tpi >= 2.5:
        assert found["2B"].minor_max >= found["3B"].minor_max - 0.0005001 * 25.4


def test_laws_hold_for_every_listed_pair():
    assert len(LISTED) > 300
    for diameter, tpi in LISTED:
        assert_laws(UnifiedThread(diameter, tpi, series_of(diameter, tpi)))


@given(threads())
def test_laws_hold_for_any_pair(thread: UnifiedThread):
    assert_laws(thread)


@given(st.integers(60, 6000), st.integers(4, 80))
def test_tolerance_grows_with_size_and_pitch(thousandths: int, tpi: int):
    thread = UnifiedThread(thousandths / 1000, tpi, "UNS")
    larger = UnifiedThread(1.2 * thread.diameter, tpi, "UNS")
    coarser = UnifiedThread(thread.diameter, tpi / 1.2, "UNS")
    zones = [
        limits_of(each, "2B").pitch_max - limits_of(each, "2B").pitch_min
        for each in (thread, larger, coarser)
    ]
    assert zones[1] >= zones[0] - 0.0001 * 25.4
    assert zones[2] > zones[0] - 0.0001 * 25.4


SETTLED = {
    "1/4-20": "UNC",
    "1/4-28": "UNF",
    "1/4-32": "UNEF",
    "7/16-26": "UNS",
    "2-12": "UN",
    "2-4.5": "UNC",
    "1-14": "UNS",
    "1-12": "UNF",
    "10-32": "UNF",
    "10-28": "UNS",
    "1 1/2-8": "UN",
    "2 1/8-8": "UN",
    "2 1/16-8": "UNS",
    "3-20": "UN",
    "9/32-20": "UNS",
}


@pytest.mark.parametrize("text", SETTLED)
def test_the_series_is_found(text: str):
    settled = RULES.settle(parse(text))
    assert settled.series == SETTLED[text]
    named = RULES.settle(parse(f"{text} {settled.series}"))
    assert RULES.hole_limits(named) == RULES.hole_limits(settled)
    assert RULES.hole_limits(settled).listed is (settled.series != "UNS")
    special = {"why": (Unlisted.UNIFIED_SERIES,)}
    assert RULES.hole_limits(settled).note == (special if settled.series == "UNS" else {})


@pytest.mark.parametrize("text", ["1 3/8-24", "3/8-26", "9/32-20"])
def test_un_of_a_pairing_in_no_series_is_uns(text: str):
    loose, special = (RULES.settle(parse(f"{text} {series}")) for series in ("UN", "UNS"))
    assert loose.series == special.series == "UNS"
    assert canonical(loose) == f"{text} UNS-2B"
    assert RULES.hole_limits(loose) == RULES.hole_limits(special)


CONTRADICTIONS = {
    "1/4-20 UNF": "1/4-20 UNC, or 1/4-28 UNF, which is the only UNF of that size",
    "7/16-26 UNC": "7/16-26 UNS, or 7/16-14 UNC, which is the only UNC of that size",
    "1/4-20 UNS": "1/4-20 UNC; UNS is for pairings of no series",
    "0-80 UNC": "0-80 UNF; the series UNC has no thread of that size",
}


@pytest.mark.parametrize("text", CONTRADICTIONS)
def test_a_series_that_contradicts_the_table_is_refused_with_the_right_pitch(text: str):
    with pytest.raises(InputError) as caught:
        RULES.settle(parse(text))
    assert (caught.value.field, caught.value.value) == ("designation", text)
    assert caught.value.allowed == CONTRADICTIONS[text]


@pytest.mark.parametrize(
    ("text", "field"),
    [
        ("0.059-80", "diameter"),
        ("6 1/64-8", "diameter"),
        ("1/4-509", "pitch"),
        ("1/4-7", "pitch"),
        ("5-3.9", "pitch"),
    ],
)
def test_sizes_out_of_range_are_refused(text: str, field: str):
    with pytest.raises(InputError) as caught:
        RULES.settle(parse(text))
    assert caught.value.field == field


def test_length_of_engagement_by_series():
    assert engagement(0.75, 10, "UNC") == 0.75
    assert engagement(2.0, 8, "UN") == 2.0
    assert engagement(2.0, 12, "UN") == pytest.approx(0.75)
    assert engagement(0.5, 28, "UNEF") == pytest.approx(9 / 28)
    assert engagement(1.0, 14, "UNS") == pytest.approx(9 / 14)


def test_minor_tolerance_in_each_of_its_branches():
    # Worked by hand with P = 1/n to eight places.
    assert minor_tolerance(0.06, 80, "2B") == pytest.approx(0.394 * 0.0125)
    assert minor_tolerance(0.24, 40, "2B") == pytest.approx(0.25 / 40 - 0.4 / 40**2)
    assert minor_tolerance(3.0, 4, "1B") == pytest.approx(0.15 * 0.25)
    assert minor_tolerance(3.0, 12, "3B") == pytest.approx(0.12 / 12)
    assert minor_tolerance(3.0, 20, "3B") == pytest.approx(0.23 / 20 - 1.5 / 400)
    # 0.05 x 0.135721 + 0.03 x 0.05 / 0.25 - 0.002
    assert minor_tolerance(0.25, 20, "3B") == pytest.approx(0.010786)


def test_unlisted_pair_worked_by_hand():
    # 7/16-26: P 0.03846154, D2 0.4125, D1 0.3959; LE 9P: Td2 = 0.0015 x 0.759147 +
    # 0.0015 x 0.588348 + 0.015 x 0.113939 = 0.003730, TD2 0.004849; TD1 = 0.009024.
    found = unified_hole_limits(UnifiedThread(0.4375, 26, "UNS"), "2B")
    inches = (0.4375, 0.4125, 0.4173, 0.396, 0.405)
    assert found.limits == HoleLimits(*(size * 25.4 for size in inches))


def test_cut_thread_of_an_unlisted_pair_worked_by_hand():
    # 0.0005 over basic; zone 0.4 x 0.004849 = 0.0019; H/16 = 0.0021.
    found = unified_tap_limits(UnifiedThread(0.4375, 26, "UNS"), "cut")
    sizes = [size / 25.4 for size in (found.pitch_min, found.pitch_max, found.major_min)]
    assert sizes == pytest.approx([0.4130, 0.4149, 0.4401], abs=1e-9)
    assert found.source.certainty is Certainty.DERIVED
    assert "rule of this program" in found.source.place


def test_the_rule_for_cut_threads_follows_the_rows_of_the_table():
    # Least sizes of all rows within 0.0001 in, widths of the zone within 0.0006 in.
    for text in ("4-40", "6-32", "6-36", "8-40", "10-24", "10-32", "1/2-13", "7/8-9", "1 1/4-7"):
        thread = RULES.settle(parse(text))
        size, tpi = thread.diameter / 25.4, 25.4 / thread.pitch
        listed = RULES.tap_limits(thread, "cut")
        ruled = unified_tap_limits(UnifiedThread(size, tpi + 1e-4, thread.series), "cut")
        assert ruled.source != listed.source
        assert ruled.pitch_min == pytest.approx(listed.pitch_min, abs=0.0001 * 25.4)
        assert ruled.major_min == pytest.approx(listed.major_min, abs=0.00012 * 25.4)
        assert ruled.pitch_max == pytest.approx(listed.pitch_max, abs=0.0006 * 25.4)


def test_ground_numbers_step_by_half_a_thousandth_and_meet():
    for diameter, tpi in ((0.06, 80), (0.375, 16), (1.0, 8)):
        thread = UnifiedThread(diameter, tpi, "UNC")
        names = [*(f"L{n}" for n in range(5, 0, -1)), *(f"h{n}" for n in range(1, 12))]
        taps = [unified_tap_limits(thread, name) for name in names]
        for below, above in pairwise(taps):
            assert above.pitch_min == pytest.approx(below.pitch_max, abs=1e-9)
            assert above.pitch_max - above.pitch_min == pytest.approx(0.0127, abs=1e-9)
        assert taps[5].pitch_min == pytest.approx(thread.basic_pitch_diameter * 25.4, abs=1e-9)


def zone_of(diameter: float, name: str) -> tuple[float, float]:
    thread = UnifiedThread(diameter, 8, "UN")
    tap: TapLimits = unified_tap_limits(thread, name)
    basic = thread.basic_pitch_diameter
    return tap.pitch_min / 25.4 - basic, tap.pitch_max / 25.4 - basic


@pytest.mark.parametrize(("diameter", "zone"), [(1.125, 0.001), (2.0, 0.0015), (3.0, 0.002)])
def test_ground_zones_widen_over_one_inch(diameter: float, zone: float):
    assert zone_of(diameter, "H6") == pytest.approx((0.003 - zone, 0.003), abs=1e-9)
    assert unified_tap_limits(UnifiedThread(diameter, 8, "UN"), "H6").source is GROUND_LARGE
    assert zone_of(diameter, "L2") == pytest.approx((-0.001, -0.001 + zone), abs=1e-9)


# Worked by hand, each rounded to 0.0001 in: 0.130 P less 0.087 P from 48 threads per inch, 0.076 P
# from 36, else 0.065 P.
GROUND_MAJOR = {
    49.8: 0.0026 - 0.0017,
    48: 0.0027 - 0.0018,
    43.5: 0.0030 - 0.0017,
    36: 0.0036 - 0.0021,
    35.9: 0.0036 - 0.0018,
    4: 0.0325 - 0.0162,
}


@pytest.mark.parametrize("tpi", GROUND_MAJOR)
def test_ground_major_diameter_in_each_of_its_branches(tpi: float):
    tap = unified_tap_limits(UnifiedThread(0.9, tpi, "UNS"), "H3")
    assert tap.major_min / 25.4 - 0.9 == pytest.approx(GROUND_MAJOR[tpi], abs=1e-9)


@pytest.mark.parametrize(
    ("text", "minor_min"), [("5-40", 0.0979), ("6-32", 0.104), ("6-32 UNC-3B", 0.104)]
)
def test_places_of_the_minor_diameter(text: str, minor_min: float):
    found = RULES.hole_limits(RULES.settle(parse(text))).limits
    assert found.minor_min / 25.4 == pytest.approx(minor_min, abs=1e-9)


@pytest.mark.parametrize("tap_class", ["", "H0", "H12", "L6", "H", "2", "G3", "H3H3", "cut thread"])
def test_bad_tap_classes_are_refused(tap_class: str):
    with pytest.raises(InputError) as caught:
        RULES.tap_limits(RULES.settle(parse("1/4-20")), tap_class)
    assert (caught.value.field, caught.value.value) == ("thread.tap_class", tap_class)
    assert caught.value.allowed.startswith("cut (cut thread), or ground H1 to H11 or L1 to L5")


def test_the_first_choice_suits_every_class():
    for text, hole_class in product(("0-80", "1/4-20", "2-12"), ("1B", "2B", "3B")):
        settled = RULES.settle(parse(f"{text}-{hole_class}"))
        assert RULES.tap_class(settled) == "cut"


def test_finer_than_the_series_the_formulas_are_carried_on_and_it_is_said():
    fine = RULES.hole_limits(RULES.settle(parse("1/4-254")))
    assert fine.beyond_scope
    assert fine.note == {"why": (Unlisted.UNIFIED_SCOPE,), "finest": 80}
    # D2 = 0.25 - 0.649519/254; LE = 9P: TD2 = 1.3 * (0.0015 * 0.25^(1/3) + 0.0015 * 0.18824
    # + 0.015 * 0.024934) = 0.002082.
    assert fine.limits.pitch_min / 25.4 == pytest.approx(0.2474, abs=1e-9)
    assert fine.limits.pitch_max / 25.4 == pytest.approx(0.2474 + 0.0021, abs=1e-9)
    assert not RULES.hole_limits(RULES.settle(parse("1/4-79"))).beyond_scope


@pytest.mark.parametrize("hole_class", ["1B", "2B", "3B"])
def test_a_pitch_finer_than_its_tolerance_is_refused_with_the_finest(hole_class: str):
    settled = RULES.settle(parse(f"2.000-508 UNS-{hole_class}"))
    with pytest.raises(InputError, match=f"in class {hole_class}") as caught:
        RULES.hole_limits(settled)
    finest = caught.value.allowed.split(maxsplit=1)[0]
    found = RULES.hole_limits(RULES.settle(parse(f"2.000-{finest} UNS-{hole_class}"))).limits
    assert found.minor_max < found.pitch_min < found.pitch_max < found.major_min
