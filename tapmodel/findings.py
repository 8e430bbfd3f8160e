"""What a check found: numbers beside what was allowed, never an exception; and what mends it."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

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
    """

    field: str
    bound: Bound
    value: float | str
    unit: str = ""
    digits: int = 0
    replaces: tuple[str, ...] = ()

    @property
    def text(self) -> str:
        """The value as it is typed into a job."""
        if isinstance(self.value, str):
            return self.value
        return f"{self.value:.{self.digits}f}"

    def __str__(self) -> str:
        """As the middle of a sentence that begins with "set"."""
        words = f"{self.field} {self.bound} {self.text} {self.unit}".rstrip()
        return words + (f" (in place of {' and '.join(self.replaces)})" if self.replaces else "")


@dataclass(frozen=True, slots=True)
class Cure:
    """Values that together mend a finding and break no rule that is kept; tried on the design."""

    settings: tuple[Setting, ...]

    def __str__(self) -> str:
        """As the middle of a sentence that begins with "set"."""
        return " and ".join(map(str, self.settings))


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


@dataclass(frozen=True, slots=True)
class Finding:
    """One result of one check.

    Attributes:
        code: stable short name, e.g. "square-corners".
        severity: error, warning or note.
        what: one sentence for the machinist, ending in what to change.
        expected: what would be right, as text with unit.
        actual: what is, as text with unit.
        allowed: the permitted range, as text with unit.
        source: where the rule comes from.
        levers: fields that mend it, best first.
        no_solid: why no solid can be made of a design that breaks the rule as far as this one;
            "" when it can.
        cures: what mends it, the nearest legal values, best first; each was tried on the design.
    """

    code: str
    severity: Severity
    what: str
    expected: str
    actual: str
    allowed: str
    source: str
    levers: tuple[Lever, ...] = ()
    no_solid: str = ""
    cures: tuple[Cure, ...] = ()


def gravest_first(found: Iterable[Finding]) -> list[Finding]:
    """Errors, then warnings, then notes; each in the order in which they were found."""
    order = list(Severity)
    return sorted(found, key=lambda finding: order.index(finding.severity))
