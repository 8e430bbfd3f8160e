"""Index positions of the flutes, on a dividing head or a rotary table."""

from fractions import Fraction

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Block, Chapter, Paragraphs, Quantity, Table, Words
from tapmodel.report.words.dividing import crank_text, move_text, off_text
from tapmodel.report.words.rotary_table import ONE_WAY, error_text, handle_text, nearest_text
from tapmodel.shop.dividing import PLATES, RATIO, Indexing, Station, indexing
from tapmodel.shop.rotary_table import TableIndexing, table_indexing, table_is_better
from tapmodel.spec.shop.rotary_tables import RotaryTable, rotary_table_of

_ANGLE = ("angle", "minutes")


def chapter(design: TapDesign) -> Chapter:
    """Angle of each flute from the first, and what crank or handle does for it."""
    circles = tuple(map(int, design.numbers("shop.plates"))) or PLATES
    head = indexing(design.tap.flutes.count, circles, _ratio(design))
    table = table_of(design)
    if table is None:
        return _chapter(_on_head(design, head))
    found = table_indexing(design.tap.flutes.count, table)
    if design.choice("shop.plates") is None or table_is_better(head, found):
        return _chapter(_on_table(found))
    return _chapter(_on_head(design, head, found))


def _ratio(design: TapDesign) -> int:
    """Turns of the crank of the shop's dividing head, else of the usual one's."""
    return int(design.number("shop.dividing_ratio") or RATIO)


def table_of(design: TapDesign) -> RotaryTable | None:
    """The rotary table of the shop, if it names one."""
    named = design.text("shop.rotary_table")
    return None if named is None else rotary_table_of(named)


def _chapter(blocks: tuple[Block, ...]) -> Chapter:
    return Chapter("dividing", "Index the flutes", blocks)


def _on_head(
    design: TapDesign, found: Indexing, beside: TableIndexing | None = None
) -> tuple[Block, ...]:
    """With the crank; and the rotary table, where that does it exactly too."""
    count = design.tap.flutes.count
    head = ("flute", *_ANGLE, f"crank from the first, {_ratio(design)}:1")
    if not found.exact:
        head = (*head, "off by")
    lines = tuple(
        _line(flute, count, station, exact=found.exact)
        for flute, station in enumerate(found.stations)
    )
    told = _sentences(found, count)
    if beside is not None and beside.exact:
        told = (*told, f"Or on the rotary table: {handle_text(beside.move)} each.")
    return Paragraphs(told), Table(head, lines)


def _on_table(found: TableIndexing) -> tuple[Block, ...]:
    """With the handle of the rotary table."""
    count = len(found.stations)
    head = ("flute", *_ANGLE, f"handle from the first, {found.table.ratio}:1")
    off = bool(found.table.division) and not found.exact
    lines = tuple(
        (
            *_place(flute, count),
            Words(handle_text(station)),
            *((Words(error_text(station)),) if off else ()),
        )
        for flute, station in enumerate(found.stations)
    )
    told = (
        f"From each flute to the next: {handle_text(found.move)} of the rotary table's handle."
        if found.exact
        else nearest_text(f"{count} flutes", found)
    )
    return Paragraphs((told, ONE_WAY)), Table((*head, "off by") if off else head, lines)


def _sentences(found: Indexing, count: int) -> tuple[str, ...]:
    if not found.exact:
        return (_nearest(found, count),)
    return (f"From each flute to the next: {move_text(found.moves)}",)


def _nearest(found: Indexing, count: int) -> str:
    return (
        f"{count} flutes cannot be done exactly with the circles on hand (shop.plates). Nearest is "
        f"the circle of {found.stations[0].crank.circle}: no flute lies further than "
        f"{off_text(float(found.worst))} from its place. Take each "
        "flute by the table, from the first, so that errors do not add up."
    )


def _line(flute: int, count: int, station: Station, *, exact: bool) -> tuple[Quantity, ...]:
    cells = (*_place(flute, count), Words(crank_text(station.crank)))
    return cells if exact else (*cells, Words(f"{float(station.error * 60):+.1f}′"))


def _place(flute: int, count: int) -> tuple[Quantity, ...]:
    """Number and angle of a flute, the first being 0."""
    share = Fraction(flute, count)
    degrees, rest = divmod(share * 360, 1)
    return (
        Words(str(flute + 1)),
        Angle(float(share * 360), 4),
        Words(f"{degrees}° {float(rest * 60):.1f}′"),
    )
