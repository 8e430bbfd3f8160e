"""The one wheel to buy where those at hand cut no lead that is close enough."""

import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations_with_replacement

from tapmodel.shop.gears.asked import GearsAsked
from tapmodel.shop.gears.meshing import meshing
from tapmodel.shop.gears.trains import GearTrain, gear_trains
from tapmodel.sources import Source
from tapmodel.words import Certainty

SOURCE = Source("tapmodel", "rule of this program", Certainty.DERIVED)

LEAST, MOST = 20, 127
"""Teeth of the wheels that are sold for lathes everywhere."""

OF_ZONE = 0.25
"""Share of the zone of the tap's pitch diameter that an error of the lead may take. `SOURCE`."""

OF_LEAD = Fraction(200, 1_000_000)
"""Error of a lead of which no tap is known: what leadscrews themselves are wrong by, some 0.05 mm
in 250 mm (from memory)."""


@dataclass(frozen=True, slots=True)
class AnotherWheel:
    """What one wheel more would do.

    Attributes:
        train: the best with the smallest wheel that is close enough; None where none is.
        exact: the same with the smallest wheel that makes no error.
        nearest: the best with whichever wheel makes the least error; None where none helps.
    """

    train: tuple[int, GearTrain] | None
    exact: tuple[int, GearTrain] | None
    nearest: tuple[int, GearTrain] | None


def allowed(asked: GearsAsked) -> float:
    """Largest error of the lead that is close enough, as a share of it.

    Source: `OF_ZONE` where the tap is known, else `OF_LEAD`.
    """
    if asked.tap is None:
        return float(OF_LEAD)
    return OF_ZONE * asked.tap.room.error_of_zone


def another_wheel(asked: GearsAsked) -> AnotherWheel | None:
    """The smallest wheel that makes the lead close enough; None where no wheel is needed.

    One of a size that is there counts as well: then two are.

    Args:
        asked: lead, leadscrew and wheels; of the tap what an error takes of its zone.

    Source: derived here. Whatever stands in the other places of a train asks for one size of wheel;
    the whole numbers beside that are tried, so every train with one wheel more is looked at.
    """
    most, ratio = allowed(asked), asked.lead / asked.leadscrew
    best = gear_trains(asked.lead, asked.leadscrew, asked.wheels, 1)[0]
    if abs(best.error) <= most:
        return None
    found: dict[int, tuple[Fraction, int, tuple[int, ...], tuple[int, ...]]] = {}
    limit = abs(best.error)
    for teeth, drivers, driven in _with_one_more(ratio, Counter(asked.wheels)):
        made = Fraction(math.prod(drivers), math.prod(driven))
        entry = (abs(made / ratio - 1), len(drivers), drivers, driven)
        better = entry[0] < limit and (teeth not in found or entry < found[teeth])
        if better and meshing(drivers, driven).fits:
            found[teeth] = entry
    trains = {
        teeth: GearTrain(drivers, driven, made * asked.leadscrew, made / ratio - 1)
        for teeth, (_, _, drivers, driven) in sorted(found.items())
        for made in [Fraction(math.prod(drivers), math.prod(driven))]
    }
    near = [pair for pair in trains.items() if abs(pair[1].error) <= most]
    exact = [pair for pair in near if not pair[1].error]
    nearest = min(trains.items(), key=lambda pair: abs(pair[1].error), default=None)
    return AnotherWheel(near[0] if near else None, exact[0] if exact else None, nearest)


def _with_one_more(
    ratio: Fraction, at_hand: Counter[int]
) -> Iterator[tuple[int, tuple[int, ...], tuple[int, ...]]]:
    """Each wheel to buy in each train that asks for about it, with drivers and driven."""
    above, below = ratio.numerator, ratio.denominator
    singles = [(teeth,) for teeth in sorted(at_hand)]
    pairs = [
        pair
        for pair in combinations_with_replacement(sorted(at_hand), 2)
        if Counter(pair) <= at_hand
    ]
    for alone, beside in [((), single) for single in singles] + [
        (single, pair) for pair in pairs for single in singles if _there(single, pair, at_hand)
    ]:
        # the new wheel drives with `alone` on the one side, or is driven with it
        for over, under, drives in (
            (above * math.prod(beside), below * math.prod(alone), True),
            (below * math.prod(beside), above * math.prod(alone), False),
        ):
            for teeth in {over // under, -(-over // under)}:
                if LEAST <= teeth <= MOST:
                    side = tuple(sorted((*alone, teeth)))
                    yield (teeth, side, beside) if drives else (teeth, beside, side)


def _there(single: tuple[int, ...], pair: tuple[int, ...], at_hand: Counter[int]) -> bool:
    return Counter((*single, *pair)) <= at_hand
