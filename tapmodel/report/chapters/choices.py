"""Every value that was settled: what, by whom, why, and by which rule."""

from functools import partial

from tapmodel.designing.choice import Choice
from tapmodel.designing.record import TapDesign
from tapmodel.report.blocks import Chapter, Quantity, Table, Told, Words
from tapmodel.report.words.choices import source_text, value_text, why
from tapmodel.report.words.runners_up import runner_up_text
from tapmodel.words import Units

_HEAD = ("field of the job", "value", "settled by", "why", "source")


def chapter(design: TapDesign) -> Chapter:
    """In the order in which they were settled."""
    lines = tuple(_line(choice) for choice in design.choices)
    return Chapter("choices", "Choices and their reasons", (Table(_HEAD, lines),))


def _line(choice: Choice) -> tuple[Quantity, ...]:
    return (
        Words(choice.field),
        Told(partial(value_text, choice)),
        Words("the job" if choice.given else "a rule"),
        Told(partial(_reason, choice)),
        Words(source_text(choice)),
    )


def _reason(choice: Choice, units: Units) -> str:
    other, reason = choice.runner_up, why(choice, units)
    return f"{reason}; {runner_up_text(other, choice.unit, units)}" if other else reason
