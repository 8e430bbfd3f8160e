"""Laws of British Association threads over all numbers."""

import math
from itertools import pairwise

import pytest

from tapmodel.errors import InputError
from tapmodel.spec.designation import canonical, parse
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.limits import HoleLimits
from tapmodel.standards.thread_forms import BA
from tapmodel.standards.whitworth.ba import RULES, ba_sizes
from tapmodel.words import Certainty

NUMBERS = range(17)


def settled(text: str) -> Designation:
    return RULES.settle(parse(text))


def limits(text: str) -> HoleLimits:
    return RULES.hole_limits(settled(text)).limits


def test_the_arcs_touch_the_flanks_at_the_depth_of_the_thread():
    lean = math.radians(BA.flank_angle)
    assert BA.height == pytest.approx(1 / (2 * math.tan(lean)), abs=1e-6)
    cut_off = BA.crest_radius * (1 / math.sin(lean) - 1)
    assert BA.height - 2 * cut_off == pytest.approx(BA.pitch_drop, abs=3e-6)
    assert BA.minor_drop == 2 * BA.pitch_drop
    assert BA.root_radius == BA.crest_radius
    # The standard's 2/11 is this radius to the nearest simple fraction.
    assert BA.crest_radius == pytest.approx(2 / 11, abs=0.001)


def test_sizes_follow_the_law_of_the_series():
    assert list(ba_sizes()) == [str(number) for number in range(17)]
    for number, (diameter, pitch) in enumerate(ba_sizes().values()):
        exact = 0.9**number
        assert pitch == pytest.approx(exact, abs=0.005)
        # To two significant digits, like the pitch.
        step = 0.1 if diameter >= 1 else 0.01
        assert diameter == pytest.approx(6 * exact**1.2, abs=step / 2)


def test_the_grammar_and_the_table_name_one_diameter():
    for number, (diameter, _) in ba_sizes().items():
        assert parse(f"{number} BA").diameter == diameter


@pytest.mark.parametrize("number", NUMBERS)
def test_limits_nest_and_the_tap_lies_inside(number: int):
    thread = settled(f"{number} BA")
    hole = RULES.hole_limits(thread).limits
    assert 0 < hole.minor_min < hole.minor_max < hole.pitch_min
    assert hole.pitch_min < hole.pitch_max < hole.major_min
    tap = RULES.tap_limits(thread, RULES.tap_class(thread))
    t = hole.pitch_max - hole.pitch_min
    assert tap.pitch_min - hole.pitch_min == pytest.approx(0.2 * t)
    assert tap.pitch_max - hole.pitch_min == pytest.approx(0.5 * t)
    assert tap.major_min - hole.major_min == pytest.approx(0.2 * t)


def test_tolerances_shrink_with_the_number():
    for larger, smaller in pairwise(limits(f"{number} BA") for number in NUMBERS):
        assert larger.pitch_max - larger.pitch_min > smaller.pitch_max - smaller.pitch_min
        assert larger.minor_max - larger.minor_min > smaller.minor_max - smaller.minor_min


def test_two_ba_worked_by_hand():
    # p 0.81, D 4.7: D2 = 4.7 - 0.486, D1 = 4.7 - 0.972; 0.12 p + 0.03 = 0.1272, 0.375 p = 0.30375.
    assert limits("2 BA") == HoleLimits(4.7, 4.214, 4.341, 3.728, 4.032)
    found = RULES.hole_limits(settled("2 BA"))
    assert found.listed
    assert [source.certainty for source in found.sources] == [
        Certainty.READ,
        Certainty.MEMORY,
        Certainty.READ,
    ]


@pytest.mark.parametrize("text", ["0 BA", "2 BA LH", "14 BA"])
def test_a_settled_thread_reads_back(text: str):
    assert canonical(settled(text)) == text
    assert settled(canonical(settled(text))) == settled(text)


def test_a_class_of_another_standard_is_refused():
    with pytest.raises(InputError, match="cut, the only class") as caught:
        RULES.tap_limits(settled("2 BA"), "2")
    assert caught.value.field == "thread.tap_class"
