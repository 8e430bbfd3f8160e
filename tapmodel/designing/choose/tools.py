"""Whether what a shop buys is of millimetres or of inches: drills, cutters, bars, wrenches."""

from tapmodel.designing.choose.ledger import Ledger, by_rule
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.words import Family, ToolSizes

INCH_TOOLED = frozenset({Family.UNIFIED, Family.WHITWORTH, Family.ACME})
"""Whoever cuts threads of these has tools and bars of inch sizes; BA and the pipe threads are cut
everywhere with those of millimetres."""


def tool_sizes(family: Family, ledger: Ledger) -> ToolSizes:
    """The sizes that the rules count on for a thread of that family.

    Source: rule of this program.
    """
    inch = family in INCH_TOOLED
    rule = by_rule("tools-of-size", OWN_RULE, family=family.value, inch=inch)
    ruled = ToolSizes.INCH if inch else ToolSizes.METRIC
    return ToolSizes(ledger.word("shop.tools", ruled, rule))


def tools_of(design: TapDesign) -> ToolSizes:
    """Those that a design was settled with."""
    choice = design.choice("shop.tools")
    return ToolSizes.METRIC if choice is None else ToolSizes(str(choice.value))
