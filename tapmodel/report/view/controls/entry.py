"""What is known of a control beforehand: its name, its kind, its range about a tap."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from tapmodel.designing.record import TapDesign
from tapmodel.report.view.controls.record import Kind, Option
from tapmodel.report.view.controls.steps import Step
from tapmodel.words import Units

Span = Callable[[TapDesign], tuple[float, float]]
"""From the one to the other value that a slider reaches for a tap, in the unit of the field."""

OptionsOf = Callable[[TapDesign], Sequence[Option]]


@dataclass(frozen=True, slots=True)
class Entry:
    """A control that a group has.

    Attributes:
        field: dotted name in the job.
        label: in the trade's words, beside the title of its group.
        kind: how it is changed.
        step: of its slider.
        span: None for no slider.
        follows: what the number is where nobody settled it; None where there is none then.
        by: field that it follows from then.
        options: to choose from.
        shown: whether a tap has it at all.
        beside: what the number is on the machine, where its sign does not say.
    """

    field: str
    label: str
    kind: Kind = Kind.NUMBER
    step: Step = Step.WHOLE
    span: Span | None = None
    follows: Callable[[TapDesign], float] | None = None
    by: str = ""
    options: OptionsOf = lambda _design: ()
    shown: Callable[[TapDesign], bool] = lambda _design: True
    beside: Callable[[TapDesign, Units], str] = lambda _design, _units: ""


@dataclass(frozen=True, slots=True)
class EntryGroup:
    """Entries under one heading."""

    key: str
    title: str
    entries: tuple[Entry, ...]


def named(*words: str) -> OptionsOf:
    """Options that are called as the job has them."""
    found = tuple(Option(word, word) for word in words)
    return lambda _design: found


def among(words: Callable[[], Sequence[str]]) -> OptionsOf:
    """The same of words that stand in a table, which is read only where they are shown."""

    def options(design: TapDesign) -> Sequence[Option]:
        return named(*words())(design)

    return options


def always(low: float, high: float) -> Span:
    """A range that is the same for every tap."""
    return lambda _design: (low, high)


def of_diameter(low: float, high: float) -> Span:
    """A range in diameters over the crests."""
    return lambda design: (low * design.tap.thread.major, high * design.tap.thread.major)
