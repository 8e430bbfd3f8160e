"""Indexing with a dividing head: turns of the crank and holes on a circle, exact in fractions."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from tapmodel.sources import Source
from tapmodel.words import Certainty

RATIO = 40
"""Turns of the crank for one turn of the spindle of the usual head."""

PLATES = (15, 16, 17, 18, 19, 20, 21, 23, 27, 29, 31, 33, 37, 39, 41, 43, 47, 49)
"""Holes of the circles on the usual three plates, as `PLATES_SOURCE` has them."""

SOURCE = Source(
    "US Army Ordnance subcourse OD1644",
    "simple indexing: turns = ratio / divisions",
    Certainty.READ,
)
PLATES_SOURCE = Source(
    "workshop practice",
    "three plates of six circles on a head of 40 to 1, as read in a club's article on indexing",
    Certainty.PRACTICE,
)


@dataclass(frozen=True, slots=True)
class Crank:
    """How far the crank goes.

    Attributes:
        turns: whole ones.
        holes: beyond them, counted without the hole that the pin stands in.
        circle: holes of the circle that they are counted on; 0 where none is needed.
    """

    turns: int
    holes: int
    circle: int


@dataclass(frozen=True, slots=True)
class Station:
    """Where one flute is milled.

    Attributes:
        crank: from the first flute.
        error: of the spindle, beyond the flute's true place positive [deg].
    """

    crank: Crank
    error: Fraction


@dataclass(frozen=True, slots=True)
class Indexing:
    """How the flutes are spaced with the circles on hand.

    Attributes:
        moves: the same move from each flute to the next, on every circle that gives it exactly,
            fewest holes first; empty where none does.
        stations: of each flute, on the first of those circles, else on the one that comes nearest.
    """

    moves: tuple[Crank, ...]
    stations: tuple[Station, ...]

    @property
    def exact(self) -> bool:
        """Whether a circle on hand spaces the flutes exactly."""
        return bool(self.moves)

    @property
    def worst(self) -> Fraction:
        """Furthest that a flute lies from its true place [deg]."""
        return max(abs(station.error) for station in self.stations)


def indexing(count: int, plates: Sequence[int] = PLATES, ratio: int = RATIO) -> Indexing:
    """Turns and holes for `count` evenly spaced flutes, or any other divisions.

    Args:
        count: of the flutes.
        plates: holes of each circle on hand, at least one.
        ratio: turns of the crank for one of the spindle.

    Where no circle spaces them exactly each flute is taken by itself to the hole nearest to its
    place, so that errors do not add up, on the circle whose worst flute is nearest.

    Source: `SOURCE`, in exact fractions; the nearest circle derived here.
    """
    move = Fraction(ratio, count)
    moves = exact_moves(move, plates)
    if moves:
        return Indexing(moves, _stations(move, count, moves[0].circle, ratio))
    circle = min(sorted(set(plates)), key=lambda holes: _furthest(move, holes))
    return Indexing((), _stations(move, count, circle, ratio))


def exact_moves(turns: Fraction, plates: Sequence[int] = PLATES) -> tuple[Crank, ...]:
    """Every way to turn the crank exactly so far, fewest holes first; none where no circle does.

    Args:
        turns: of the crank; whole ones need no circle.
        plates: holes of each circle on hand.

    Source: `SOURCE`, in exact fractions.
    """
    if turns.denominator == 1:
        return (Crank(int(turns), 0, 0),)
    return tuple(_crank(turns, n) for n in sorted(set(plates)) if n % turns.denominator == 0)


def nearest_move(turns: Fraction, plates: Sequence[int] = PLATES, ratio: int = RATIO) -> Station:
    """The hole that comes nearest, on the smallest circle that has one as near.

    Args:
        turns: of the crank.
        plates: holes of each circle on hand, at least one.
        ratio: turns of the crank for one of the spindle.

    Source: derived here, in exact fractions.
    """
    found = [_station(turns, circle, ratio) for circle in sorted(set(plates))]
    return min(found, key=lambda station: abs(station.error))


def _furthest(move: Fraction, circle: int) -> Fraction:
    """Furthest that any multiple of a move lies from a hole of the circle, in turns.

    As the multiples go round, their rests beyond a hole take every multiple of one part.
    """
    parts = (move * circle).denominator
    return Fraction(parts // 2, parts * circle)


def _stations(move: Fraction, count: int, circle: int, ratio: int) -> tuple[Station, ...]:
    return tuple(_station(flute * move, circle, ratio) for flute in range(count))


def _station(wanted: Fraction, circle: int, ratio: int) -> Station:
    crank = _crank(wanted, circle)
    reached = crank.turns + (Fraction(crank.holes, circle) if circle else 0)
    return Station(crank, (reached - wanted) * 360 / ratio)


def _crank(turns: Fraction, circle: int) -> Crank:
    """The hole of a circle nearest to so many turns; whole turns without a circle."""
    if circle == 0:
        return Crank(int(turns), 0, 0)
    whole, holes = divmod(round(turns * circle), circle)
    return Crank(whole, holes, circle)
