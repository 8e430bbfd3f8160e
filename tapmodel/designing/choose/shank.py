"""Choosing the listed blank of a family, and a shank that passes the hole where it must."""

from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.ledger import Ledger, Rule, by_rule
from tapmodel.designing.choose.steps import down
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.sources import Source
from tapmodel.standards.blanks import BlankRow, blank_for, shanks, square_for
from tapmodel.standards.inch_blanks import (
    SQUARE,
    inch_blank_for,
    inch_shanks,
    inch_square_for,
)
from tapmodel.words import Certainty, Family, ToolSizes

NUTS = frozenset({Family.TRAPEZOIDAL, Family.ACME})
"""Families of threads of motion: their taps run right through a nut longer than themselves."""

AIR, AIR_SHARE = 0.2, 0.02
"""A shank that must pass is so much thinner than the least hole [mm], or by so much of it."""

CORE_SHARE = 1.2
"""Least shank by rule, in cores: four ball-nose flutes leave a section that is as strong in torsion
as a round of 1.11 cores (root 8 mm, core 3.473 mm: 0.0900 MPa per N mm), and a square is to drive
it."""

SQUARE_SOURCE = Source("ISO 237:1975", "", Certainty.MEMORY)


def listed_blank(hole: TappedHole) -> BlankRow:
    """The blank that is listed for the hole's thread, in the sizes that the shop buys.

    Inch sizes as far as those of the Unified list go.

    Source: as `inch_blank_for` and `blank_for`.
    """
    row = inch_blank_for(hole.diameter) if hole.tools is ToolSizes.INCH else None
    return row or blank_for(hole.diameter)


def in_inch_sizes(hole: TappedHole) -> bool:
    """Whether the blank of a hole's thread is one in inch sizes.

    Source: as `inch_blank_for`.
    """
    return hole.tools is ToolSizes.INCH and inch_blank_for(hole.diameter) is not None


def choose_shank(row: BlankRow, hole: TappedHole, core: float, ledger: Ledger) -> float:
    """Settle the shank [mm]; `core` is the web of the flutes.

    Source: as the row; where the shank must pass, rule of this program.
    """
    return ledger.number("blank.shank_diameter", *_ruled(row, hole, core, ledger))


def _ruled(row: BlankRow, hole: TappedHole, core: float, ledger: Ledger) -> tuple[float, Rule]:
    least_hole = hole.found.limits.minor_min
    air = min(AIR, AIR_SHARE * least_hole)
    widest, slimmest = least_hole - air, CORE_SHARE * core
    passes = hole.thread.family in NUTS or bool(ledger.peek("blank.shank_must_pass"))
    if passes and row.shank > widest:
        preferred = inch_shanks() if in_inch_sizes(hole) else shanks()
        fitting = [shank for shank in (*preferred, down(widest, 0.1)) if shank <= widest]
        strong = [shank for shank in fitting[:-1] if shank >= slimmest] or fitting[-1:]
        if max(strong) >= slimmest:
            values = {"least": least_hole, "air": air, "share": CORE_SHARE}
            return max(strong), by_rule("shank-passes", OWN_RULE, **values)
    if in_inch_sizes(hole) and hole.thread.family is not Family.UNIFIED:
        return row.shank, by_rule("blank-of-unified", row.source, diameter=row.diameter)
    return row.shank, by_rule("blank-listed", row.source, diameter=row.diameter)


def square_of(shank: float, hole: TappedHole) -> tuple[float, float, Rule]:
    """Across flats and length [mm] of the drive square of a shank, and the rule.

    Source: as `square_for` and `inch_square_for`.
    """
    if in_inch_sizes(hole):
        rule = by_rule("square-of-inch-shank", SQUARE, shank=shank)
        return *inch_square_for(shank), rule
    return *square_for(shank), by_rule("square-of-shank", SQUARE_SOURCE, shank=shank)
