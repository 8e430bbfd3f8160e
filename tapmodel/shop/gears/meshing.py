"""Which wheel of a compound train stands where, so that none fouls the shaft of another.

The first driver A, on the spindle's stud, turns the first driven B; the second driver C is keyed
beside B and turns D on the leadscrew. C passes the shaft of A, and B that of D.
"""

from dataclasses import dataclass
from itertools import permutations

from tapmodel.sources import Source
from tapmodel.words import Certainty

SOURCE = Source(
    "manuals of screw-cutting lathes",
    "A + B at least C + 15 and C + D at least B + 15, in teeth",
    Certainty.PRACTICE,
)

CLEAR = 15
"""Teeth that a pair of wheels has to have together beyond the wheel that passes a shaft of theirs;
half the thickness of a stud with its bush, in teeth of the usual size. `SOURCE`."""


@dataclass(frozen=True, slots=True)
class Meshing:
    """The wheels of a train in their places.

    Attributes:
        pairs: driver and driven of each pair that meshes, from the spindle on.
        fits: whether every wheel clears the shaft that it passes.
    """

    pairs: tuple[tuple[int, int], ...]
    fits: bool

    @property
    def drivers(self) -> tuple[int, ...]:
        """Teeth of the wheels that drive, from the spindle on."""
        return tuple(driver for driver, _ in self.pairs)

    @property
    def driven(self) -> tuple[int, ...]:
        """Teeth of the wheels driven, that on the leadscrew last."""
        return tuple(driven for _, driven in self.pairs)


def meshing(drivers: tuple[int, ...], driven: tuple[int, ...]) -> Meshing:
    """The order of the wheels with the most room at the tighter shaft.

    Two wheels always have room, an idler between them if need be. Of four with 15 teeth and more
    some order always fits: the larger driver on the smaller driven, then the smaller driver on the
    larger driven.

    Args:
        drivers: teeth of the wheels that drive.
        driven: teeth of the wheels driven, as many.

    Source: `SOURCE`; every order is tried.
    """
    orders = [
        tuple(zip(first, second, strict=True))
        for first in permutations(drivers)
        for second in permutations(driven)
    ]
    best = max(orders, key=_room)
    return Meshing(best, _room(best) >= CLEAR)


def _room(pairs: tuple[tuple[int, int], ...]) -> int:
    """Least number of teeth by which a pair exceeds the wheel that passes a shaft of its."""
    if len(pairs) == 1:
        return sum(pairs[0])
    (first, second), (third, fourth) = pairs
    return min(first + second - third, third + fourth - second)
