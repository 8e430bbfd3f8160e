"""What the page is told of a control, and of a value that the rules would choose."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum


class Kind(StrEnum):
    """What a control looks like."""

    NUMBER = "number"
    WORDS = "words"
    """A few words of which one holds."""
    TEXT = "text"
    FLAG = "flag"


class State(StrEnum):
    """Where a value comes from."""

    GIVEN = "given"
    RULE = "rule"
    FOLLOWS = "follows"
    """From other values."""
    NONE = "none"
    """There is none: nothing is known of it."""


@dataclass(frozen=True, slots=True)
class Slider:
    """Ends and step of a slider, in the unit of the box beside it."""

    low: float
    high: float
    step: float


@dataclass(frozen=True, slots=True)
class Option:
    """A value to choose, as the job has it, and what it is called."""

    value: str
    label: str


@dataclass(frozen=True, slots=True)
class Control:
    """A field of the job as the page lets it be changed.

    Attributes:
        field: dotted name.
        label: in the trade's words.
        kind: how it is changed.
        unit: beside the box; a bare number that is typed there has it.
        value: as the box shows it; empty for none.
        state: where the value comes from.
        why: the rule that chose it, and whose that is; empty where no rule did.
        slider: None for what has no range.
        options: of words, all that there are; of numbers and texts those that are at hand.
        told: what the field means.
        beside: what the number is on the machine, where its sign does not say; else empty.
    """

    field: str
    label: str
    kind: Kind
    unit: str
    value: str
    state: State
    why: str
    slider: Slider | None
    options: tuple[Option, ...]
    told: str
    beside: str


@dataclass(frozen=True, slots=True)
class Way:
    """One of two ways to give the same thing.

    Attributes:
        label: in the trade's words.
        fields: that are given in this way.
        chosen: whether the job goes this way.
        values: that turn the job to this way and leave the tap as it is; None for a field that is
            given no more.
        note: what else is given with them, and why; empty where nothing is.
    """

    label: str
    fields: tuple[str, ...]
    chosen: bool
    values: Mapping[str, float | str | None]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Group:
    """Controls that belong together.

    Attributes:
        key: short name.
        title: heading.
        controls: in the order of the work.
        ways: of giving some of them, of which one is chosen; none where there is only one.
    """

    key: str
    title: str
    controls: tuple[Control, ...]
    ways: tuple[Way, ...] = ()
