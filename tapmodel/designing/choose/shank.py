"""Choosing the listed blank of a family, and a shank that passes the hole where it must."""

from tapmodel.designing.choose.hole import TappedHole
from tapmodel.designing.choose.ledger import Ledger, Rule, by_rule
from tapmodel.designing.choose.steps import down, up
from tapmodel.designing.limits.turns import large_and_fine
from tapmodel.designing.provenance import OWN_RULE
from tapmodel.sources import Source
from tapmodel.standards.blanks import BEYOND, BlankRow, blank_for, shanks, square_for
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

SLENDER = 1 / 3
"""Shank of a large tap of fine pitch that no list has, in diameters, at least: it takes little
torque, but is held by that while thread and flutes are cut."""

THICK_STEP = 5.0
"""Shanks thicker than those that ISO 237 lists are whole steps of so much [mm]."""

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


def slender(row: BlankRow, hole: TappedHole) -> bool:
    """Whether a large tap of fine pitch is in no list, so that what it has to do sets its blank.

    Blanks that are printed for a diameter stand, whatever the pitch.
    """
    return row.source is BEYOND and large_and_fine(hole.diameter, hole.pitch)


def slender_shanks(row: BlankRow) -> tuple[float, ...]:
    """Shanks of such a tap from the thinnest on, below that of a coarse thread [mm].

    Source: ISO 237 (from memory), thicker ones a rule of this program.
    """
    least, most = SLENDER * row.diameter, row.shank
    listed = [shank for shank in shanks() if least <= shank < most]
    first = up(max(least, shanks()[-1] + THICK_STEP), THICK_STEP)
    steps = int(max(0.0, most - first) // THICK_STEP) + 1
    thick = [first + step * THICK_STEP for step in range(steps)]
    return (*listed, *(shank for shank in thick if shank < most), most)


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
    if slender(row, hole):
        rule = by_rule("shank-slender", OWN_RULE, diameter=row.diameter)
        return slender_shanks(row)[0], rule
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
