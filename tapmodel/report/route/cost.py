"""Hours of making the tap, and their cost against a price that was typed in."""

from collections.abc import Iterator
from functools import partial

from tapmodel.report.blocks import Block, Chapter, Paragraphs, Quantity, Row, Rows, Table, Words
from tapmodel.report.route.operation import Operation
from tapmodel.report.units import in_words
from tapmodel.shop.cost.cost import HOURS_A_WEEK, Cost
from tapmodel.words import Units

RULES = (
    "Minutes of setting up, and of the work of the hand (marked r), are rules of this program for "
    "one tap made by one who has made some. Cutting is computed from the speeds, feeds, lengths "
    "and passes of the route; what lies in the furnace by itself counts for nothing."
)

_HEAD = ("operation", "setting up, min", "work, min", "together, h")


def chapter(cost: Cost, operations: tuple[Operation, ...]) -> Chapter:
    """The hours, and the arithmetic of what was typed."""
    titles = {one.step: one.title for one in operations}
    lines = [
        _line(
            titles[one.step],
            f"{one.setting_up:.0f}",
            f"{one.working:.1f}{'' if one.computed else ' r'}",
            one.together / 60,
        )
        for one in cost.minutes
    ]
    set_up = sum(one.setting_up for one in cost.minutes)
    working = sum(one.working for one in cost.minutes)
    lines.append(_line("all", f"{set_up:.0f}", f"{working:.1f}", cost.hours))
    blocks: list[Block] = [Table(_HEAD, tuple(lines)), Paragraphs((RULES,))]
    money = tuple(_money(cost))
    blocks += [Rows(money, "In the currency that was typed")] if money else []
    sentences = tuple(_verdict(cost))
    blocks += [Paragraphs(sentences)] if sentences else []
    title = "Hours" if cost.prices.price is None else "Make or buy"
    return Chapter("hours", title, tuple(blocks))


def _line(title: str, set_up: str, work: str, hours: float) -> tuple[Quantity, ...]:
    return Words(title), Words(set_up), Words(work), Words(f"{hours:.2f}")


def _money(cost: Cost) -> Iterator[Row]:
    prices = cost.prices
    if cost.labour is not None:
        yield _row(f"{cost.hours:.2f} hours at {_sum(prices.rate)}", cost.labour)
    if cost.steel is not None:
        yield Row(partial(_bar, cost), Words(_sum(cost.steel)))
    if cost.cutters is not None:
        yield Row(partial(_cutters, cost), Words(_sum(cost.cutters)))
    if cost.made is not None:
        yield _row("made, together", cost.made)
    if prices.price is not None:
        yield _row("bought, as typed", prices.price)


def _row(label: str, value: float) -> Row:
    return Row(label, Words(_sum(value)))


def _bar(cost: Cost, units: Units) -> str:
    length = in_words(cost.bar, ".0f", units)
    return f"{length} of bar at {_sum(cost.prices.bar)} a metre"


def _cutters(cost: Cost, units: Units) -> str:
    if not cost.to_buy:
        return "no cutter, as it is on hand"
    sizes = ", ".join(in_words(size, ".2f", units) for size in cost.to_buy)
    return f"a cutter not known to be on hand, {sizes}"


def _sum(value: float | None) -> str:
    return f"{value or 0.0:.2f}"


def _verdict(cost: Cost) -> Iterator[str]:
    """What the numbers come to, and nothing beyond."""
    more, even, sooner, weeks = cost.more, cost.even_rate, cost.sooner, cost.prices.weeks
    if more is not None:
        side = "more" if more >= 0 else "less"
        yield f"Making costs {abs(more):.2f} {side} than buying."
    if even is not None:
        at_all = "no rate: steel and cutters alone cost more than the tap" if even < 0 else ""
        yield f"Both cost the same at {at_all or f'a rate of {even:.2f} an hour'}."
    unknown = [name for name, known in _unpriced(cost) if not known]
    if unknown and cost.prices.price is not None:
        yield f"Without a price stand here: {', '.join(unknown)}."
    if sooner is not None and weeks is not None:
        side = "less" if sooner >= 0 else "more"
        yield (
            f"{cost.hours:.2f} hours of work are {abs(sooner):.2f} {side} than the "
            f"{weeks * HOURS_A_WEEK:.0f} of {weeks:g} weeks of {HOURS_A_WEEK:g} hours."
        )


def _unpriced(cost: Cost) -> Iterator[tuple[str, bool]]:
    yield "the hours (--rate)", cost.labour is not None
    yield "the steel (--bar-price)", cost.steel is not None
    yield "the cutter (--cutter-price)", cost.cutters is not None or not cost.to_buy
