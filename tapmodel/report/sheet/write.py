"""The sheet to take to the machine: a PDF with the numbers of each operation and the drawings.

Black on white, fields to write measured values in beside their limits. The layout is a text for
typst, which carries its own fonts: text and narrow drawings in two columns, wide drawings after,
which `pages` deals out once it is known where the text ends.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from itertools import combinations, product
from pathlib import Path

import typst

from tapmodel.designing.record import TapDesign
from tapmodel.export.atomic import write_whole
from tapmodel.export.clock import stamp
from tapmodel.report.chapters import cautions, findings
from tapmodel.report.chapters.order import operations
from tapmodel.report.drawings.catalogue import at_machine
from tapmodel.report.drawings.drawing import Drawing
from tapmodel.report.sheet.balanced import level
from tapmodel.report.sheet.flow import Flow, flow_of, in_columns
from tapmodel.report.sheet.frame import TAKEN, row
from tapmodel.report.sheet.pages import Pages, dealt
from tapmodel.report.sheet.style import (
    BOTTOM,
    LESS,
    SIZES,
    TOP,
    fonts,
    page_title,
    style,
    title_block,
)
from tapmodel.report.sheet.typeset import typeset
from tapmodel.report.units import Look, Paper
from tapmodel.report.words.sets import tap_for

_LEAST = 1.0
"""By which letters are smaller where nothing less saves a page [pt]."""

_SMALLEST = 7.5
"""No letters are smaller [pt]."""

HEIGHTS = {Paper.A4: 297.0, Paper.LETTER: 279.4}
"""Of the papers [mm]."""

_TEXT, _TO_A_PAGE = 2, 3
"""Pages that the text may fill, and drawings that a further one is to hold; where there would be
more pages, drawings of a column are laid beside each other instead."""

_COLUMN = 88.5
"""Width of a drawing that still stands in a column [mm]."""


def write_sheet(
    path: Path, design: TapDesign, drawings: Mapping[str, Drawing], look: Look | None = None
) -> None:
    """Write the sheet.

    Args:
        path: of the PDF.
        design: every number of the tap.
        drawings: by name, drawn in the look's projection; those for the machine stand on it, true
            to scale.
        look: size, units and the projection that the title block states.

    Raises:
        InputError: when nothing can be written there.
    """
    look = look or Look()
    drawn = at_machine(drawings)
    narrow = [drawing for drawing in drawn if drawing.width_mm <= _COLUMN]
    wide = [[drawing] for drawing in drawn if drawing.width_mm > _COLUMN]
    few = _TEXT + math.ceil(len(drawn) / _TO_A_PAGE)
    room = _room(look)
    spared = [less for less in (0.0, LESS, _LEAST) if SIZES[look.units] - less >= _SMALLEST]
    words = _words(design, look)

    def blocks(way: _Way) -> list[Sequence[Drawing]]:
        return [*_pairs([drawing for drawing in narrow if drawing not in way.kept]), *wide]

    @cache
    def flow(less: float, *, split: bool) -> Flow:
        way = _Way((), less, split)
        return flow_of(_head(words, look, way), _columns(words, way))

    def laid(way: _Way) -> _Laid:
        heights = [drawing.height_mm + TAKEN for drawing in way.kept]
        end = flow(way.less, split=way.split).followed_by(heights, room, beside=way.beside)
        return _laid(way, end, blocks(way), room)

    # Whatever it keeps in its columns, no way takes fewer pages than that which spares most.
    @cache
    def fewest(kept: tuple[Drawing, ...]) -> int:
        return laid(_Way(kept, spared[-1], split=True)).pages

    best = laid(_Way(tuple(narrow)))
    for way in _ways(narrow, spared):
        if way.saves and best.pages <= few:
            break
        if way.beside or fewest(way.kept) < best.pages:
            best = min(best, laid(way), key=_Laid.cost)
    text = _whole(*_levelled(best, words, look), words.tap)
    pdf = typst.compile(text.encode(), font_paths=fonts(), timestamp=stamp())
    write_whole(path, pdf)


def _room(look: Look) -> float:
    """Of a page for what stands on it, from top to bottom [mm]."""
    return HEIGHTS[look.paper] - TOP - BOTTOM


@dataclass(frozen=True, slots=True)
class _Way:
    """A way to set the sheet.

    Attributes:
        kept: drawings that stand in the columns behind the text.
        less: by which the letters are smaller [pt].
        split: whether the cautions may break off at the end of a column.
        beside: whether the drawings begin a column of their own.
        saves: whether it is tried only where it may save a page.
    """

    kept: tuple[Drawing, ...]
    less: float = 0.0
    split: bool = False
    beside: bool = False
    saves: bool = False


def _ways(narrow: Sequence[Drawing], spared: Sequence[float]) -> Iterator[_Way]:
    """What may be better than letters of full size, cautions in one piece and drawings behind.

    Args:
        narrow: drawings that may stand in the columns.
        spared: by which letters may be smaller [pt], nothing the first.
    """
    every = tuple(narrow)
    yield _Way(every, beside=True)
    yield from (_Way(every, less) for less in spared if less == LESS)
    yield _Way(every, split=True)
    for less, kept in product(spared, _from_most_to_none(narrow)):
        if kept != every or less not in {0.0, LESS}:
            yield _Way(kept, less, saves=True)
    for less, kept in product(spared[1:], dict.fromkeys((every, ()))):
        yield _Way(kept, less, split=True, saves=True)


@dataclass(frozen=True, slots=True)
class _Words:
    """What the sheet says in whatever way it is set, in the typesetter's words.

    Attributes:
        tap: what it is of.
        title: of every page.
        head: the title block.
        sections: the chapters before the cautions.
        whole: the cautions in one piece.
        split: the cautions as they may break off.
    """

    tap: str
    title: str
    head: str
    sections: str
    whole: str
    split: str


def _words(design: TapDesign, look: Look) -> _Words:
    chapters = [findings.chapter(design), *operations(design)]
    last = cautions.chapter(design)
    return _Words(
        tap=tap_for(design),
        title=page_title(design),
        head=title_block(design, look),
        sections="\n".join(typeset(chapter, look.units) for chapter in chapters),
        whole=typeset(last, look.units, whole=True),
        split=typeset(last, look.units),
    )


def _text(words: _Words, look: Look, way: _Way) -> str:
    """Style, title block and the two columns."""
    return f"{_head(words, look, way)}\n{in_columns(_columns(words, way))}"


def _head(words: _Words, look: Look, way: _Way) -> str:
    return "\n".join([style(words.title, look.paper, SIZES[look.units] - way.less), words.head])


def _columns(words: _Words, way: _Way) -> str:
    parts = [
        words.sections,
        words.split if way.split else words.whole,
        *(["#colbreak()"] if way.beside else []),
        *(row([drawing], words.tap, fills=False) for drawing in way.kept),
    ]
    return "\n".join(parts)


def _from_most_to_none(drawings: Sequence[Drawing]) -> list[tuple[Drawing, ...]]:
    """Which of them may stay in the columns."""
    sizes = range(len(drawings), -1, -1)
    return [kept for size in sizes for kept in combinations(drawings, size)]


def _pairs(drawings: Sequence[Drawing]) -> list[Sequence[Drawing]]:
    return [drawings[first : first + 2] for first in range(0, len(drawings), 2)]


def _height(block: Sequence[Drawing]) -> float:
    """Of drawings beside each other with their frames [mm]."""
    return max(drawing.height_mm for drawing in block) + TAKEN


@dataclass(frozen=True, slots=True)
class _Laid:
    """A whole sheet.

    Attributes:
        way: in which it is set.
        end: of the text and what stands in its columns.
        blocks: drawings under and after it, those of a block beside each other.
        dealt: numbers of the blocks on each page, the first that on which the text ends.
    """

    way: _Way
    end: Flow
    blocks: Sequence[Sequence[Drawing]]
    dealt: Pages

    @property
    def pages(self) -> int:
        """That it takes."""
        return self.end.page + len(self.dealt) - 1

    def cost(self) -> tuple[int, bool, float, float]:
        """Fewest pages before whole cautions, these before large letters, then room beneath."""
        return self.pages, self.way.split, self.way.less, self.end.depth


def _laid(way: _Way, end: Flow, blocks: Sequence[Sequence[Drawing]], room: float) -> _Laid:
    """The text with its blocks dealt out to the room under it and to pages of their own [mm]."""
    return _Laid(way, end, blocks, dealt(list(map(_height, blocks)), room - end.depth, room))


def _levelled(best: _Laid, words: _Words, look: Look) -> tuple[_Laid, str]:
    """The sheet and its text, columns ending level where the room that both leave saves a page."""
    room = _room(look)
    under = replace(best.end, depth=best.end.depth / 2)
    if not best.way.beside and _laid(best.way, under, best.blocks, room).pages < best.pages:
        head, columns = _head(words, look, best.way), _columns(words, best.way)
        depth, text = level(head, columns, best.end, room)
        found = _laid(best.way, replace(best.end, depth=depth), best.blocks, room)
        if found.pages < best.pages:
            return found, text
    return best, _text(words, look, best.way)


def _whole(sheet: _Laid, text: str, tap: str) -> str:
    """The text with its blocks, whose frames share out the white of a page."""
    parts = [text]
    for number, places in enumerate(sheet.dealt):
        if number > 0:
            parts.append("#pagebreak()")
        parts.extend(row(sheet.blocks[place], tap, fills=True) for place in places)
    return "\n".join(parts)
