"""The grammar of Unified designations."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.errors import InputError
from tapmodel.spec.designation import canonical, parse, read_class
from tapmodel.standards.families import FAMILIES
from tapmodel.standards.unified.series import constant_pitch_sizes, named_pitches
from tapmodel.words import Family, Hand

R, L = Hand.RIGHT, Hand.LEFT

# text: (diameter in inches, threads per inch, hand, class, series, canonical)
READ = {
    "1/4-20 UNC-2B": (0.25, 20, R, "2B", "UNC", "1/4-20 UNC-2B"),
    "1/4-20 UNC": (0.25, 20, R, None, "UNC", "1/4-20 UNC-2B"),
    "1/4-20unc": (0.25, 20, R, None, "UNC", "1/4-20 UNC-2B"),
    "1/4-20": (0.25, 20, R, None, "", "1/4-20-2B"),
    " .25 - 20 ": (0.25, 20, R, None, "", "1/4-20-2B"),
    "0,25-20 UNC": (0.25, 20, R, None, "UNC", "1/4-20 UNC-2B"),
    '1/4"-20 UNC-3B': (0.25, 20, R, "3B", "UNC", "1/4-20 UNC-3B"),
    "1/4 in.-20-UNC-LH-1b": (0.25, 20, L, "1B", "UNC", "1/4-20 UNC-1B-LH"),
    "1/4\u201320 UNC \u2013 2B": (0.25, 20, R, "2B", "UNC", "1/4-20 UNC-2B"),
    "7/16-26 UNS-2B": (0.4375, 26, R, "2B", "UNS", "7/16-26 UNS-2B"),
    "0.4375-26 UNS-2B-LH": (0.4375, 26, L, "2B", "UNS", "7/16-26 UNS-2B-LH"),
    "10-32 UNF": (0.19, 32, R, None, "UNF", "10-32 UNF-2B"),
    "#10-32": (0.19, 32, R, None, "", "10-32-2B"),
    "No. 10-32 UNF": (0.19, 32, R, None, "UNF", "10-32 UNF-2B"),
    "no 10 - 32 unf": (0.19, 32, R, None, "UNF", "10-32 UNF-2B"),
    "0.190-32": (0.19, 32, R, None, "", "10-32-2B"),
    "0-80": (0.06, 80, R, None, "", "0-80-2B"),
    "1 1/2-6 UNC": (1.5, 6, R, None, "UNC", "1 1/2-6 UNC-2B"),
    "1-1/2-6 UNC": (1.5, 6, R, None, "UNC", "1 1/2-6 UNC-2B"),
    "2-12 UN": (2, 12, R, None, "UN", "2-12 UN-2B"),
    "2-4.5 UNC": (2, 4.5, R, None, "UNC", "2-4.5 UNC-2B"),
    "2-56": (0.086, 56, R, None, "", "2-56-2B"),
    "2.000-32 UNS": (2, 32, R, None, "UNS", "2.000-32 UNS-2B"),
    '2"-32 UNS': (2, 32, R, None, "UNS", "2.000-32 UNS-2B"),
    "#2-32 UNS": (0.086, 32, R, None, "UNS", "#2-32 UNS-2B"),
    "1/2-28 UNEF": (0.5, 28, R, None, "UNEF", "1/2-28 UNEF-2B"),
    "19/64-36 UNS": (19 / 64, 36, R, None, "UNS", "19/64-36 UNS-2B"),
    "0.2969-36 UNS": (19 / 64, 36, R, None, "UNS", "19/64-36 UNS-2B"),
    "0.297-36 UNS": (0.297, 36, R, None, "UNS", "0.297-36 UNS-2B"),
    "0.3-40 UNS": (0.3, 40, R, None, "UNS", "0.300-40 UNS-2B"),
    "1/2-11.5 RH": (0.5, 11.5, R, None, "", "1/2-11.5-2B"),
}


@pytest.mark.parametrize("text", READ)
def test_reading(text: str):
    diameter, tpi, hand, hole_class, series, standard = READ[text]
    found = parse(text)
    assert found.family is Family.UNIFIED
    assert found.diameter == pytest.approx(diameter * 25.4, abs=1e-9)
    assert found.pitch == pytest.approx(25.4 / tpi, abs=1e-9)
    assert (found.hand, found.hole_class, found.series) == (hand, hole_class, series)
    assert (found.text, found.starts, found.default_class) == (text, 1, "2B")
    assert canonical(found) == standard
    assert parse(standard) == found


# Whole numbers whose two readings are parted by the series of the standard.
NUMBERS_OR_INCHES = {
    "1-64": 0.073,
    "1-72": 0.073,
    "1-32 UN": 1,
    "1-8": 1,
    "2-20": 2,
    "2-64": 0.086,
    "3-48": 0.099,
    "3-20": 3,
    "4-40": 0.112,
    "4-16": 4,
    "5-44": 0.125,
    "5-12": 5,
    "6-32": 0.138,
    "6-16": 6,
    "8-36": 0.164,
    "12-24": 0.216,
}


@pytest.mark.parametrize("text", NUMBERS_OR_INCHES)
def test_a_bare_whole_number_is_read_by_its_threads(text: str):
    assert parse(text).diameter == pytest.approx(NUMBERS_OR_INCHES[text] * 25.4, abs=1e-9)


@pytest.mark.parametrize("text", ["1-40", "2-32 UN", "3-36", "4-20", "6-24 UNS", "8-4", "10-1.5"])
def test_where_both_are_possible_both_are_shown(text: str):
    size, tpi = text.split(maxsplit=1)[0].split("-")
    with pytest.raises(InputError) as caught:
        parse(text)
    rest = text.partition("-")[2]
    assert f"{size}.000-{rest} for {size} inches or #{size}-{rest} for number" in (
        caught.value.allowed
    )
    assert parse(f"{size}.000-{tpi}").diameter == pytest.approx(int(size) * 25.4)
    assert parse(f"#{size}-{tpi}").diameter < 6


def test_the_threads_that_part_numbers_from_inches_agree_with_the_series_of_the_table():
    numbers = {0.06 + 0.013 * n: n for n in (*range(7), 8, 10, 12)}
    listed = {n: set(named_pitches()[round(size, 4)].values()) for size, n in numbers.items()}
    for number, pitches in listed.items():
        for tpi in pitches:
            assert parse(f"{number}-{tpi:g}") == parse(f"#{number}-{tpi:g}")
    for inch in range(1, 7):
        constant = {n for n in (4, 6, 8, 12, 16, 20, 28, 32) if inch in constant_pitch_sizes(n)}
        for tpi in constant | set(named_pitches().get(float(inch), {}).values()):
            assert parse(f"{inch}-{tpi:g}").diameter == pytest.approx(inch * 25.4)


@pytest.mark.parametrize(
    "text",
    [
        *("1/4 UNC", "1/4-UNC", "#-32", "#7-32", "#13-24", "No. 1/4-20", '#10"-32', "1/4-0"),
        *("1/4-20 UNC-2B-3B", "1/4-20 UNC-LH-RH", "1/4-20 UNX", "1/4-20 UNRC", "1/4-20 UN UNC"),
        *("1/0-20", "0/4-20", "0.0-20", "1/4-20--2B", "1/4-20-", "1/4-20 UNC-4B", "1/4-20-6H"),
        *("1/4-20 UNC-2", "1/4-20 UNC 2B 2B", "2 UNC", "1/4 20 UN C"),
    ],
)
def test_refusal_names_the_field_and_shows_the_forms(text: str):
    with pytest.raises(InputError, match=r"for instance 1/4-20 UNC-2B") as caught:
        parse(text)
    assert (caught.value.field, caught.value.value) == ("designation", text)


@pytest.mark.parametrize("text", ["1/4-20 UNC-2A", "10-32 UNF-3a", "1/4-20 1A"])
def test_a_class_of_the_screw_is_explained(text: str):
    with pytest.raises(InputError, match="A marks a class of the screw"):
        parse(text)


@pytest.mark.parametrize("text", ["1/4-20 XYZ", "10", "1/4-2000"])
def test_a_text_of_no_family_gets_the_general_answer(text: str):
    with pytest.raises(InputError, match=r"M18x0\.75, .* Tr16x4, 1/4-20 UNC or"):
        parse(text)


def test_class_of_a_job():
    assert read_class(Family.UNIFIED, " 3b ") == "3B"
    with pytest.raises(InputError) as caught:
        read_class(Family.UNIFIED, "6H")
    assert (caught.value.field, caught.value.value) == ("hole.class", "6H")
    assert caught.value.allowed == "a class of the hole: 1B, 2B or 3B"


SIZES = st.one_of(
    st.integers(4, 6 * 64 - 1).map(
        lambda n: f"{n}/64" if n < 64 else f"{n // 64} {n % 64 or 1}/64"
    ),
    st.integers(60, 6000).map(lambda n: f"{n / 1000:.3f}"),
    st.sampled_from([0, 1, 2, 3, 4, 5, 6, 8, 10, 12]).map(lambda n: f"#{n}"),
)


@given(
    SIZES,
    st.one_of(st.integers(4, 80), st.sampled_from([4.5, 11.5, 13.25])),
    st.sampled_from(["", "-1B", "-2B", " 3b"]),
    st.sampled_from(["", "-LH", " rh"]),
)
def test_the_standard_text_of_any_thread_reads_back_as_the_same(
    size: str, tpi: float, hole_class: str, hand: str
):
    found = parse(f"{size}-{tpi}{hole_class}{hand}")
    again = parse(canonical(found))
    assert again == found
    assert canonical(again) == canonical(found)
    if tpi < 2 * 25.4 / found.diameter:
        return
    settled = FAMILIES[Family.UNIFIED].settle(found)
    assert parse(canonical(settled)) == settled
    assert parse(canonical(settled)).series == settled.series
