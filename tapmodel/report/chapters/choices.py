"""Every value that was settled: what, by whom, why, and by which rule."""

from functools import partial

from tapmodel.designing.choice import Choice
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Quantity, Table, Told, Words
from tapmodel.report.words.choices import source_text, value_text, why
from tapmodel.report.words.runners_up import runner_up_text

_HEAD = ("field of the job", "value", "settled by", "why", "source")


def chapter(design: TapDesign) -> Chapter:
    """In the order in which they were settled."""
    lines = tuple(_line(choice) for choice in design.choices)
    return Chapter("choices", "Choices and their reasons", (Table(_HEAD, lines),))


def _line(choice: Choice) -> tuple[Quantity, ...]:
    by = "the job" if choice.given else "a rule"
    reason = why(choice)
    if choice.runner_up:
        reason += f"; {runner_up_text(choice.runner_up)}"
    return (
        Words(choice.field),
        Told(partial(value_text, choice)),
        *map(Words, (by, reason, source_text(choice))),
    )
