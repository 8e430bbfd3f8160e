"""The grammar of Whitworth designations."""

from dataclasses import replace
from fractions import Fraction

import pytest
from asked import settled_of
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.errors import InputError, MeantError
from tapmodel.spec.designation import canonical, parse, read_class
from tapmodel.standards.whitworth.rules import RULES
from tapmodel.words import Family, Hand

R, L = Hand.RIGHT, Hand.LEFT

# text: (diameter [mm], threads per inch, hand, class, series, canonical)
READ = {
    "1/2-12 BSW": (12.7, 12, R, None, "BSW", "1/2-12 BSW"),
    "1/2 BSW": (12.7, None, R, None, "BSW", "1/2 BSW"),
    "5/16-22 BSF": (7.9375, 22, R, None, "BSF", "5/16-22 BSF"),
    "5/16 bsf": (7.9375, None, R, None, "BSF", "5/16 BSF"),
    "0.3125-22 BSF": (7.9375, 22, R, None, "BSF", "5/16-22 BSF"),
    "0,3125 \u2013 22 BSF": (7.9375, 22, R, None, "BSF", "5/16-22 BSF"),
    "1/4 in. - 20 B.S.W.": (6.35, 20, R, None, "BSW", "1/4-20 BSW"),
    '1/4" - 26 tpi B.S.F.': (6.35, 26, R, None, "BSF", "1/4-26 BSF"),
    "1/4-40 Whit": (6.35, 40, R, None, "Whit", "1/4-40 Whit"),
    "1/4 x 40 Whit.": (6.35, 40, R, None, "Whit", "1/4-40 Whit"),
    "1/4\u00d740 WHITWORTH": (6.35, 40, R, None, "Whit", "1/4-40 Whit"),
    "0.3-40 Whit": (7.62, 40, R, None, "Whit", "0.300-40 Whit"),
    "1/2 BSW LH": (12.7, None, L, None, "BSW", "1/2 BSW LH"),
    "1/2-12BSW-LH": (12.7, 12, L, None, "BSW", "1/2-12 BSW LH"),
    "1/2-12 BSW medium": (12.7, 12, R, "medium", "BSW", "1/2-12 BSW"),
    "1/2-12 BSW (Normal) LH": (12.7, 12, L, "normal", "BSW", "1/2-12 BSW normal LH"),
    "1/2-12 BSW-LH-close": (12.7, 12, L, "close", "BSW", "1/2-12 BSW close LH"),
    "1 1/4-7 BSW": (31.75, 7, R, None, "BSW", "1 1/4-7 BSW"),
    "1-1/4 - 7 BSW": (31.75, 7, R, None, "BSW", "1 1/4-7 BSW"),
    "1-8 BSW": (25.4, 8, R, None, "BSW", "1-8 BSW"),
    "4 1/2 - 2 7/8 BSW": (114.3, 2.875, R, None, "BSW", "4 1/2-2.875 BSW"),
}


@pytest.mark.parametrize("text", READ)
def test_reading(text: str):
    diameter, threads, hand, nut_class, series, standard = READ[text]
    found = parse(text)
    assert found.family is Family.WHITWORTH
    assert found.diameter == diameter
    assert found.pitch == (None if threads is None else pytest.approx(25.4 / threads, rel=1e-12))
    assert (found.hand, found.hole_class, found.series) == (hand, nut_class, series)
    assert (found.default_class, found.text, found.starts) == ("medium", text, 1)
    assert canonical(found) == standard


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("BSW", "a Whitworth thread as size in inches"),
        ("1/2-12 BSW LH RH", "a Whitworth thread as size in inches"),
        ("1/2-12 BSW medium normal", "a Whitworth thread as size in inches"),
        ("1/2-12-16 BSW", "a Whitworth thread as size in inches"),
        ("-1/2 BSW", "a Whitworth thread as size in inches"),
        ("0-12 BSW", "a size over 0 inches"),
        ("1/0-12 BSW", "a size over 0 inches"),
        ("1/2-0 BSW", "more than 0 threads per inch"),
        ("4 1/2-2 7/0 BSW", "more than 0 below the line"),
        ("1/2-12 BSW 2B", "a class of the nut: close, medium or normal"),
        ("1/2-12 BSW free", "its nut is of class normal"),
    ],
)
def test_refusal_names_the_field_and_the_reason(text: str, reason: str):
    with pytest.raises(InputError, match=reason) as caught:
        parse(text)
    assert caught.value.field == "designation"
    assert caught.value.value == text
    assert "1/4-40 Whit" in caught.value.allowed


def test_a_class_of_the_job_is_read_alike():
    assert read_class(Family.WHITWORTH, " Normal ") == "normal"
    with pytest.raises(InputError, match="class of the bolt"):
        read_class(Family.WHITWORTH, "free")


def test_another_thread_is_not_equal():
    same = parse("1/2-12 BSW")
    assert same == parse("0.5 x 12 BSW medium")
    for other in ("1/2-16 BSF", "9/16-12 BSW", "1/2-12 BSW LH", "1/2-12 BSW normal"):
        assert same != parse(other)


SIZES = st.integers(4, 384).map(lambda n: Fraction(n, 64))
THREADS = st.integers(20, 800).map(lambda n: n / 8)


@given(
    SIZES,
    THREADS,
    st.sampled_from(["BSW", "BSF", "Whit"]),
    st.sampled_from(["", " close", " medium", " normal"]),
    st.sampled_from(["", " LH"]),
)
def test_the_canonical_text_reads_back_as_the_same_thread(
    size: Fraction, threads: float, series: str, nut_class: str, hand: str
):
    thread = parse(f"{float(size):.6f}-{threads:g} {series}{nut_class}{hand}")
    assert thread.diameter == pytest.approx(25.4 * float(size), rel=1e-12)
    again = parse(canonical(thread))
    assert again == thread
    assert again.series == series
    assert canonical(again) == canonical(thread)


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        (".375 whit 16 LH", "3/8-16 Whit LH"),
        ("7/32 whitworth left hand", "7/32 BSF LH"),
        ("Whitworth 3/8 LH", "3/8 Whit LH"),
        ("BSW 3/8 LH", "3/8 BSW LH"),
        ("BSW 3/8-16 normal", "3/8-16 BSW normal"),
        ("9.525 BSW", "3/8 BSW"),
    ],
)
def test_what_was_meant_is_offered_and_accepted(text: str, meant: str) -> None:
    with pytest.raises(MeantError) as caught:
        settled_of(text)
    assert caught.value.allowed == meant
    for offer in meant.split(" or "):
        assert canonical(parse(offer)) == offer
        settled_of(offer)


def test_typed_threads_are_kept_in_the_offer() -> None:
    with pytest.raises(InputError, match=r"as in 0\.700-26 Whit LH"):
        settled_of("0.7in-26tpi BSW LH")
    settled_of("0.700-26 Whit LH")


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("3/8 Whitworth LH", "3/8-16 BSW LH"),
        ("3/8 Whit", "3/8-16 BSW"),
        ('1/2" whitworth', "1/2-12 BSW"),
        ("3/8 inch Whitworth left hand", "3/8-16 BSW LH"),
        ("1/4 Whit. normal", "1/4-20 BSW normal"),
        ("LH 1 1/4 Whit", "1 1/4-7 BSW LH"),
    ],
)
def test_the_trade_s_name_without_threads_is_the_coarse_series(typed: str, meant: str) -> None:
    found, coarse = (RULES.settle(parse(text)) for text in (typed, meant))
    assert replace(found, text="") == replace(coarse, text="")
    assert settled_of(typed).designation == meant


def test_whit_of_a_size_that_no_series_lists_needs_threads() -> None:
    with pytest.raises(InputError, match="threads per inch with Whit"):
        settled_of("0.3 Whit")
