"""Index positions of the flutes."""

from fractions import Fraction

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Chapter, Quantity, Table, Words

WORM_RATIO = 40
"""Turns of the crank for one turn of the spindle; common practice for dividing heads."""


def chapter(design: TapDesign) -> Chapter:
    """Angle of each flute from the first, and turns of the crank of a 40:1 head."""
    count = design.tap.flutes.count
    lines = tuple(_line(flute, count) for flute in range(count))
    head = ("flute", "angle", "minutes", f"crank turns, {WORM_RATIO}:1")
    return Chapter("dividing", "Index the flutes", (Table(head, lines),))


def _line(flute: int, count: int) -> tuple[Quantity, ...]:
    share = Fraction(flute, count)
    degrees, rest = divmod(share * 360, 1)
    return (
        Words(str(flute + 1)),
        Angle(float(share * 360), 4),
        Words(f"{degrees}° {float(rest * 60):.1f}′"),
        Words(_mixed(share * WORM_RATIO)),
    )


def _mixed(turns: Fraction) -> str:
    whole, rest = divmod(turns, 1)
    return f"{whole} + {rest}" if rest else str(whole)
