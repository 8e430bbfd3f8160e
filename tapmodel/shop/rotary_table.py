"""Indexing with a rotary table: whole turns of its handle, and degrees and minutes of the next."""

from dataclasses import dataclass
from fractions import Fraction

from tapmodel.shop.dividing import Indexing
from tapmodel.spec.shop.rotary_tables import RotaryTable

BY_EYE = Fraction(1, 12)
"""How far a table is set off between the marks of its rim, where the handle has no dial [deg]; from
memory."""


@dataclass(frozen=True, slots=True)
class Handle:
    """How far the handle goes.

    Attributes:
        turns: whole ones.
        beyond: how far the table goes on, to the nearest division of the dial [deg].
        error: of the table, beyond its true place positive; 0 where there is no dial [deg].
    """

    turns: int
    beyond: Fraction
    error: Fraction


@dataclass(frozen=True, slots=True)
class TableIndexing:
    """How a circle is divided on a rotary table.

    Attributes:
        table: on which.
        move: from each place to the next, where the same is made each time.
        stations: of each place, from the first, to the nearest division by itself.
    """

    table: RotaryTable
    move: Handle
    stations: tuple[Handle, ...]

    @property
    def exact(self) -> bool:
        """Whether every place lies on a mark: of the dial, or without one of a whole degree."""
        if self.table.division:
            return not any(station.error for station in self.stations)
        return self.move.beyond.denominator == 1

    @property
    def worst(self) -> Fraction:
        """Furthest that a place lies from where it should be [deg]."""
        if self.table.division or self.exact:
            return max(abs(station.error) for station in self.stations)
        return BY_EYE


def handle(angle: Fraction, table: RotaryTable) -> Handle:
    """Turns of the handle, and what the table goes beyond them, for an angle [deg].

    Source: definition, in exact fractions.
    """
    turn = Fraction(360, table.ratio)
    reached = angle
    if table.division:
        reached = round(angle / table.division) * table.division
    turns = reached // turn
    return Handle(int(turns), reached - turns * turn, reached - angle)


def table_indexing(count: int, table: RotaryTable) -> TableIndexing:
    """Every place of `count` even divisions; each by itself, so that errors do not add up.

    Source: as `handle`.
    """
    step = Fraction(360, count)
    stations = tuple(handle(number * step, table) for number in range(count))
    return TableIndexing(table, handle(step, table), stations)


def table_is_better(head: Indexing, table: TableIndexing) -> bool:
    """Whether of a head with plates and a rotary table the table is taken.

    What is exact goes first, the head where both are: a pin in a hole is not misread.
    """
    return not head.exact and (table.exact or table.worst < head.worst)
