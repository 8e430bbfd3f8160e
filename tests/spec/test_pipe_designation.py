"""The grammar of pipe designations: parallel G is read, every other pipe thread refused."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.errors import InputError
from tapmodel.spec.designation import canonical, parse, read_class
from tapmodel.spec.designations.reading.inches import size_text
from tapmodel.words import Family, Hand

R, L = Hand.RIGHT, Hand.LEFT

# By the text: size, hand, canonical text.
READ = {
    "G 1/2": ("1/2", R, "G 1/2"),
    "G1/2": ("1/2", R, "G 1/2"),
    "g 0.5": ("1/2", R, "G 1/2"),
    'G 1/2"': ("1/2", R, "G 1/2"),
    "G-1/2": ("1/2", R, "G 1/2"),
    "G 3/8 LH": ("3/8", L, "G 3/8 LH"),
    "G3/8 \u2013 LH": ("3/8", L, "G 3/8 LH"),
    "G 3/8 RH": ("3/8", R, "G 3/8"),
    "G 1 1/4": ("1 1/4", R, "G 1 1/4"),
    "G1-1/4": ("1 1/4", R, "G 1 1/4"),
    "G2": ("2", R, "G 2"),
    "1/2 BSPP": ("1/2", R, "G 1/2"),
    "BSPP 1/2 LH": ("1/2", L, "G 1/2 LH"),
    "1 1/2 in. BSPP": ("1 1/2", R, "G 1 1/2"),
}


@pytest.mark.parametrize("text", READ)
def test_reading(text: str):
    size, hand, standard = READ[text]
    found = parse(text)
    assert (found.family, found.size, found.hand) == (Family.PIPE, size, hand)
    assert (found.pitch, found.starts, found.text) == (None, 1, text)
    assert (found.hole_class, found.default_class) == (None, "")
    assert canonical(found) == standard


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        *(
            (text, "taper pipe thread.*needs a taper tap")
            for text in ("R 1/2", "Rc1/2", "rc 1 1/4")
        ),
        *(
            (text, "taper pipe thread")
            for text in ("NPT 1/2", "1/2-14 NPT", "1/2 NPTF", "1/2 BSPT")
        ),
        *((text, r"limits of its own \(ISO 7-1\)") for text in ("Rp 1/2", "RP1/2 LH")),
        *((text, "NPS is of 60 degrees") for text in ("NPS 1/2", "1/2-14 NPSM", "1/2 NPSL")),
        *((text, "may be parallel or taper") for text in ("BSP 1/2", "1/2 BSP", '1/2" BSP LH')),
        *((text, "as G and its size") for text in ("G", "G 1/2/3", "G 1/2 LH RH", "G 1/0", "G 0")),
        *((text, "as G and its size") for text in ("BSPP", "G 1/2 x 14", "G1/2LX")),
        ("G 1/2 A", "A and B are classes of the external thread"),
        ("G 1/2-6H", "one tolerance for internal threads"),
    ],
)
def test_refusal_names_the_field_and_the_reason(text: str, reason: str):
    with pytest.raises(InputError, match=reason) as caught:
        parse(text)
    assert caught.value.field == "designation"
    assert caught.value.value == text
    assert "G 1 1/4, G1/8" in caught.value.allowed


def test_a_class_of_the_job_is_refused():
    with pytest.raises(InputError, match="one tolerance for internal threads") as caught:
        read_class(Family.PIPE, "A")
    assert caught.value.field == "hole.class"


SIZES = st.integers(1, 96).map(lambda n: Fraction(n, 16))


@given(SIZES, SIZES, st.sampled_from(["", " LH"]))
def test_the_canonical_text_reads_back_and_sizes_differ(one: Fraction, other: Fraction, hand: str):
    thread = parse(f"G {float(one):g}{hand}")
    assert thread.size == size_text(one)
    assert parse(canonical(thread)) == thread
    assert (thread == parse(f"G {size_text(other)}{hand}")) == (one == other)
