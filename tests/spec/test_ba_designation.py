"""The grammar of British Association designations."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.errors import InputError
from tapmodel.spec.designation import canonical, parse, read_class
from tapmodel.words import Family, Hand

R, L = Hand.RIGHT, Hand.LEFT

# By the text: number, diameter, hand, canonical text.
READ = {
    "2 BA": ("2", 4.7, R, "2 BA"),
    "2BA": ("2", 4.7, R, "2 BA"),
    "2-ba": ("2", 4.7, R, "2 BA"),
    "No. 2 BA": ("2", 4.7, R, "2 BA"),
    "no 2 B.A.": ("2", 4.7, R, "2 BA"),
    "#2 BA": ("2", 4.7, R, "2 BA"),
    "02 BA": ("2", 4.7, R, "2 BA"),
    "0 BA": ("0", 6.0, R, "0 BA"),
    "1 BA": ("1", 5.3, R, "1 BA"),
    "16 BA": ("16", 0.79, R, "16 BA"),
    "10 BA LH": ("10", 1.7, L, "10 BA LH"),
    "10BA \u2013 LH": ("10", 1.7, L, "10 BA LH"),
    "10 BA RH": ("10", 1.7, R, "10 BA"),
}


@pytest.mark.parametrize("text", READ)
def test_reading(text: str):
    number, diameter, hand, standard = READ[text]
    found = parse(text)
    assert (found.family, found.size, found.hand) == (Family.BA, number, hand)
    assert (found.diameter, found.pitch, found.starts) == (diameter, None, 1)
    assert (found.hole_class, found.default_class, found.text) == (None, "", text)
    assert canonical(found) == standard


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        *((text, "0 BA to 16 BA") for text in ("17 BA", "99 BA", "BA", "2.5 BA", "-2 BA", "2 BA2")),
        *((text, "0 BA to 16 BA") for text in ("2 BA LH LH", "2 BA LH RH", "1/2 BA", "100 BA")),
        ("2 BA 6H", "one tolerance for all nuts"),
        ("2 BA normal", "close and normal are classes of the bolt"),
    ],
)
def test_refusal_names_the_field_and_the_reason(text: str, reason: str):
    with pytest.raises(InputError, match=reason) as caught:
        parse(text)
    assert caught.value.field == "designation"
    assert caught.value.value == text
    assert "4 BA LH" in caught.value.allowed


def test_a_class_of_the_job_is_refused():
    with pytest.raises(InputError, match="one tolerance for all nuts") as caught:
        read_class(Family.BA, "medium")
    assert caught.value.field == "hole.class"


@given(st.integers(0, 16), st.integers(0, 16), st.sampled_from(["", " LH"]))
def test_the_canonical_text_reads_back_and_numbers_differ(one: int, other: int, hand: str):
    thread = parse(f"{one} BA{hand}")
    assert parse(canonical(thread)) == thread
    assert (thread == parse(f"{other} BA{hand}")) == (one == other)
    assert thread != parse(f"{one} BA LH") or hand
