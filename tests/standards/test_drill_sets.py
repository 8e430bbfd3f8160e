"""The sets of twist drills: complete, in order, and what lies next to a size."""

import string
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.standards.drill_sets import (
    INCH_SETS,
    METRIC,
    inch_drills,
    inch_names,
    metric_drill,
    metric_step,
    next_drills,
)
from tapmodel.standards.tables import read_table

SIZES = st.floats(0.4, 25.0).map(lambda size: round(size, 3))


def test_every_set_is_complete():
    names = {name: [drill.name for drill in inch_drills(name)] for name in INCH_SETS}
    assert names["number"] == [f"#{number}" for number in range(80, 0, -1)]
    assert names["letter"] == list(string.ascii_uppercase)
    assert len(set(names["fraction"])) == 64 + 48 + 8  # to 1 in, to 1 3/4 in, to 2 in
    assert names["fraction"][:4] == ["1/64", "1/32", "3/64", "1/16"]
    assert names["fraction"][62:65] == ["63/64", "1", "1 1/64"]
    assert names["fraction"][-10:-7] == ["1 47/64", "1 3/4", "1 25/32"]
    assert names["fraction"][-1] == "2"


@pytest.mark.parametrize("name", INCH_SETS)
def test_a_set_grows_from_drill_to_drill(name: str):
    drills = inch_drills(name)
    assert all(thin.diameter < thick.diameter for thin, thick in pairwise(drills))
    assert {drill.drill_set for drill in drills} == {name}


def test_letters_go_on_where_numbers_end_and_no_step_stands_out():
    # A slip in a leading digit would show as a step far from its neighbours'.
    numbers, letters = inch_drills("number"), inch_drills("letter")
    pairs = list(pairwise((*numbers, *letters)))
    steps = {(a.name, b.name): (b.diameter - a.diameter) / 25.4 for a, b in pairs}
    assert min(steps.values()) == pytest.approx(0.001)
    widest = sorted(steps, key=lambda pair: steps[pair], reverse=True)[:2]
    assert widest == [("N", "O"), ("W", "X")]
    assert steps["N", "O"] == pytest.approx(0.014)
    within = {pair: step for pair, step in steps.items() if pair[1].startswith("#")}
    assert max(within, key=lambda pair: within[pair]) == ("#31", "#30")
    assert within["#31", "#30"] == pytest.approx(0.0085)


@pytest.mark.parametrize("table", ["drill_numbers", "drill_letters"])
def test_every_cell_says_how_sure_it_is(table: str):
    assert {row["read"] for row in read_table(table)} <= {"bd_warehouse", "memory"}


@pytest.mark.parametrize(
    ("name", "drill_set", "inches"),
    [
        ("#7", "number", 0.2010),
        ("#80", "number", 0.0135),
        ("F", "letter", 0.257),
        ("13/64", "fraction", 0.203125),
        ("1", "fraction", 1.0),
        ("1 9/64", "fraction", 1.140625),
    ],
)
def test_sizes_in_mm_are_the_inches_times_25_4(name: str, drill_set: str, inches: float):
    (drill,) = (drill for drill in inch_drills(drill_set) if drill.name == name)
    assert drill.diameter == pytest.approx(25.4 * inches, abs=1e-9)
    assert name in inch_names(drill.diameter)


def test_names_of_a_size():
    assert inch_names(6.35) == ("1/4", "E")
    assert inch_names(5.1054) == ("#7",)
    assert inch_names(5.1) == ()
    assert metric_drill(10.2).name == "10.2 mm"


def test_only_quarters_of_an_inch_are_in_two_sets():
    sizes = [drill.diameter for name in INCH_SETS for drill in inch_drills(name)]
    assert {size for size in sizes if sizes.count(size) > 1} == {6.35}


@given(SIZES, st.sampled_from((METRIC, *INCH_SETS)))
def test_the_next_drills_stand_on_both_sides_and_nothing_between(size: float, name: str):
    below, above = next_drills(name, size)
    if below:
        assert below.diameter <= size + 1e-6
        beyond = next_drills(name, below.diameter + 1e-4)[1]
        assert beyond is None or beyond.diameter > size - 1e-6
    if above:
        assert above.diameter >= size - 1e-6
    if name == METRIC:
        assert below is not None
        assert above is not None
        assert above.diameter - below.diameter <= metric_step(size) + 1e-9


def test_beyond_the_ends_of_a_set_there_is_none():
    assert next_drills("letter", 5.0) == (None, inch_drills("letter")[0])
    assert next_drills("letter", 12.0) == (inch_drills("letter")[-1], None)
    assert next_drills(METRIC, 0.009)[0] is None
