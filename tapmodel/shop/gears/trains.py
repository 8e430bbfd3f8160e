"""Change gears of a lathe: every train out of the wheels at hand, best first, exact."""

import math
from bisect import bisect_left, insort
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations_with_replacement

from tapmodel.shop.gears.meshing import Meshing, meshing
from tapmodel.sources import Source
from tapmodel.words import Certainty

SOURCE = Source(
    "F. D. Jones, Turning and Boring",
    "lead cut = lead of the screw x drivers / driven",
    Certainty.READ,
)
LEAD_SOURCE = Source(
    "lecture notes on the measurement of screw threads",
    "an error of pitch counts cot(half angle) times in effective diameter, 1.92 at 55 degrees",
    Certainty.READ,
)

INCH_PRIME = 127
"""Teeth that make inches of millimetres exactly: 25.4 is 127/5, and 127 is a prime."""

MOST = 10
"""Trains that are told where nobody asks for another number."""


@dataclass(frozen=True, slots=True)
class GearTrain:
    """A simple train of two wheels, or a compound one of four.

    Attributes:
        drivers: teeth of the wheels that drive, that on the spindle's stud among them, small first.
        driven: teeth of the wheels driven, that on the leadscrew among them, small first.
        made: lead that they cut [mm].
        error: of that, as a share of the lead wanted; too long positive.
    """

    drivers: tuple[int, ...]
    driven: tuple[int, ...]
    made: Fraction
    error: Fraction

    @property
    def meshing(self) -> Meshing:
        """Its wheels in their places."""
        return meshing(self.drivers, self.driven)

    @property
    def ppm(self) -> float:
        """The error in millionths."""
        return float(self.error * 1_000_000)

    def along(self, length: float) -> float:
        """What the error adds up to over a length of thread [mm].

        Args:
            length: as it is cut [mm].
        """
        return length * float(self.error)


def gear_trains(
    wanted: Fraction, leadscrew: Fraction, wheels: Sequence[int], most: int = MOST
) -> tuple[GearTrain, ...]:
    """The best trains: least error first, then what fits, fewest wheels and least teeth in all.

    Two wheels of one size among drivers or driven, or one in each, have to be there twice. An idler
    changes no ratio and is none of the wheels told.

    Args:
        wanted: lead of the thread [mm].
        leadscrew: its lead [mm].
        wheels: teeth of each wheel at hand.
        most: trains to return.

    Source: `SOURCE`, in exact fractions. The products of all pairs are sorted; for each pair of
    drivers the driven ones are looked for from the product that fits best outwards.
    """
    ratio, at_hand = wanted / leadscrew, Counter(wheels)
    best = _Best(ratio, most)
    for wheels_a_side in (1, 2):
        _search(_sides(at_hand, wheels_a_side), ratio, at_hand, best)
    return tuple(
        GearTrain(drivers, driven, leadscrew * made, made / ratio - 1)
        for _, _, _, _, drivers, driven in best.ranked
        for made in [Fraction(math.prod(drivers), math.prod(driven))]
    )


def lacks_inch_wheel(wanted: Fraction, leadscrew: Fraction, wheels: Sequence[int]) -> bool:
    """Whether a lead is exact only with a wheel of 127 teeth, or a multiple, and none is there.

    Args:
        wanted: lead of the thread [mm].
        leadscrew: its lead [mm].
        wheels: teeth of each wheel at hand.
    """
    ratio = wanted / leadscrew
    if all(term % INCH_PRIME for term in (ratio.numerator, ratio.denominator)):
        return False
    return all(teeth % INCH_PRIME for teeth in wheels)


def diameter_taken(along: float, flank_angle: float) -> float:
    """What an error of the lead is worth in pitch diameter [mm].

    A thread whose turns stand `along` too far apart enters as one so much thicker or thinner.

    Args:
        along: error over the length that is engaged [mm].
        flank_angle: between flank and the plane square to the axis [deg].

    Source: `LEAD_SOURCE`.
    """
    return abs(along) / math.tan(math.radians(flank_angle))


_Side = tuple[int, tuple[int, ...]]
"""Product of the teeth of the drivers, or of the driven, and these."""

_Ranked = tuple[Fraction, bool, int, int, tuple[int, ...], tuple[int, ...]]
"""Error, whether it fouls a shaft, wheels, teeth in all, and the train itself, so that no two rank
alike."""


class _Best:
    """The best trains so far, in their order."""

    def __init__(self, ratio: Fraction, most: int) -> None:
        self.ranked: list[_Ranked] = []
        self._ratio, self._most = ratio, most
        self._worst = (1, 0)

    def beats(self, off: int, base: int) -> bool:
        """Whether an error of off/base may still have a place, other things being equal."""
        above, below = self._worst
        return off * below <= above * base

    def offer(self, error: Fraction, drivers: tuple[int, ...], driven: tuple[int, ...]) -> None:
        """Take a train in if it ranks before the last of them."""
        count, teeth = len(drivers) + len(driven), sum(drivers) + sum(driven)
        entry = (error, not meshing(drivers, driven).fits, count, teeth, drivers, driven)
        if len(self.ranked) == self._most:
            if entry >= self.ranked[-1]:
                return
            self.ranked.pop()
        insort(self.ranked, entry)
        if len(self.ranked) == self._most:
            worst = self.ranked[-1][0]
            self._worst = (worst.numerator, worst.denominator)


def _sides(at_hand: Counter[int], wheels: int) -> list[_Side]:
    """What may drive or be driven with so many wheels, by the product of their teeth."""
    found = combinations_with_replacement(sorted(at_hand), wheels)
    return sorted((math.prod(side), side) for side in found if Counter(side) <= at_hand)


def _search(sides: Sequence[_Side], ratio: Fraction, at_hand: Counter[int], best: _Best) -> None:
    """Offer every train that may have a place among the best."""
    products = [product for product, _ in sides]
    above, below = ratio.numerator, ratio.denominator
    for driving, drivers in sides:
        target = driving * below
        # The first product of the driven ones that is not less than drivers / ratio.
        middle = bisect_left(products, -(-target // above))
        for place in (range(middle, len(sides)), range(middle - 1, -1, -1)):
            for driven, off, base in _outwards(place, sides, target, above):
                if not best.beats(off, base):
                    break
                if _there(drivers, driven, at_hand):
                    best.offer(Fraction(off, base), drivers, driven)


def _outwards(
    places: range, sides: Sequence[_Side], target: int, above: int
) -> Iterator[tuple[tuple[int, ...], int, int]]:
    """Driven wheels with the error that they make, as two whole numbers, the error growing."""
    for place in places:
        product, driven = sides[place]
        base = product * above
        yield driven, abs(target - base), base


def _there(drivers: tuple[int, ...], driven: tuple[int, ...], at_hand: Counter[int]) -> bool:
    """Whether the wheels at hand are enough for both sides."""
    return all(
        (drivers + driven).count(teeth) <= at_hand[teeth] for teeth in drivers if teeth in driven
    )
