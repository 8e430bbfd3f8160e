"""Lengths as people write them."""

import pytest

from tapmodel.spec.lengths import millimetres_of


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("6.35", 6.35),
        (" 6.35 mm ", 6.35),
        ("6.35MM", 6.35),
        ("0.25in", 6.35),
        (".25 in.", 6.35),
        ("1/4in", 6.35),
        ("1/4 inch", 6.35),
        ('1 1/2"', 38.1),
        ("1-1/2″", 38.1),
        ("-0.1in", -2.54),
        ("2e-1", 0.2),
        ("7/16 in", 11.1125),
    ],
)
def test_a_length_is_read_to_the_last_bit(text: str, mm: float) -> None:
    assert millimetres_of(text) == mm


@pytest.mark.parametrize(
    "text", ["", "in", "1/4", "1/0in", "a", "1,5", "nan", "1/4/2in", "1 2in", "5 m", "0x5", "--1"]
)
def test_what_is_no_length_is_none(text: str) -> None:
    assert millimetres_of(text) is None
