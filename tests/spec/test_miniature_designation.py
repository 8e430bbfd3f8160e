"""The grammar of Unified miniature designations."""

import pytest

from tapmodel.errors import InputError
from tapmodel.spec.designation import canonical, parse, read_class
from tapmodel.standards.unified.miniature import RULES
from tapmodel.words import Family, Hand

READ = {
    "0.50 UNM": (0.5, Hand.RIGHT, "0.50 UNM"),
    "0.5UNM": (0.5, Hand.RIGHT, "0.50 UNM"),
    ".5-unm": (0.5, Hand.RIGHT, "0.50 UNM"),
    "0,35 UNM LH": (0.35, Hand.LEFT, "0.35 UNM LH"),
    "1.4 UNM RH": (1.4, Hand.RIGHT, "1.40 UNM"),
}


@pytest.mark.parametrize("text", READ)
def test_reading(text: str):
    diameter, hand, standard = READ[text]
    found = parse(text)
    assert (found.family, found.diameter, found.hand) == (Family.MINIATURE, diameter, hand)
    assert canonical(found) == standard
    assert parse(standard) == found
    assert RULES.settle(found).pitch in {0.125, 0.09, 0.3}


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("UNM", "0.30 UNM to 1.40 UNM"),
        ("0 UNM", "a size over 0 mm"),
        ("0.5 UNM 6H", "one tolerance for all nuts"),
        ("0.5 UNM LH LH", "0.30 UNM to 1.40 UNM"),
        ("S0.5", r"0\.50 UNM, which has the same pitch .* or M0\.5; the tolerances of S"),
        ("S0,9x0,225-4H5", r"0\.90 UNM, .* or M0\.9x0\.225"),
    ],
)
def test_refusal_names_the_reason_and_another_way(text: str, reason: str):
    with pytest.raises(InputError, match=reason) as caught:
        parse(text)
    assert caught.value.field == "designation"


def test_sizes_that_are_not_listed_are_refused():
    with pytest.raises(InputError, match=r"0\.30, 0\.35, .* 1\.40 UNM; any other as M"):
        RULES.settle(parse("0.33 UNM"))
    with pytest.raises(InputError, match="one tolerance for all nuts"):
        read_class(Family.MINIATURE, "2B")
