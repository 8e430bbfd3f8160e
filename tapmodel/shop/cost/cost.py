"""What making a tap costs, against a price and a lead time that somebody typed in."""

import math
from dataclasses import dataclass, replace
from typing import Any

from tapmodel.designing.choose.cutters import among
from tapmodel.designing.choose.tools import tools_of
from tapmodel.designing.record import TapDesign
from tapmodel.errors import InputError
from tapmodel.shop.bar import bar_for
from tapmodel.shop.cost.hours import Minutes, minutes_of

MOST = 1e6
"""Of any price, rate or time that may be typed."""

HOURS_A_WEEK = 40.0
"""Hours that somebody works in a week; common practice."""


@dataclass(frozen=True, slots=True)
class Prices:
    """What was typed, in one currency; None for what was not.

    Attributes:
        price: of the tap that could be bought.
        weeks: until it would be there.
        rate: of an hour in the shop.
        bar: of a metre of bar.
        cutter: of a ball-nose cutter.
    """

    price: float | None = None
    weeks: float | None = None
    rate: float | None = None
    bar: float | None = None
    cutter: float | None = None


@dataclass(frozen=True, slots=True)
class Cost:
    """What it takes to make the tap.

    Attributes:
        minutes: of each operation.
        prices: that were typed.
        bar: length sawn off with the saw's cut [mm].
        to_buy: diameters of cutters that are not known to be on hand [mm].
    """

    minutes: tuple[Minutes, ...]
    prices: Prices
    bar: float
    to_buy: tuple[float, ...]

    @property
    def hours(self) -> float:
        """Of all operations."""
        return math.fsum(one.together for one in self.minutes) / 60

    @property
    def labour(self) -> float | None:
        """The hours at their rate."""
        return None if self.prices.rate is None else self.hours * self.prices.rate

    @property
    def steel(self) -> float | None:
        """The piece of bar at its price."""
        return None if self.prices.bar is None else self.bar / 1000 * self.prices.bar

    @property
    def cutters(self) -> float | None:
        """The cutters that are not on hand at theirs."""
        return None if self.prices.cutter is None else len(self.to_buy) * self.prices.cutter

    @property
    def outlay(self) -> float:
        """Steel and cutters, as far as their prices are known."""
        return (self.steel or 0.0) + (self.cutters or 0.0)

    @property
    def made(self) -> float | None:
        """All that making costs; None without a rate."""
        return None if self.labour is None else self.labour + self.outlay

    @property
    def more(self) -> float | None:
        """By how much making costs more than buying; negative for less."""
        made, price = self.made, self.prices.price
        return None if made is None or price is None else made - price

    @property
    def even_rate(self) -> float | None:
        """Rate of an hour at which both cost the same; below 0 where the outlay alone is more."""
        price = self.prices.price
        return None if price is None else (price - self.outlay) / self.hours

    @property
    def sooner(self) -> float | None:
        """Working hours by which the tap is made before it could be bought; negative for later."""
        weeks = self.prices.weeks
        return None if weeks is None else weeks * HOURS_A_WEEK - self.hours


def cost_of(design: TapDesign, prices: Prices) -> Cost:
    """The hours of a tap, and what they and the rest cost.

    Args:
        design: every number of the tap.
        prices: that were typed; a rate that was not is that of the shop.

    Raises:
        InputError: a number that is no price, rate or time.

    Source: hours as `minutes_of`; sums.
    """
    for option, value in (
        ("--price", prices.price),
        ("--weeks", prices.weeks),
        ("--rate", prices.rate),
        ("--bar-price", prices.bar),
        ("--cutter-price", prices.cutter),
    ):
        if value is not None and not 0 <= value <= MOST:
            raise InputError(option, value, f"a number from 0 to {MOST:.0f}")
    rate = design.number("shop.rate") if prices.rate is None else prices.rate
    bar = bar_for(design.tap, tools_of(design))
    return Cost(
        minutes=minutes_of(design),
        prices=replace(prices, rate=rate),
        bar=bar.length + bar.kerf,
        to_buy=_to_buy(design),
    )


def _to_buy(design: TapDesign) -> tuple[float, ...]:
    """The ball-nose cutter, unless the shop has listed it among its own."""
    listed, cutter = design.choice("shop.cutters"), design.tap.flutes.cutter_diameter
    given = listed is not None and listed.given
    at_hand = given and among(cutter, design.numbers("shop.cutters"))
    return () if at_hand else (cutter,)


def cost_record(cost: Cost) -> dict[str, Any]:
    """The answer as JSON has it: minutes, hours, mm, and money as it was typed."""
    prices = cost.prices
    return {
        "operations": [
            {
                "step": one.step.value,
                "setting_up_minutes": one.setting_up,
                "working_minutes": one.working,
                "computed": one.computed,
            }
            for one in cost.minutes
        ],
        "hours": cost.hours,
        "bar_mm": cost.bar,
        "cutters_to_buy_mm": list(cost.to_buy),
        "rate": prices.rate,
        "labour": cost.labour,
        "steel": cost.steel,
        "cutters": cost.cutters,
        "made": cost.made,
        "price": prices.price,
        "weeks": prices.weeks,
        "making_costs_more_by": cost.more,
        "even_at_rate": cost.even_rate,
        "made_sooner_by_hours": cost.sooner,
    }
