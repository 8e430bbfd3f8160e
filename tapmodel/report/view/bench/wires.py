"""What is asked at the machine, as the page shows it: wires, gears, dividing, measured sizes."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from tapmodel.designing.record import TapDesign
from tapmodel.errors import NoWireError
from tapmodel.report.blocks import Length
from tapmodel.report.chapters.machines.dividing import table_of
from tapmodel.report.chapters.machines.gears import gears_chapter
from tapmodel.report.chapters.measured import chapter_of
from tapmodel.report.screen.chapter import span
from tapmodel.report.screen.wires import (
    COMPOUND_HEAD,
    TARGET_REACHED,
    answer_rows,
    compound_lines,
    infeed_rows,
    left_to_take,
    reading_rows,
)
from tapmodel.report.units import Units, in_words, shown_high
from tapmodel.report.view.chapter import ShownChapter, shown_chapter
from tapmodel.report.view.judged import GOOD, SIGNS, Judged
from tapmodel.report.words.compound import NEXT_START, SWING
from tapmodel.report.words.dividing import crank_text, move_text, off_text
from tapmodel.report.words.measured import LABELS, judged
from tapmodel.report.words.rotary_table import ONE_WAY, error_text, handle_text, nearest_text
from tapmodel.report.words.wires import sentence, verdict
from tapmodel.shop.dividing import PLATES, RATIO, Crank, Indexing, indexing
from tapmodel.shop.gears.asked import GearsAsked
from tapmodel.shop.gears.trains import GearTrain
from tapmodel.shop.measured.answer import MeasuredAnswer
from tapmodel.shop.measured.verdicts import Judgement, Standing, Way
from tapmodel.shop.measured.zones import Wanted, wanted
from tapmodel.shop.rotary_table import TableIndexing, table_indexing, table_is_better
from tapmodel.shop.wires.answer import WiresAnswer, answer_for
from tapmodel.shop.wires.reading import Reading, Verdict
from tapmodel.spec.measured.sizes import LENGTHS, Size
from tapmodel.words import Severity

_FORM = ".4f"


@dataclass(frozen=True, slots=True)
class Pair:
    """A number with its name."""

    label: str
    text: str


@dataclass(frozen=True, slots=True)
class Grid:
    """Lines of as many cells as the head."""

    head: tuple[str, ...]
    lines: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class WiresView:
    """Measuring over wires.

    Attributes:
        judged: what was measured; None where nothing was.
        read: what it shows, and what is left to feed in.
        compound: the infeed at other settings; None where nothing is left to take.
        aims: wire, limits and target.
        notes: what to heed.
    """

    judged: Judged | None
    read: tuple[Pair, ...]
    compound: Grid | None
    aims: tuple[Pair, ...]
    notes: tuple[str, ...]


def wires_view(answer: WiresAnswer, units: Units) -> WiresView:
    """The answer of `tapmodel wires`, its texts those of the screen."""
    reading, thread = answer.reading, answer.asked.thread
    notes = [sentence(note, units) for note in answer.notes]
    if reading is None:
        return WiresView(None, (), None, _pairs(answer_rows(answer, units)), tuple(notes))
    rows, compound = reading_rows(reading, units), None
    if left_to_take(reading):
        rows = [*infeed_rows(reading, units), *rows]
        compound = Grid(COMPOUND_HEAD, tuple(compound_lines(reading, units)))
        notes += [SWING[thread.hand]] if thread else []
    elif reading.verdict is Verdict.IN_LIMITS:
        notes = [TARGET_REACHED, *notes]
    aims = _pairs(answer_rows(answer, units))
    return WiresView(_over_wires(reading, units), _pairs(rows), compound, aims, tuple(notes))


_READ = {
    Verdict.TOO_SMALL: Severity.ERROR,
    Verdict.BELOW_ZONE: Severity.WARNING,
    Verdict.TOO_LARGE: Severity.NOTE,
    Verdict.NO_LIMITS: Severity.NOTE,
}
"""How grave what was read is; in limits is fine."""


def _over_wires(reading: Reading, units: Units) -> Judged:
    text = f"Measured {in_words(reading.measured, _FORM, units)}: {verdict(reading, units)}"
    return _judged(_READ.get(reading.verdict), text)


def _judged(severity: Severity | None, text: str) -> Judged:
    if severity is None:
        return Judged("good", GOOD, text)
    return Judged(severity.value, SIGNS[severity], text)


def _pairs(rows: Sequence[tuple[str, str]]) -> tuple[Pair, ...]:
    return tuple(Pair(label.strip(), text) for label, text in rows)


def gears_view(
    asked: GearsAsked, trains: Sequence[GearTrain], units: Units
) -> tuple[ShownChapter, tuple[str, ...]]:
    """The chapter of change gears, and what else to heed."""
    several = asked.tap is not None and asked.tap.thread.starts > 1
    return shown_chapter(gears_chapter(asked, trains), units), (NEXT_START,) if several else ()


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


@dataclass(frozen=True, slots=True)
class SizeView:
    """A size that can be measured.

    Attributes:
        key: its name in the file.
        label: as papers call it.
        aim: as designed, with its limits.
        unit: behind the box; empty for a length, which takes its own.
        judged: what the measured one means; None where none was.
    """

    key: str
    label: str
    aim: str
    unit: str
    judged: Judged | None


@dataclass(frozen=True, slots=True)
class MeasuredView:
    """What was measured, and the tap as it is.

    Attributes:
        sizes: of the tap, in the order of the work.
        chapter: as papers tell it; None where nothing was measured.
        notes: what else to heed.
    """

    sizes: tuple[SizeView, ...]
    chapter: ShownChapter | None
    notes: tuple[str, ...]


def measured_view(design: TapDesign, answer: MeasuredAnswer | None, units: Units) -> MeasuredView:
    """Every size of the tap with what it is to be, and the answer of `tapmodel measured`."""
    found = {one.size: one for one in answer.judgements} if answer else {}
    if answer and answer.over_wires is not None:
        found[Size.OVER_WIRES] = found.pop(Size.PITCH_DIAMETER)
    aims = dict(wanted(design))
    over = _aim_over_wires(design)
    sizes = [size for size in Size if size in aims or (size is Size.OVER_WIRES and over)]
    chapter = shown_chapter(chapter_of(answer), units) if answer and found else None
    feeds = any(one.way is Way.SLIDE and one.standing is Standing.TO_TAKE for one in found.values())
    return MeasuredView(
        sizes=tuple(
            SizeView(
                size.value,
                LABELS[size],
                _aim(size, over or aims[size] if size is Size.OVER_WIRES else aims[size], units),
                "" if size in LENGTHS else "°" if size is Size.CHAMFER_ANGLE else "HRC",
                _size_judged(found.get(size), units),
            )
            for size in sizes
        ),
        chapter=chapter,
        notes=(SWING[design.tap.thread.hand],) if feeds else (),
    )


def _aim_over_wires(design: TapDesign) -> Wanted | None:
    try:
        answer = answer_for(design)
    except NoWireError:
        return None
    return Wanted(answer.measurement_target, answer.measurement_min, answer.measurement_max)


def _aim(size: Size, one: Wanted, units: Units) -> str:
    if size not in LENGTHS:
        return f"{one.aim:.4g}{'°' if size is Size.CHAMFER_ANGLE else ' HRC'}"
    if one.low is not None and one.high is not None:
        return span(Length(one.low, 4), Length(one.high, 4), units)
    if one.high is not None:
        most = " = ".join(shown_high(Length(one.high, 4), units))
        return f"{in_words(one.aim, _FORM, units)}, at most {most}"
    return in_words(one.aim, _FORM, units)


_STANDING = {
    Standing.SCRAP: Severity.ERROR,
    Standing.OF_USE: Severity.WARNING,
    Standing.TO_TAKE: Severity.NOTE,
    Standing.NO_LIMITS: Severity.NOTE,
}
"""How grave a standing is; in limits is fine."""


def _size_judged(one: Judgement | None, units: Units) -> Judged | None:
    if one is None:
        return None
    text = judged(one, units).removeprefix(f"{LABELS[one.size]}: ")
    return _judged(_STANDING.get(one.standing), text[:1].upper() + text[1:])
