"""What the dial of a slide reads after a way: whole turns, and divisions of the next."""

from dataclasses import dataclass
from fractions import Fraction

from tapmodel.spec.shop.dials import Dial


@dataclass(frozen=True, slots=True)
class DialReading:
    """A dial, from its zero.

    Attributes:
        turns: whole ones.
        divisions: beyond them, to the nearest.
        error: by how much the slide goes further than asked for at that reading [mm].
    """

    turns: int
    divisions: int
    error: float


def reading(dial: Dial, way: float) -> DialReading:
    """Turns and divisions nearest to a way of the slide, 0 or more [mm].

    Source: definition, in exact fractions; a dial that counts diameter reads twice the way.
    """
    counts = 2 if dial.on_diameter else 1
    wanted = Fraction(way) * counts
    turns = wanted // dial.turn
    divisions = round((wanted - turns * dial.turn) / dial.division)
    if divisions * dial.division >= dial.turn:
        turns, divisions = turns + 1, 0
    error = (turns * dial.turn + divisions * dial.division - wanted) / counts
    return DialReading(int(turns), divisions, float(error))
