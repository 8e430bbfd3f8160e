"""Measuring over wires, as the page asks for it at the machine."""

from collections.abc import Sequence
from dataclasses import dataclass

from tapmodel.report.screen.wires import (
    COMPOUND_HEAD,
    TARGET_REACHED,
    answer_rows,
    compound_lines,
    infeed_rows,
    left_to_take,
    reading_rows,
)
from tapmodel.report.units import Units, in_words
from tapmodel.report.view.judged import Judged, judged_as
from tapmodel.report.words.compound import SWING
from tapmodel.report.words.wires import sentence, verdict
from tapmodel.shop.wires.answer import WiresAnswer
from tapmodel.shop.wires.reading import Reading, Verdict
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
    return judged_as(_READ.get(reading.verdict), text)


def _pairs(rows: Sequence[tuple[str, str]]) -> tuple[Pair, ...]:
    return tuple(Pair(label.strip(), text) for label, text in rows)
