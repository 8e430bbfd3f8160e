"""The steel of the tap: of those in stock, and of those that the furnace can harden."""

from collections.abc import Sequence
from dataclasses import replace

from tapmodel.designing.choose.ledger import Ledger, Rule, by_rule
from tapmodel.designing.provenance import OWN_RULE, PRACTICE
from tapmodel.errors import InputError
from tapmodel.standards.materials.steels import DEFAULT, TapSteel, steel_named, steel_names

PREFERRED = (
    *(DEFAULT, "O2", "silver steel", "W1", "W2", "A2", "D2", "M2"),
    "case-hardened mild steel",
)
"""Steels in the order in which a small shop takes them: those that harden in oil, which warp least
of what an open furnace reaches; in water, which may crack; in air, which want more heat and care; a
case last, for fine teeth become case right through. Rule of this program."""

STEEL_RULE = by_rule("steel-for-a-small-furnace", PRACTICE)

NO_LIMIT = float("inf")


def choose_steel(ledger: Ledger) -> TapSteel:
    """The steel named, else the one ruled, tempered as usual unless temper or hardness is given.

    Raises:
        InputError: no steel has a name given, or no temper.

    Source: rule of this program, `PREFERRED`.
    """
    stock = _stock(ledger.given_words("shop.steels"))
    furnace = ledger.given("shop.furnace")
    ruled, rule = _ruled(stock, furnace)
    name = ledger.word("tap.material", ruled, rule)
    found = steel_named(name, temper=ledger.given("tap.temper"))
    if ledger.has("tap.material") or stock:
        found = replace(found, called=name)
    tempered = by_rule("hardness-after-temper", found.source, temper=found.temper)
    # Between the rows of a table nothing is known to less than a tenth.
    hardness = ledger.number("tap.hardness", round(found.hardness, 1), tempered)
    measured = ledger.has("tap.hardness") and not ledger.has("tap.temper")
    return replace(found, hardness=hardness, temper=0.0 if measured else found.temper)


def reachable(stock: Sequence[str], furnace: float) -> tuple[str, ...]:
    """Steels that a furnace can harden, as the shop calls them, the preferred one first.

    Args:
        stock: names of those in stock; all there are where it is empty.
        furnace: the highest temperature that it reaches [deg C].

    Source: rule of this program, `PREFERRED`; the ranges of hardening each with its own.
    """
    steels = [(steel_named(word), word) for word in stock or steel_names()]
    hot = [(steel, word) for steel, word in steels if steel.furnace <= furnace]
    return tuple(word for _, word in sorted(hot, key=lambda one: PREFERRED.index(one[0].name)))


def _stock(words: tuple[str, ...]) -> tuple[str, ...]:
    """The names, each of which is a steel's.

    Raises:
        InputError: one is not.
    """
    for word in words:
        try:
            steel_named(word)
        except InputError as error:
            raise type(error)("shop.steels", word, error.allowed) from None
    return words


def _ruled(stock: tuple[str, ...], furnace: float | None) -> tuple[str, Rule]:
    """A steel that can be hardened; where none can, the preferred one, and a finding tells."""
    if not stock and furnace is None:
        return DEFAULT, STEEL_RULE
    hottest = NO_LIMIT if furnace is None else furnace
    hardened = reachable(stock, hottest)
    chosen = (hardened or reachable(stock, NO_LIMIT))[0]
    if not stock and chosen == DEFAULT:
        return DEFAULT, STEEL_RULE
    looked_at = furnace if furnace is not None and hardened else 0.0
    if stock:
        return chosen, by_rule("steel-in-stock", OWN_RULE, stock=stock, furnace=looked_at)
    return chosen, by_rule("steel-for-the-furnace", OWN_RULE, furnace=looked_at)
