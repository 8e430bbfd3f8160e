"""Laws of the hole's limits over the listed sizes and beyond them."""

from itertools import pairwise, product

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tapmodel.errors import InputError
from tapmodel.spec.hole_class import HoleClass, parse_hole_class
from tapmodel.standards.limits import HoleLimits, Unlisted
from tapmodel.standards.metric.hole_limits import metric_hole_limits
from tapmodel.standards.metric.pitches import listed_pairs

PRINTED_GRADES = (4, 5, 6, 7)
H6 = HoleClass(6, 6, "H")


def assert_nested(limits: HoleLimits) -> None:
    assert 0 < limits.minor_min < limits.minor_max < limits.pitch_min
    assert limits.pitch_min < limits.pitch_max < limits.major_min


def test_limits_nest_for_every_listed_pair_and_class():
    for (diameter, pitch), grade, position in product(listed_pairs(), PRINTED_GRADES, "GH"):
        assert_nested(metric_hole_limits(diameter, pitch, HoleClass(grade, grade, position)).limits)


@given(st.floats(1, 300), st.floats(0.2, 8), st.integers(4, 8), st.sampled_from("GH"))
def test_unlisted_pairs_nest_or_their_coarse_grades_are_refused(
    diameter: float, pitch: float, grade: int, position: str
):
    assume(pitch <= diameter / 2)
    try:
        found = metric_hole_limits(diameter, pitch, HoleClass(grade, grade, position))
    except InputError:
        # Grades up to 6 always fit; 7 and 8 only where the thread is deeper than they are wide.
        refused = True
    else:
        refused = False
        assert_nested(found.limits)
        assert found.listed == (found.note == {})
    assert not refused or (grade > 6 and pitch < 0.7)


def test_a_tighter_grade_lies_inside_a_wider_one():
    for diameter, pitch in listed_pairs():
        for tight, wide in pairwise(PRINTED_GRADES):
            inner = metric_hole_limits(diameter, pitch, HoleClass(tight, tight, "H")).limits
            outer = metric_hole_limits(diameter, pitch, HoleClass(wide, wide, "H")).limits
            assert inner.pitch_max < outer.pitch_max
            assert inner.minor_max < outer.minor_max
            assert inner.pitch_min == outer.pitch_min


def test_position_g_shifts_every_limit_by_the_same():
    for diameter, pitch in listed_pairs():
        plain = metric_hole_limits(diameter, pitch, H6).limits
        moved = metric_hole_limits(diameter, pitch, HoleClass(6, 6, "G")).limits
        shift = moved.pitch_min - plain.pitch_min
        assert shift > 0.016
        for name in ("major_min", "pitch_max", "minor_min", "minor_max"):
            assert getattr(moved, name) - getattr(plain, name) == pytest.approx(shift, abs=1e-9)


def test_two_grades_take_one_tolerance_from_each():
    mixed = metric_hole_limits(10, 1.5, parse_hole_class("5H6H")).limits
    fine = metric_hole_limits(10, 1.5, parse_hole_class("5H")).limits
    assert (mixed.pitch_min, mixed.pitch_max) == (fine.pitch_min, fine.pitch_max)
    assert mixed.minor_max == metric_hole_limits(10, 1.5, H6).limits.minor_max


def test_unlisted_pair_worked_by_hand():
    # M18x0.9 6G. d = sqrt(11.2 x 22.4) = 15.839; TD2 = 1.32 x 90 x 0.9^0.4 x d^0.1 = 150.1 -> 150;
    # TD1 = 230 x 0.9^0.7 = 213.6 -> 212; EI = 15 + 9.9 = 24.9 -> 25.
    found = metric_hole_limits(18, 0.9, HoleClass(6, 6, "G"))
    assert found.limits == HoleLimits(18.025, 17.440, 17.590, 17.051, 17.263)
    assert found.basic_pitch_diameter == pytest.approx(17.415, abs=1e-9)
    assert not found.listed
    assert found.note == {
        "why": (Unlisted.METRIC_TOLERANCES,),
        "diameter": 18,
        "pitch": 0.9,
        "hole_class": "6G",
        "computed": (
            "pitch-diameter tolerance",
            "minor-diameter tolerance",
            "fundamental deviation",
        ),
    }


def test_only_what_no_table_prints_is_computed():
    # M18x0.75 6H: TD1 190 and EI stand in the tables, TD2 does not: 1.32 x 90 x 0.75^0.4 x
    # 15.839^0.1 = 139.6 -> 140.
    found = metric_hole_limits(18, 0.75, H6)
    assert found.limits == HoleLimits(18, 17.513, 17.653, 17.188, 17.378)
    assert not found.listed
    assert found.note.words("computed") == ("pitch-diameter tolerance",)
    assert [str(source.certainty) for source in found.sources] == ["read", "read", "read"]


@pytest.mark.parametrize(
    ("diameter", "grades", "fit"),
    [(3, (8, 8), (8, 7)), (91, (7, 7), (6, 7)), (300, (8, 8), (6, 7))],
)
def test_a_grade_too_wide_for_the_pitch_names_the_widest_that_fit(
    diameter: float, grades: tuple[int, int], fit: tuple[int, int]
):
    text = f"grades up to {fit[0]} for the pitch diameter and up to {fit[1]} for the minor"
    with pytest.raises(InputError, match=text):
        metric_hole_limits(diameter, 0.2, HoleClass(*grades, "H"))
    assert_nested(metric_hole_limits(diameter, 0.2, HoleClass(*fit, "H")).limits)


def test_sizes_out_of_range_are_refused():
    with pytest.raises(InputError, match=r"0\.3 to 300 mm"):
        metric_hole_limits(0.29, 0.08, H6)
