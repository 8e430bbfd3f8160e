"""Pitches as people write them."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.errors import InputError, WriteError
from tapmodel.spec.job_file import job_for
from tapmodel.spec.shop.pitches import exact_of, exact_pitch, in_inches, pitch_for

INCH = Fraction(254, 10)


@pytest.mark.parametrize(
    ("text", "pitch"),
    [
        *(("0.75", Fraction(3, 4)), (".75mm", Fraction(3, 4)), ("4 mm", Fraction(4))),
        *(("19tpi", INCH / 19), ("19 TPI", INCH / 19), ("11.5tpi", INCH / Fraction(23, 2))),
        *(("4 1/2 tpi", INCH / Fraction(9, 2)), ("4-1/2tpi", INCH / Fraction(9, 2))),
        *(("8 t.p.i.", INCH / 8), ("8 per inch", INCH / 8), ("8 threads per inch", INCH / 8)),
        *(("1/8in", INCH / 8), ('0.125"', INCH / 8), ("5/2tpi", INCH / Fraction(5, 2))),
    ],
)
def test_a_pitch_is_read_exactly(text: str, pitch: Fraction) -> None:
    assert exact_pitch(text) == pitch
    assert pitch_for("--pitch", text) == pitch
    assert in_inches(text) == (pitch.numerator % 127 == 0)


@pytest.mark.parametrize(
    "text",
    [
        *("", " ", "x", "0", "0tpi", "-1", "-8tpi", "nan", "inf", "1e9", "8tp", "tpi", "1/0"),
        *("1/0tpi", "4 1.5tpi", "1e3tpi", "\u0661tpi", "3000tpi", "0.02tpi", "9" * 400),
        *("8tpi\n9tpi", "\x1b"),
    ],
)
def test_what_is_no_pitch_is_refused_with_its_field(text: str) -> None:
    with pytest.raises(InputError, match=r"^--pitch: .* such as 0\.75, 0\.75mm, 1/8in or 19tpi"):
        pitch_for("--pitch", text)


@given(st.fractions(Fraction(1, 20), 25, max_denominator=2000), st.booleans())
def test_a_float_stands_for_the_pitch_that_it_was_made_of(number: Fraction, inch: bool) -> None:
    pitch = INCH / (2 * number) if inch else number
    assert exact_of(float(pitch)) == pitch
    assert exact_of(25.4 / float(2 * number)) == INCH / (2 * number)


def test_a_leadscrew_is_named_as_a_pitch() -> None:
    for text in ("8tpi", "'1/8in'", "3.175", "3.175mm"):
        assert job_for("M10", [f"shop.leadscrew={text}"]).shop.leadscrew == 3.175
    assert job_for("M10", ["shop.leadscrew=8tpi"]).typed()["shop.leadscrew"] == "8tpi"


@pytest.mark.parametrize("text", ["0", "-4", "8tp", "1e9", "[4]", "true"])
def test_what_is_no_leadscrew_is_refused(text: str) -> None:
    with pytest.raises(InputError, match=r"^shop\.leadscrew: .*0\.75mm, 1/8in or 19tpi"):
        job_for("M10", [f"shop.leadscrew={text}"])


@pytest.mark.parametrize(
    ("text", "wheels"),
    [
        ("20,24,30", [20, 24, 30]),
        ("20-23,40,40", [20, 21, 22, 23, 40, 40]),
        ("[20, '30-31']", [20, 30, 31]),
    ],
)
def test_wheels_are_named_by_their_teeth(text: str, wheels: list[int]) -> None:
    assert job_for("M10", [f"shop.gears={text}"]).shop.gears == wheels


@pytest.mark.parametrize("text", ["20", "7,20", "20,401", "[]", "20,x", "20,,30", "30-20,40"])
def test_what_are_no_wheels_is_refused(text: str) -> None:
    with pytest.raises(InputError, match=r"^shop\.gears: .*stands twice, 2 to 200 wheels"):
        job_for("M10", [f"shop.gears={text}"])


@pytest.mark.parametrize(("text", "written"), [("1/8", "1/8in"), ("0,75", "0.75")])
def test_what_is_nearly_a_pitch_is_written_as_one(text: str, written: str) -> None:
    with pytest.raises(WriteError, match=f"^--pitch: '{text}' cannot be used; write {written}$"):
        pitch_for("--pitch", text)
    assert pitch_for("--pitch", written) == exact_pitch(written)
