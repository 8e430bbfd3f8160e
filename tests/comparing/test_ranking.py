"""The law by which taps are ranked, and which of them are drawn."""

import itertools
import math
from dataclasses import replace

import pytest

from tapmodel.comparing.ranking import verdict_on
from tapmodel.comparing.spread import spread
from tapmodel.comparing.variant import UNUSABLE, Merit, Variant
from tapmodel.tap.tap import Tap

GOOD = Merit(binds=False, warnings=1, margin=2.0, rubbing=1.0)


def variants(*merits: Merit | None) -> list[Variant]:
    """Sound variants by their merits; None is one that breaks a rule."""
    return [
        Variant(number, {"flutes.offset": number}, {}, () if merit else ("core",), (), None, merit)
        for number, merit in enumerate(merits, 1)
    ]


def order(*merits: Merit | None) -> list[int]:
    return [variant.number for variant in verdict_on(variants(*merits)).ranked]


# Each is better than the one below, however much better that is in all that counts less.
LADDER = (
    replace(GOOD, warnings=0, margin=1.01, rubbing=1.0),
    replace(GOOD, warnings=0, margin=1.0, rubbing=0.99),
    replace(GOOD, warnings=0, margin=1.0, rubbing=1.0),
    replace(GOOD, warnings=1, margin=9.0, rubbing=0.0),
    replace(GOOD, warnings=2, margin=math.inf, rubbing=0.0),
    replace(GOOD, binds=True, warnings=0, margin=99.0, rubbing=0.0),
    None,
)


@pytest.mark.parametrize(("first", "second"), [*itertools.combinations(range(len(LADDER)), 2)])
def test_what_counts_more_goes_before_what_counts_less(first: int, second: int) -> None:
    assert order(LADDER[first], LADDER[second]) == [1, 2]
    assert order(LADDER[second], LADDER[first]) == [2, 1]


def test_one_per_cent_of_margin_or_of_rubbing_decides() -> None:
    more, rubs = replace(GOOD, margin=2.02), replace(GOOD, rubbing=1.01)
    assert order(GOOD, more) == [2, 1]
    assert order(rubs, GOOD) == [2, 1]
    # The margin decides before the rubbing.
    assert order(GOOD, replace(more, rubbing=5.0)) == [2, 1]


def test_noise_of_the_last_digits_decides_nothing() -> None:
    noisy = replace(GOOD, margin=GOOD.margin * (1 + 1e-13), rubbing=1.2)
    assert order(noisy, GOOD) == [2, 1]


def test_those_alike_stay_in_their_order() -> None:
    assert order(GOOD, GOOD, None, GOOD) == [1, 2, 4, 3]


def test_how_many_are_left_by_each_sieve() -> None:
    found = verdict_on(
        variants(
            None,
            replace(GOOD, binds=True, warnings=0),
            replace(GOOD, warnings=2),
            GOOD,
            replace(GOOD, margin=1.98),
            replace(GOOD, rubbing=1.01),
            GOOD,
        )
    )
    assert found.sieved == (6, 5, 4, 3, 2)
    assert [one.number if one else None for one in (found.best, found.runner_up)] == [4, 7]


def test_where_each_breaks_a_rule_there_is_no_best(small_tap: Tap) -> None:
    unusable = Variant(1, {}, {}, (UNUSABLE,))
    no_tap = Variant(2, {}, {}, ("thread-depth",))
    worse = Variant(3, {}, {}, ("core", "rake"), tap=small_tap)
    broken = Variant(4, {}, {}, ("core",), tap=small_tap)
    found = verdict_on([unusable, no_tap, worse, broken])
    assert (found.best, found.runner_up) == (None, None)
    assert [variant.number for variant in found.ranked] == [4, 3, 2, 1]
    assert spread(found) == ()


def _drawable(small_tap: Tap, number: int, margin: float) -> Variant:
    """A sound variant whose flutes stand a hundredth of its number further out."""
    flutes = replace(small_tap.flutes, centre_radius=3.2 + number / 100)
    tap = replace(small_tap, flutes=flutes)
    return Variant(number, {}, {}, (), (), tap, replace(GOOD, margin=margin))


@pytest.mark.parametrize("best", [1, 4, 40, 73])
def test_the_best_is_drawn_among_others_over_the_whole_range(small_tap: Tap, best: int) -> None:
    many = [_drawable(small_tap, number, 3.0 if number == best else 2.0) for number in range(1, 74)]
    drawn = [variant.number for variant in spread(verdict_on(many))]
    assert len(drawn) == 6
    assert drawn == sorted(set(drawn))
    assert best in drawn
    others = [number for number in drawn if number != best]
    assert (others[0], others[-1]) == (1 + (best == 1), 73 - (best == 73))
    gaps = [b - a for a, b in itertools.pairwise(others)]
    assert max(gaps) - min(gaps) <= 2


def test_taps_of_one_section_are_drawn_once(small_tap: Tap) -> None:
    three = [_drawable(small_tap, number, 2.0) for number in (1, 2, 3)]
    longer = replace(small_tap.blank, overall_length=50.0)
    same = [
        replace(one, number=one.number + 3, tap=replace(one.tap, blank=longer))
        for one in three
        if one.tap
    ]
    assert [one.number for one in spread(verdict_on([*three, *same]))] == [1, 2, 3]
    # Of two with one section the best is the one that stands in the legend.
    same[1] = replace(same[1], merit=replace(GOOD, margin=2.02))
    assert [one.number for one in spread(verdict_on([*three, *same]))] == [1, 3, 5]
