"""The answer about a dividing head as plain numbers, for JSON. Angles in degrees."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from tapmodel.shop.dividing import Crank, exact_moves, nearest_move
from tapmodel.shop.rotary_table import Handle, handle, table_indexing
from tapmodel.spec.shop.dividing import Asked
from tapmodel.spec.shop.rotary_tables import RotaryTable


@dataclass(frozen=True, slots=True)
class Means:
    """What there is to divide with.

    Attributes:
        plates: holes of each circle of the head.
        ratio: of the head.
        table: None where there is no rotary table.
        head: whether a head is there, and not only taken to be.
    """

    plates: Sequence[int]
    ratio: int
    table: RotaryTable | None
    head: bool


def record_on(means: Means, asked: Asked) -> dict[str, Any]:
    """The record of a dividing head, and of a rotary table where there is one, under `table`."""
    record = dividing_record(asked, means.plates, means.ratio)
    if means.table is None:
        return record
    return record | {"table": _on_table(asked, means.table)}


def dividing_record(asked: Asked, plates: Sequence[int], ratio: int) -> dict[str, Any]:
    """Turns and holes of one move on the smallest circle that gives it exactly, and on all such.

    Whole turns end in the hole that the pin stood in, on every circle. Where no circle gives the
    move, `nearest` is the one that comes nearest; its error is beyond the true place positive.
    """
    turns = asked.turns(ratio)
    record: dict[str, Any] = {"divisions": asked.divisions, "angle_deg": float(asked.angle)}
    choices = [_move(move) for move in _on_circles(exact_moves(turns, plates), plates)]
    if choices:
        return record | {"possible": True, **choices[0], "choices": choices}
    nearest = nearest_move(turns, plates, ratio)
    error = {"error_deg": float(nearest.error)}
    return record | {"possible": False, "nearest": _move(nearest.crank) | error}


def _on_table(asked: Asked, table: RotaryTable) -> dict[str, Any]:
    """Turns of the handle and degrees beyond them; each division by itself under `each`."""
    record: dict[str, Any] = {"ratio": table.ratio, "division_deg": float(table.division)}
    if asked.divisions is None:
        return record | _handle(handle(asked.angle, table))
    found = table_indexing(asked.divisions, table)
    each = [_handle(station) for station in found.stations]
    return record | {"exact": found.exact} | _handle(found.move) | {"each": each}


def _handle(found: Handle) -> dict[str, Any]:
    return {
        "turns": found.turns,
        "degrees": float(found.beyond),
        "error_deg": float(found.error),
    }


def _on_circles(moves: Sequence[Crank], plates: Sequence[int]) -> list[Crank]:
    return [
        Crank(move.turns, move.holes, circle)
        for move in moves
        for circle in ([move.circle] if move.circle else sorted(set(plates)))
    ]


def _move(crank: Crank) -> dict[str, int]:
    return {"turns": crank.turns, "holes": crank.holes, "circle": crank.circle}
