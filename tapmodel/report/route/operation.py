"""One operation of the route, and its chapter."""

from dataclasses import dataclass

from tapmodel.report.blocks import Block, Chapter, Paragraphs, Row, Rows, Telling
from tapmodel.report.units import told
from tapmodel.shop.order_of_work import Step
from tapmodel.words import Units

Sentence = str | Telling
"""What is told as it is, or in the reader's units."""


@dataclass(frozen=True, slots=True)
class Operation:
    """What is done at one machine in one clamping.

    Attributes:
        step: its place in the order of the work.
        title: what is done.
        machine: where.
        holding: what holds what.
        tool: what cuts, or works otherwise.
        why: it stands at this place.
        settings: as the chapters of the sheet have them, without what is measured here.
        speeds: speed and feed, where the program knows any.
        measure: what is measured now, before the next operation.
        cautions: what can hurt here.
        instead: where another shop does otherwise; may be empty.
    """

    step: Step
    title: str
    machine: str
    holding: Sentence
    tool: Sentence
    why: Sentence
    settings: tuple[Block, ...] = ()
    speeds: tuple[Row, ...] = ()
    measure: tuple[Row, ...] = ()
    cautions: tuple[str, ...] = ()
    instead: str = ""


SPEEDS, MEASURE = "Speed and feed", "Measure now"
"""Captions of their tables."""


def chapter_of(number: int, operation: Operation) -> Chapter:
    """An operation as every paper and the screen tell it."""
    at_work = (
        f"Machine: {operation.machine}.",
        _behind("Held", operation.holding),
        _behind("Tool", operation.tool),
    )
    after = [*operation.cautions, _behind("Why here", operation.why)]
    if operation.instead:
        after.append(f"Other shops: {operation.instead}")
    blocks: list[Block] = [Paragraphs(at_work), *operation.settings]
    for rows, caption in ((operation.speeds, SPEEDS), (operation.measure, MEASURE)):
        blocks += [Rows(rows, caption)] if rows else []
    title = f"{number} {operation.title}"
    return Chapter(operation.step.value, title, (*blocks, Paragraphs(tuple(after))))


def _behind(word: str, sentence: Sentence) -> Telling:
    """A sentence behind the word for what it tells."""

    def telling(units: Units) -> str:
        return f"{word}: {told(sentence, units)}."

    return telling
