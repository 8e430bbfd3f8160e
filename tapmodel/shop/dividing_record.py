"""The answer about a dividing head as plain numbers, for JSON. Angles in degrees."""

from collections.abc import Sequence
from typing import Any

from tapmodel.shop.dividing import Crank, exact_moves, nearest_move
from tapmodel.spec.shop.dividing import Asked


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


def _on_circles(moves: Sequence[Crank], plates: Sequence[int]) -> list[Crank]:
    return [
        Crank(move.turns, move.holes, circle)
        for move in moves
        for circle in ([move.circle] if move.circle else sorted(set(plates)))
    ]


def _move(crank: Crank) -> dict[str, int]:
    return {"turns": crank.turns, "holes": crank.holes, "circle": crank.circle}
