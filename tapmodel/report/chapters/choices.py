"""Every value that was settled: what, by whom, why, and by which rule."""

from tapmodel.designing.choice import Choice
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Quantity, Table, Words
from tapmodel.report.words.choices import source_text, value_text, why

_HEAD = ("field of the job", "value", "settled by", "why", "source")


def chapter(design: TapDesign) -> Chapter:
    """In the order in which they were settled."""
    lines = tuple(_line(choice) for choice in design.choices)
    return Chapter("choices", "Choices and their reasons", (Table(_HEAD, lines),))


def _line(choice: Choice) -> tuple[Quantity, ...]:
    by = "the job" if choice.given else "a rule"
    cells = (choice.field, value_text(choice), by, why(choice), source_text(choice))
    return tuple(map(Words, cells))
