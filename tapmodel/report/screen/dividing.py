"""The answer about a dividing head as a page of text."""

from collections.abc import Sequence
from fractions import Fraction

from tapmodel.report.screen.chapter import wrapped
from tapmodel.report.screen.columns import columns
from tapmodel.report.words.dividing import crank_text, move_text, off_text
from tapmodel.shop.dividing import exact_moves, indexing, nearest_move
from tapmodel.spec.shop.dividing import Asked


def dividing_page(asked: Asked, plates: Sequence[int], ratio: int) -> str:
    """Turns and holes; where no circle gives them, the nearest, and each division by itself."""
    lines = [_title(asked, ratio)]
    turns = asked.turns(ratio)
    moves = exact_moves(turns, plates)
    if moves:
        return "\n".join([*lines, *_indented(move_text(moves))])
    if asked.divisions is None:
        return "\n".join([*lines, *_nearest(turns, plates, ratio)])
    return "\n".join([*lines, *_each(asked.divisions, plates, ratio)])


def _title(asked: Asked, ratio: int) -> str:
    degrees, rest = divmod(asked.angle, 1)
    minutes = f" {float(rest * 60):.4g}′" if rest else ""
    angle = f"{degrees}°{minutes}"
    of = angle if asked.divisions is None else f"{_divisions(asked.divisions)}, {angle} each"
    return f"Dividing head {ratio}:1, {of}"


def _divisions(count: int) -> str:
    return "1 division" if count == 1 else f"{count} divisions"


def _nearest(turns: Fraction, plates: Sequence[int], ratio: int) -> list[str]:
    found = nearest_move(turns, plates, ratio)
    way = "too far" if found.error > 0 else "too little"
    return _indented(
        f"Not possible exactly with these circles. Nearest: {crank_text(found.crank)}, "
        f"{off_text(float(found.error))} {way}."
    )


def _each(count: int, plates: Sequence[int], ratio: int) -> list[str]:
    found = indexing(count, plates, ratio)
    told = (
        "Not possible exactly with these circles. Nearest is the circle of "
        f"{found.stations[0].crank.circle}: no division lies further than "
        f"{off_text(float(found.worst))} from its place. Take each by the table, from the first, "
        "so that errors do not add up."
    )
    head = ("division", "crank from the first", "off by")
    lines = [
        (str(number), crank_text(station.crank), f"{float(station.error * 60):+.2f}′")
        for number, station in enumerate(found.stations, start=1)
    ]
    return [*_indented(told), "", *(f"  {line}" for line in columns([head, *lines]))]


def _indented(text: str) -> list[str]:
    return [f"  {line}" for line in wrapped(text)]
