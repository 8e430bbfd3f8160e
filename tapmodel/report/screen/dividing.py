"""The answer about a dividing head or a rotary table as a page of text."""

from collections.abc import Sequence
from fractions import Fraction

from tapmodel.report.screen.chapter import wrapped
from tapmodel.report.screen.columns import columns
from tapmodel.report.words.dividing import crank_text, move_text, off_text
from tapmodel.report.words.rotary_table import (
    ONE_WAY,
    error_text,
    handle_text,
    nearest_text,
    table_text,
)
from tapmodel.shop.dividing import exact_moves, indexing, nearest_move
from tapmodel.shop.dividing_record import Means
from tapmodel.shop.rotary_table import handle, table_indexing
from tapmodel.spec.shop.dividing import Asked
from tapmodel.spec.shop.rotary_tables import RotaryTable


def pages(means: Means, asked: Sequence[tuple[str, Asked]]) -> str:
    """What head and rotary table do for everything that is asked, each under its name."""
    told: list[str] = []
    for name, one in asked:
        told += [name] if name else []
        if means.table is not None:
            told.append(_on_table(one, means.table))
        if means.head:
            told.append(dividing_page(one, means.plates, means.ratio))
    return "\n".join(told)


def dividing_page(asked: Asked, plates: Sequence[int], ratio: int) -> str:
    """Turns and holes; where no circle gives them, the nearest, and each division by itself."""
    lines = [_title(asked, f"Dividing head {ratio}:1")]
    turns = asked.turns(ratio)
    moves = exact_moves(turns, plates)
    if moves:
        return "\n".join([*lines, *_indented(move_text(moves))])
    if asked.divisions is None:
        return "\n".join([*lines, *_nearest(turns, plates, ratio)])
    return "\n".join([*lines, *_each(asked.divisions, plates, ratio)])


def _on_table(asked: Asked, table: RotaryTable) -> str:
    """Turns of the handle; each division by itself where one move does not give them exactly."""
    title = _title(asked, f"Rotary table {table_text(table)}")
    if asked.divisions is None:
        found = handle(asked.angle, table)
        off = f"; {off_text(float(found.error))} {_way(found.error)}" if found.error else ""
        return "\n".join([title, *_indented(f"{handle_text(found)}{off}. {ONE_WAY}")])
    divided = table_indexing(asked.divisions, table)
    if divided.exact:
        return "\n".join([title, *_indented(f"{handle_text(divided.move)}. {ONE_WAY}")])
    told = nearest_text(_divisions(asked.divisions), divided)
    off = bool(table.division)
    head = ("division", "handle from the first", *(("off by",) if off else ()))
    lines = [
        (str(number), handle_text(station), *((error_text(station),) if off else ()))
        for number, station in enumerate(divided.stations, start=1)
    ]
    rows = (f"  {line}" for line in columns([head, *lines]))
    return "\n".join([title, *_indented(f"{told} {ONE_WAY}"), "", *rows])


def _title(asked: Asked, of: str) -> str:
    degrees, rest = divmod(asked.angle, 1)
    minutes = f" {float(rest * 60):.4g}′" if rest else ""
    angle = f"{degrees}°{minutes}"
    wanted = angle if asked.divisions is None else f"{_divisions(asked.divisions)}, {angle} each"
    return f"{of}, {wanted}"


def _divisions(count: int) -> str:
    return "1 division" if count == 1 else f"{count} divisions"


def _nearest(turns: Fraction, plates: Sequence[int], ratio: int) -> list[str]:
    found = nearest_move(turns, plates, ratio)
    return _indented(
        f"Not possible exactly with these circles. Nearest: {crank_text(found.crank)}, "
        f"{off_text(float(found.error))} {_way(found.error)}."
    )


def _way(error: Fraction) -> str:
    return "too far" if error > 0 else "too little"


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
