"""Index positions of the flutes."""

from fractions import Fraction

from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Angle, Chapter, Paragraphs, Quantity, Table, Words
from tapmodel.report.words.dividing import crank_text, move_text, off_text
from tapmodel.shop.dividing import PLATES, RATIO, Indexing, Station, indexing


def chapter(design: TapDesign) -> Chapter:
    """Angle of each flute from the first, and what the crank of the dividing head does for it."""
    count, ratio = design.tap.flutes.count, int(design.number("shop.dividing_ratio") or RATIO)
    found = indexing(count, tuple(map(int, design.numbers("shop.plates"))) or PLATES, ratio)
    head = ("flute", "angle", "minutes", f"crank from the first, {ratio}:1")
    if not found.exact:
        head = (*head, "off by")
    lines = tuple(
        _line(flute, count, station, exact=found.exact)
        for flute, station in enumerate(found.stations)
    )
    return Chapter(
        "dividing", "Index the flutes", (Paragraphs(_sentences(found, count)), Table(head, lines))
    )


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
    share = Fraction(flute, count)
    degrees, rest = divmod(share * 360, 1)
    cells = (
        Words(str(flute + 1)),
        Angle(float(share * 360), 4),
        Words(f"{degrees}° {float(rest * 60):.1f}′"),
        Words(crank_text(station.crank)),
    )
    return cells if exact else (*cells, Words(f"{float(station.error * 60):+.1f}′"))
