"""Dividing place by place, as the page asks for it at the machine."""

from dataclasses import dataclass
from itertools import pairwise

from tapmodel.designing.record import TapDesign
from tapmodel.report.chapters.machines.dividing import table_of
from tapmodel.report.words.dividing import crank_text, move_text, off_text
from tapmodel.report.words.rotary_table import ONE_WAY, error_text, handle_text, nearest_text
from tapmodel.shop.dividing import PLATES, RATIO, Crank, Indexing, indexing
from tapmodel.shop.rotary_table import TableIndexing, table_indexing, table_is_better


@dataclass(frozen=True, slots=True)
class Station:
    """One place of the work.

    Attributes:
        number: from 1.
        move: from the place before, where one move can be told; empty for the first.
        reached: from the first place.
        off: by how much it misses its place; empty where it does not.
    """

    number: int
    move: str
    reached: str
    off: str


@dataclass(frozen=True, slots=True)
class DividingView:
    """Index positions one after the other.

    Attributes:
        on: which head or table.
        ratio: turns of its crank or handle for one of the work.
        text: how it is done.
        stations: every place.
    """

    on: str
    ratio: int
    text: tuple[str, ...]
    stations: tuple[Station, ...]


def dividing_view(design: TapDesign, count: int) -> DividingView:
    """Even divisions with what the shop has, on the usual head where it names nothing.

    Of head and rotary table the one is taken that the papers take.
    """
    circles = tuple(map(int, design.numbers("shop.plates"))) or PLATES
    ratio = int(design.number("shop.dividing_ratio") or RATIO)
    head, table = indexing(count, circles, ratio), table_of(design)
    if table is not None:
        found = table_indexing(count, table)
        if design.choice("shop.plates") is None or table_is_better(head, found):
            return _on_table(found, count)
    return _on_head(head, ratio)


def _on_head(found: Indexing, ratio: int) -> DividingView:
    circle = found.stations[0].crank.circle
    cranks = [station.crank for station in found.stations]
    first = "0"
    moves = ["", *(_between(one, other) for one, other in pairwise(cranks))]
    if found.exact:
        text = f"From each to the next: {move_text(found.moves)}"
    else:
        text = (
            f"Not possible exactly with these circles. Nearest is the circle of {circle}: none "
            f"lies further than {off_text(float(found.worst))} from its place."
        )
    stations = tuple(
        Station(
            number,
            move,
            crank_text(station.crank) if number > 1 else first,
            f"{float(station.error * 60):+.2f}′" if station.error else "",
        )
        for number, (move, station) in enumerate(zip(moves, found.stations, strict=True), start=1)
    )
    return DividingView(f"dividing head {ratio}:1", ratio, (text,), stations)


def _between(one: Crank, other: Crank) -> str:
    """From one place of the crank to another, on their circle."""
    if not one.circle:
        return crank_text(Crank(other.turns - one.turns, 0, 0))
    holes = (other.turns - one.turns) * one.circle + other.holes - one.holes
    return crank_text(Crank(*divmod(holes, one.circle), one.circle))


def _on_table(found: TableIndexing, count: int) -> DividingView:
    divisions = "1 division" if count == 1 else f"{count} divisions"
    text = (
        f"From each to the next: {handle_text(found.move)} of the handle."
        if found.exact
        else nearest_text(divisions, found)
    )
    stations = tuple(
        Station(
            number,
            handle_text(found.move) if found.exact and number > 1 else "",
            handle_text(station) if number > 1 else "0",
            error_text(station) if station.error else "",
        )
        for number, station in enumerate(found.stations, start=1)
    )
    ratio = found.table.ratio
    return DividingView(f"rotary table {ratio}:1", ratio, (text, ONE_WAY), stations)
