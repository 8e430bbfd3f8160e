"""What a check found: numbers beside what was allowed, never an exception; and what mends it.

Nothing here is a sentence: those are made by code in `tapmodel.report.words`.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from tapmodel.sources import Source
from tapmodel.values import NO_VALUES, Values
from tapmodel.words import Severity


class Bound(StrEnum):
    """How a value of a cure is meant: the nearest of all those on one side, or itself."""

    AT_MOST = "at most"
    AT_LEAST = "at least"
    EXACTLY = "to"


@dataclass(frozen=True, slots=True)
class Setting:
    """A value of the job, as `--set` takes it.

    Attributes:
        field: dotted name as in the job file.
        bound: whether values beyond it on one side are meant too.
        value: number, rounded to the legal side, or word.
        unit: of a number, e.g. "mm"; "" for none.
        digits: decimals that the number is rounded to.
        replaces: fields given in the job that it contradicts, and that must go.
        at_hand: False for a tool that the shop, which listed what it has, did not list.
    """

    field: str
    bound: Bound
    value: float | str
    unit: str = ""
    digits: int = 0
    replaces: tuple[str, ...] = ()
    at_hand: bool = True

    @property
    def text(self) -> str:
        """The value as it is typed into a job."""
        if isinstance(self.value, str):
            return self.value
        return f"{self.value:.{self.digits}f}"


@dataclass(frozen=True, slots=True)
class Cure:
    """Values that together mend a finding and break no rule that is kept; tried on the design.

    Attributes:
        settings: the values.
        worsens: what else is found of the design with them that asks for a change, if it is not
            found without, or less gravely.
        leaves: what stays of the finding that was mended: a note of the same number, where no
            value was found that is free of it.
    """

    settings: tuple[Setting, ...]
    worsens: tuple["Finding", ...] = ()
    leaves: tuple["Finding", ...] = ()


@dataclass(frozen=True, slots=True)
class Lever:
    """A field that moves the number of a finding to its legal side.

    Attributes:
        field: dotted name as in the job file.
        bound: the side on which legal values are sought; EXACTLY for `near` itself.
        now: value in the design; None for a word.
        near: where a formula expects the nearest legal value, or the word itself.
    """

    field: str
    bound: Bound
    now: float | None = None
    near: float | str | None = None


class Held(StrEnum):
    """What holds a value where no two numbers do."""

    LAND = "land"
    """By as much as the land between its flutes leaves room for."""

    LAND_BEHIND_MARGIN = "land-behind-margin"
    """By as much as the land behind the margin leaves room for."""

    STRAIGHT_WALL = "straight-wall"
    """To where the edge lies on the straight wall of a flute."""

    WHOLE_THREAD = "whole-thread"
    """To the flanks together with the crest."""

    LISTED_PAIR = "listed-pair"
    """To the pairs of diameter and pitch that a standard lists; others are legal too."""

    IN_STOCK = "in-stock"
    """To what the shop has listed as its own."""

    OTHER_UNIT = "other-unit"
    """To about what the rules make of the thread; the number would be that in inches."""


@dataclass(frozen=True, slots=True)
class Limit:
    """What a value is allowed to be.

    Attributes:
        low, high: from the one up to the other; None for no limit on that side.
        unit: of both and of the value itself, e.g. "mm"; "" for none.
        held: what holds the value where that is no number, or where it is meant for a number alone.
    """

    low: float | None = None
    high: float | None = None
    unit: str = ""
    held: Held | None = None


@dataclass(frozen=True, slots=True)
class NoSolid:
    """Why no solid can be made of a design.

    Attributes:
        code: stable short name of the reason.
        values: what else its sentence needs.
    """

    code: str
    values: Values = NO_VALUES


@dataclass(frozen=True, slots=True)
class Finding:
    """One result of one check.

    Attributes:
        code: stable short name, e.g. "square-corners".
        severity: error, warning or note.
        field: what is judged, dotted: a field of the job file, or a figure that follows from it.
        actual: what it is, in the unit of `limit`; or a word.
        limit: what it is allowed to be.
        values: what else the sentence needs.
        source: where the rule comes from.
        levers: fields that mend it, best first.
        no_solid: why no solid can be made of a design that breaks the rule as far as this one;
            None when it can.
        cures: what mends it, the nearest legal values, best first; each was tried on the design.
    """

    code: str
    severity: Severity
    field: str
    actual: float | str
    limit: Limit
    values: Values
    source: Source
    levers: tuple[Lever, ...] = ()
    no_solid: NoSolid | None = None
    cures: tuple[Cure, ...] = ()


def gravest_first(found: Iterable[Finding]) -> list[Finding]:
    """Errors, then warnings, then notes; each in the order in which they were found.

    Before all of them a number that was typed in another unit: the others follow from it.
    """
    order = list(Severity)

    def rank(finding: Finding) -> tuple[bool, int]:
        return finding.limit.held is not Held.OTHER_UNIT, order.index(finding.severity)

    return sorted(found, key=rank)
