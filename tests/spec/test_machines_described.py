"""Dials and rotary tables of a job: read as people write them, refused with one clear message."""

from fractions import Fraction

import pytest

from tapmodel.errors import InputError
from tapmodel.spec.job_file import checked, job_for
from tapmodel.spec.shop.rotary_tables import RotaryTable, rotary_table_of


@pytest.mark.parametrize(
    ("field", "text"),
    [
        ("cross_slide", "0.02mm, 4mm a turn, on diameter"),
        ("cross_slide", "0.001in, 100 divisions"),
        ("top_slide", '0.001", 0.1" a turn'),
        ("mill", "0.02mm, 4mm a turn; down 0.02mm, 2mm a turn"),
        ("rotary_table", "90, 2min"),
        ("rotary_table", "72:1"),
    ],
)
def test_a_description_stands_in_the_job_as_it_was_typed(field: str, text: str) -> None:
    for typed in (text, f"'{text}'"):
        job = job_for("M10", [f"shop.{field}={typed}"])
        assert job.given()[f"shop.{field}"] == text


def test_a_bare_ratio_is_a_rotary_table() -> None:
    assert job_for("M10", ["shop.rotary_table=90"]).shop.rotary_table == "90"


@pytest.mark.parametrize(
    ("field", "text", "allowed"),
    [
        ("cross_slide", "0.02mm", "a division and a turn"),
        ("cross_slide", "0.02mm, 4mm a turn, on thickness", "on diameter"),
        ("cross_slide", "0.02mm, 0.0231in", "half a one"),
        ("cross_slide", "0.0001mm, 4mm", "0.001 to 1 mm"),
        ("cross_slide", "0.001mm, 0.1", "0.25 to 50 mm"),
        ("cross_slide", "1,5", "a unit with one of them"),
        ("cross_slide", "12", "0.02mm, 4mm a turn"),
        ("top_slide", "0.02mm, 4mm a turn, on diameter", "not on diameter"),
        ("mill", "0.02mm, 4mm; up 0.02mm, 4mm", "sideways, down, along"),
        ("mill", "4mm, 0.02mm", "a division and a turn"),
        ("rotary_table", "0", "from 1 to 360"),
        ("rotary_table", "90, 7min", "a whole share of a turn"),
        ("rotary_table", "90, 0min", "a whole share"),
        ("rotary_table", "true", "turns of the handle"),
        ("rotary_table", "90, 2", "90, 2min"),
    ],
)
def test_what_describes_none_is_refused_with_what_is_allowed(
    field: str, text: str, allowed: str
) -> None:
    with pytest.raises(InputError) as refused:
        job_for("M10", [f"shop.{field}={text}"])
    assert refused.value.field == f"shop.{field}"
    assert allowed in refused.value.allowed
    assert str(refused.value).count("allowed:") == 1


def test_a_number_that_is_no_description_is_refused_in_a_file_too() -> None:
    with pytest.raises(InputError, match="a division and a turn"):
        checked({"designation": "M10", "shop": {"cross_slide": 0.02}})


@pytest.mark.parametrize(
    ("text", "ratio", "division"),
    [
        ("90", 90, Fraction(0)),
        ("90:1, 2'", 90, Fraction(1, 30)),
        ("40, 1deg", 40, Fraction(1)),
        ("72, 20 sec", 72, Fraction(1, 180)),
        ("60, 0.1°", 60, Fraction(1, 10)),
    ],
)
def test_rotary_tables(text: str, ratio: int, division: Fraction) -> None:
    assert rotary_table_of(text) == RotaryTable(ratio, division)
