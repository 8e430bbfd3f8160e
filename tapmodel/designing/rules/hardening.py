"""Rules on the steel of the tap: whether it is in stock, and whether the furnace hardens it."""

from tapmodel.designing.choose.steel import NO_LIMIT, reachable
from tapmodel.designing.codes import Code
from tapmodel.designing.judging import NOTE, WARNING, Findings, at_least, exactly, finding, under
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.context import Context
from tapmodel.findings import Held, Limit
from tapmodel.standards.materials.steels import steel_named
from tapmodel.values import Values


def judge(design: TapDesign, _context: Context) -> Findings:
    """Every finding on the steel.

    Source: each names its own.
    """
    furnace = design.number("shop.furnace")
    stock = design.words("shop.steels")
    can = reachable(stock, NO_LIMIT if furnace is None else furnace)
    yield from _in_stock(design, stock, can)
    if furnace is not None:
        yield from _hardened(design, furnace, can)


def _in_stock(design: TapDesign, stock: tuple[str, ...], can: tuple[str, ...]) -> Findings:
    steel = design.work.steel
    if not stock or steel.name in {steel_named(word).name for word in stock}:
        return
    levers = [exactly("tap.material", name) for name in (can or stock)[:1]]
    values, limit = Values(stock=stock), Limit(held=Held.IN_STOCK)
    yield finding(
        Code.STEEL_AT_HAND, NOTE, "tap.material", steel.told, limit, values=values, levers=levers
    )


def _hardened(design: TapDesign, furnace: float, can: tuple[str, ...]) -> Findings:
    """What the furnace does not reach, with the nearest steel that it hardens."""
    steel, bought = design.work.steel, reachable((), furnace)
    if not under(furnace, steel.furnace):
        return
    values = Values(
        steel=steel.told,
        case=steel.case_depth,
        nearest=can[0] if can else "",
        bought=bought[0] if bought else "",
    )
    levers = [exactly("tap.material", name) for name in can[:1]]
    limit = at_least(steel.furnace, "°C")
    yield finding(
        Code.FURNACE_COLD,
        WARNING,
        "shop.furnace",
        furnace,
        limit,
        steel.harden_source,
        values=values,
        levers=levers,
    )
