"""What a dividing head is asked for."""

from fractions import Fraction

import pytest

from tapmodel.errors import InputError
from tapmodel.spec.shop.dividing import Asked, asked_for, ratio_for


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        *(("13", Asked(13, Fraction(360, 13))), (" 1 ", Asked(1, Fraction(360)))),
        *(("35deg", Asked(None, Fraction(35))), ("35°", Asked(None, Fraction(35)))),
        *(("2 1/2 deg", Asked(None, Fraction(5, 2))), ("11.5deg", Asked(None, Fraction(23, 2)))),
        *(("24min", Asked(None, Fraction(2, 5))), ("24'", Asked(None, Fraction(2, 5)))),
        *(("1deg30min", Asked(None, Fraction(3, 2))), ("1° 30′", Asked(None, Fraction(3, 2)))),
    ],
)
def test_divisions_or_an_angle(text: str, asked: Asked) -> None:
    assert asked_for("DIVISIONS", text) == asked


@pytest.mark.parametrize(
    "text",
    [
        *("", " ", "0", "-3", "10001", "1e9", "9" * 400, "nan", "inf", "x", "13.5", "0deg"),
        *("-1deg", "361deg", "1/0deg", "deg", "35 dge", "7,5deg", "1:30", "\u0663", "\x1b[2J"),
    ],
)
def test_anything_else_is_refused_with_the_field(text: str) -> None:
    with pytest.raises(InputError, match=r"^DIVISIONS: .*35deg, 2 1/2deg, 1deg30min or 24min"):
        asked_for("DIVISIONS", text)


@pytest.mark.parametrize("ratio", [0, -40, 1001, 10**9])
def test_a_ratio_out_of_range_is_refused(ratio: int) -> None:
    with pytest.raises(InputError, match=r"--ratio: .*from 1 to 1000"):
        ratio_for("--ratio", ratio)
