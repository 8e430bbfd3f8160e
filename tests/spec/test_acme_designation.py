"""The grammar of Acme designations."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.errors import InputError
from tapmodel.spec.designation import canonical, parse, read_class
from tapmodel.words import Family, Hand

R, L = Hand.RIGHT, Hand.LEFT

# text: (diameter in inches, pitch in inches, starts, hand, class, canonical)
READ = {
    "1/2-10 Acme-2G": (0.5, 0.1, 1, R, "2G", "1/2-10 ACME-2G"),
    "1/2-10 ACME": (0.5, 0.1, 1, R, None, "1/2-10 ACME-2G"),
    "1/2-10acme 3g": (0.5, 0.1, 1, R, "3G", "1/2-10 ACME-3G"),
    "1-5 ACME-2G-LH": (1, 0.2, 1, L, "2G", "1-5 ACME-2G-LH"),
    '1" - 5 - ACME LH 4G': (1, 0.2, 1, L, "4G", "1-5 ACME-4G-LH"),
    "0.750-6 Acme": (0.75, 1 / 6, 1, R, None, "3/4-6 ACME-2G"),
    "1 1/2-4 Acme": (1.5, 0.25, 1, R, None, "1 1/2-4 ACME-2G"),
    "0.500-0.1P-0.2L-ACME-2G": (0.5, 0.1, 2, R, "2G", "0.500-0.1P-0.2L-ACME-2G"),
    "1/2-.1p-.2l-acme-lh": (0.5, 0.1, 2, L, None, "0.500-0.1P-0.2L-ACME-2G-LH"),
    "0,5 - 0,1P - 0,4L - ACME": (0.5, 0.1, 4, R, None, "0.500-0.1P-0.4L-ACME-2G"),
    "0.500-0.1P-0.1L-ACME": (0.5, 0.1, 1, R, None, "1/2-10 ACME-2G"),
    "0.5-0.1667P-0.3333L-ACME": (0.5, 1 / 6, 2, R, None, "0.500-0.1667P-0.3333L-ACME-2G"),
    "0.5-0.12P-0.12L-ACME": (0.5, 0.12, 1, R, None, "0.500-0.12P-0.12L-ACME-2G"),
    "2.875-0.4P-0.8L-ACME-4G": (2.875, 0.4, 2, R, "4G", "2.875-0.4P-0.8L-ACME-4G"),
}


@pytest.mark.parametrize("text", READ)
def test_reading(text: str):
    diameter, pitch, starts, hand, hole_class, standard = READ[text]
    found = parse(text)
    assert found.family is Family.ACME
    assert found.diameter == pytest.approx(diameter * 25.4, abs=1e-9)
    assert found.pitch == pytest.approx(pitch * 25.4, abs=1e-9)
    assert (found.starts, found.hand, found.hole_class) == (starts, hand, hole_class)
    assert (found.text, found.default_class) == (text, "2G")
    assert canonical(found) == standard
    assert parse(standard) == found


REFUSED = {
    "1/2 Acme": "size-threads per inch ACME",
    "Acme": "size-threads per inch ACME",
    "1/2-10 Acme-2G-3G": "size-threads per inch ACME",
    "1/2-10 stub Acme": "stub Acme is another form",
    "1/2-10 Acme-2C": "C marks centralizing threads",
    "1/2-10 Acme-2B": "2G, 3G or 4G",
    "1/2-0 Acme": "more than 0 threads",
    "1/0-10 Acme": "a size over 0 inches",
    "0.5-.0P-0.1L-Acme": "a pitch over 0",
    "0.5-0.1P-0.15L-ACME": "1 to 8 times the pitch",
    "0.5-0.1P-0.9L-ACME": "1 to 8 times the pitch",
    "0.5-0.1P-0.0L-ACME": "1 to 8 times the pitch",
}


@pytest.mark.parametrize("text", REFUSED)
def test_refusal_says_why_and_shows_the_forms(text: str):
    with pytest.raises(InputError, match=r"for instance 1/2-10 ACME, 1-5 ACME-2G-LH") as caught:
        parse(text)
    assert REFUSED[text] in caught.value.allowed
    assert (caught.value.field, caught.value.value) == ("designation", text)


def test_class_of_a_job():
    assert read_class(Family.ACME, "4g") == "4G"
    with pytest.raises(InputError) as caught:
        read_class(Family.ACME, "2B")
    assert (caught.value.field, caught.value.value) == ("hole.class", "2B")


@given(
    st.integers(125, 6000),
    st.integers(2, 20),
    st.integers(1, 8),
    st.sampled_from(["", "-2G", "-3G", "-4G"]),
    st.sampled_from(["", "-LH"]),
)
def test_the_standard_text_of_any_thread_reads_back_as_the_same(
    thousandths: int, tpi: int, starts: int, hole_class: str, hand: str
):
    lengths = f"{1 / tpi:.4f}P-{starts / tpi:.4f}L"
    found = parse(f"{thousandths / 1000:.3f}-{lengths}-ACME{hole_class}{hand}")
    assert (found.starts, found.pitch) == (starts, pytest.approx(25.4 / tpi, rel=1e-12))
    assert parse(canonical(found)) == found
    if starts == 1:
        assert parse(f"{thousandths / 1000:.3f}-{tpi} ACME{hole_class}{hand}") == found
