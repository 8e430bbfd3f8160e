"""Laws of parallel pipe threads over all sizes."""

from itertools import pairwise

import pytest

from tapmodel.designing.choose.hole import nearest_drill
from tapmodel.errors import InputError
from tapmodel.spec.designation import canonical, parse
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.limits import HoleLimits
from tapmodel.standards.thread_forms import PIPE, WHITWORTH
from tapmodel.standards.whitworth.pipe import RULES, pipe_rows
from tapmodel.words import Certainty

SIZES = tuple(pipe_rows())


def settled(text: str) -> Designation:
    return RULES.settle(parse(text))


def limits(text: str) -> HoleLimits:
    return RULES.hole_limits(settled(text)).limits


def test_the_form_is_that_of_whitworth():
    assert (PIPE.flank_angle, PIPE.pitch_drop, PIPE.minor_drop) == (27.5, 0.640327, 1.280654)
    assert (PIPE.crest_radius, PIPE.root_radius) == (WHITWORTH.crest_radius,) * 2
    assert PIPE.name != WHITWORTH.name


@pytest.mark.parametrize("size", SIZES)
def test_limits_nest_and_the_tap_lies_inside(size: str):
    thread = settled(f"G {size}")
    hole = RULES.hole_limits(thread).limits
    assert 0 < hole.minor_min < hole.minor_max < hole.pitch_min
    assert hole.pitch_min < hole.pitch_max < hole.major_min
    tap = RULES.tap_limits(thread, RULES.tap_class(thread))
    t = hole.pitch_max - hole.pitch_min
    assert tap.pitch_min - hole.pitch_min == pytest.approx(0.2 * t)
    assert tap.pitch_max - hole.pitch_min == pytest.approx(0.5 * t)
    assert tap.major_min - hole.major_min == pytest.approx(0.2 * t)


def test_sizes_ascend_and_tolerances_never_shrink():
    for small, large in pairwise(limits(f"G {size}") for size in SIZES):
        assert small.major_min < large.major_min
        assert small.pitch_max - small.pitch_min < large.pitch_max - large.pitch_min + 1e-9
        assert small.minor_max - small.minor_min < large.minor_max - large.minor_min + 1e-9


def test_half_inch_worked_by_hand():
    # p = 25.4 / 14 = 1.814286, h = 0.640327 p = 1.16174 -> 1.162; 20.955 - 1.162, + 0.142;
    # 20.955 - 2.324, + 0.541.
    thread = settled("G 1/2")
    assert thread.pitch == pytest.approx(25.4 / 14, rel=1e-12)
    assert limits("G 1/2") == HoleLimits(20.955, 19.793, 19.935, 18.631, 19.172)
    found = RULES.hole_limits(thread)
    assert (found.listed, found.note) == (True, {})
    assert found.sources[0].certainty is Certainty.READ


@pytest.mark.parametrize("size", SIZES)
def test_a_settled_thread_reads_back(size: str):
    for text in (f"G {size}", f"G {size} LH"):
        assert canonical(settled(text)) == text
        assert settled(canonical(settled(text))) == settled(text)


@pytest.mark.parametrize("text", ["G 5/16", "G 7", "G 1/32", "G 0.3"])
def test_sizes_that_do_not_exist_name_those_that_do(text: str):
    with pytest.raises(InputError, match=r"one of the sizes 1/16, 1/8, .* 5 1/2, 6") as caught:
        settled(text)
    assert (caught.value.field, caught.value.value) == ("designation", text)


def test_a_class_of_another_standard_is_refused():
    with pytest.raises(InputError, match="cut, the only class") as caught:
        RULES.tap_limits(settled("G 1/2"), "2")
    assert caught.value.field == "thread.tap_class"


@pytest.mark.parametrize("size", SIZES)
def test_the_drill_aimed_at_leaves_three_quarters_to_nine_tenths_of_the_depth(size: str):
    thread = settled(f"G {size}")
    assert thread.pitch is not None
    wanted = thread.diameter - RULES.drop_to_drill * thread.pitch
    drill = nearest_drill(wanted, thread.pitch, limits(f"G {size}"))
    assert 0.75 < (thread.diameter - drill) / (PIPE.minor_drop * thread.pitch) < 0.9
