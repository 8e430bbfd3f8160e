"""Hours by operation and their cost, by hand for one tap."""

import math

import pytest
from asked import settled_of

from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.shop.cost.cost import Prices, cost_of, cost_record
from tapmodel.shop.cost.hours import SETTING_UP, minutes_of
from tapmodel.shop.gcode.flutes import flutes_program
from tapmodel.shop.gcode.program import speed_of
from tapmodel.shop.gcode.square import square_program
from tapmodel.shop.order_of_work import Step, order_of_work
from tapmodel.shop.threading.passes import thread_passes
from tapmodel.shop.threading.stopping import stopping


def designed(text: str, *sets: str) -> TapDesign:
    return settled_of(text, sets)


@pytest.fixture(scope="module", name="lens")
def _lens() -> TapDesign:
    return designed("M18x0.75")


def working(design: TapDesign) -> dict[Step, float]:
    return {one.step: one.working for one in minutes_of(design)}


@pytest.mark.parametrize("text", ["M10", "M18x0.75", "Tr16x6(P3)", "3/8-16", "M64x1"])
def test_every_operation_of_the_route_has_its_time(text: str) -> None:
    design = designed(text)
    minutes = minutes_of(design)
    assert tuple(one.step for one in minutes) == order_of_work(design)
    assert all(one.setting_up >= 2 and one.working > 0 for one in minutes)
    assert {one.step for one in minutes} <= set(SETTING_UP)


def test_the_lathe_by_hand(lens: TapDesign) -> None:
    found = working(lens)
    # O1 at 20 m/min; 18.05 over a thread of 37, at an 80th of the diameter but 0.2 at the most
    turns = 20_000 / (math.pi * 18.05)
    assert found[Step.BODY] == pytest.approx(37 / (0.5 * 0.2 * turns), rel=1e-3)
    # a bar of 20 through at 500 mm2 a minute
    assert found[Step.SAW] == pytest.approx(math.pi * 100 / 500)
    # a third of the speed, or as fast as a hand stops it in the last turn
    told, stop = thread_passes(lens.tap.thread), stopping(lens.tap)
    assert told is not None
    each = 37 / (0.75 * min(turns / 3, stop.turns if stop else turns)) + 0.25
    assert found[Step.THREAD] == pytest.approx(len(told.passes) * each, rel=1e-3)
    # shank of 14 and thread of 18.05 out of 20: 3 passes over 75 mm, 1 over 37
    bar = 20_000 / (math.pi * 20)
    last = 75 / (0.5 * 0.175 * 20_000 / (math.pi * 14))
    assert found[Step.SHANK] == pytest.approx((3 * 75 + 37) / (0.2 * bar) + last, rel=1e-3)


def test_several_starts_are_cut_one_after_the_other() -> None:
    two = designed("M20xPh3P1.5")
    told, stop = thread_passes(two.tap.thread), stopping(two.tap)
    assert told is not None
    turns = 20_000 / 3 / (math.pi * two.tap.thread.major)
    turns = min(turns, stop.turns) if stop else turns
    each = two.tap.blank.thread_length / (3.0 * turns) + 0.25
    assert working(two)[Step.THREAD] == pytest.approx(2 * len(told.passes) * each, rel=1e-3)


def test_the_mill_by_its_own_programs(lens: TapDesign) -> None:
    """Cuts at the feed and passes as the programs have them, but for the way out of a flute."""
    for step, program, cutter, turned in (
        (Step.FLUTES, flutes_program(lens), 8.0, 4),
        (Step.SQUARE, square_program(lens), 10.0, 4),
    ):
        lines = program.splitlines()
        axis = "X" if step is Step.FLUTES else "Y"
        cuts = [line for line in lines if line.startswith(f"G1 {axis}")]
        long = [abs(float(line.split(axis)[1])) for line in cuts]
        way = sum(long) + 4.0 * len(long) if step is Step.FLUTES else 2 * sum(long)
        minutes = way / speed_of(cutter, lens).feed + 0.2 * len(cuts) + 2 * turned
        assert working(lens)[step] == pytest.approx(minutes, rel=0.02)


def test_sums_are_those_of_what_was_typed(lens: TapDesign) -> None:
    cost = cost_of(lens, Prices(price=140, weeks=3, rate=45, bar=30, cutter=25))
    hours = sum(one.setting_up + one.working for one in cost.minutes) / 60
    assert cost.hours == pytest.approx(hours)
    assert cost.bar == pytest.approx(116)
    assert cost.to_buy == (8.0,)
    made = hours * 45 + 0.116 * 30 + 25
    assert cost.made == pytest.approx(made)
    assert cost.more == pytest.approx(made - 140)
    assert cost.even_rate == pytest.approx((140 - 0.116 * 30 - 25) / hours)
    assert cost.sooner == pytest.approx(120 - hours)
    even = cost_of(lens, Prices(price=140, rate=cost.even_rate, bar=30, cutter=25))
    assert even.more == pytest.approx(0, abs=1e-9)


def test_nothing_typed_nothing_summed(lens: TapDesign) -> None:
    record = cost_record(cost_of(lens, Prices()))
    assert record["hours"] > 1
    sums = ("labour", "steel", "cutters", "made", "making_costs_more_by", "even_at_rate")
    assert all(record[name] is None for name in sums)


def test_the_shop_says_its_rate_and_its_cutters() -> None:
    cost = cost_of(designed("M10", "shop.rate=30", "shop.cutters=[5, 7]"), Prices(cutter=20))
    assert cost.prices.rate == 30
    assert cost.made == pytest.approx(30 * cost.hours)
    assert cost.to_buy == ()
    other = cost_of(designed("M10", "shop.rate=30"), Prices(rate=50))
    assert other.labour == pytest.approx(50 * other.hours)
    bought = ("shop.cutters=[5, 6]", "flutes.cutter_diameter=7")
    assert cost_of(designed("M10", *bought), Prices(cutter=20)).cutters == 20


@pytest.mark.parametrize("wrong", [-1.0, math.nan, math.inf, 1e7])
def test_what_is_no_price_is_refused(wrong: float, lens: TapDesign) -> None:
    with pytest.raises(InputError, match=r"--price: .*a number from 0 to 1000000"):
        cost_of(lens, Prices(price=wrong))
    with pytest.raises(InputError, match="--weeks"):
        cost_of(lens, Prices(weeks=wrong))
