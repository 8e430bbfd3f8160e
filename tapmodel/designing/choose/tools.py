"""Whether what a shop buys is of millimetres or of inches: drills, cutters, bars, wrenches."""

from tapmodel.designing.choose.ledger import Ledger, by_rule
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.designing.record import TapDesign
from tapmodel.words import Family, ToolSizes

INCH_TOOLED = frozenset({Family.UNIFIED, Family.WHITWORTH, Family.ACME})
"""Whoever cuts threads of these has tools and bars of inch sizes; BA and the pipe threads are cut
everywhere with those of millimetres."""


def ruled_tools(family: Family) -> ToolSizes:
    """The sizes that whoever cuts threads of a family has.

    Source: rule of this program, `INCH_TOOLED`.
    """
    return ToolSizes.INCH if family in INCH_TOOLED else ToolSizes.METRIC


def tool_sizes(family: Family, ledger: Ledger) -> ToolSizes:
    """The sizes that the rules count on for a thread of that family.

    Source: rule of this program.
    """
    ruled = ruled_tools(family)
    inch = ruled is ToolSizes.INCH
    rule = by_rule("tools-of-size", OWN_RULE, family=family.value, inch=inch)
    return ToolSizes(ledger.word("shop.tools", ruled, rule))


def tools_of(design: TapDesign) -> ToolSizes:
    """Those that a design was settled with."""
    choice = design.choice("shop.tools")
    return ToolSizes.METRIC if choice is None else ToolSizes(str(choice.value))
